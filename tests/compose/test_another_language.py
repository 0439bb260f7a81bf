"""A studio that speaks another language has every fixed text in it.

The language is made by code: each message of `messages.pot` with an accent on every letter, between brackets. What is left of plain letters
on a document must be the studio's own text, a name of the library, or what the locale says of dates, numbers and units.
"""

import re
import shutil
from collections.abc import Iterator
from datetime import date
from functools import lru_cache
from pathlib import Path

import pytest
from babel import Locale
from babel.messages.pofile import write_po
from bs4 import BeautifulSoup

from builder import pipeline
from builder.compose.publication import compose_documents, editions
from builder.library import CONTENT, LAYOUTS
from builder.model.document import Document, Publication
from builder.model.studio import Studio
from builder.model.supplies.shopping import Period
from builder.reckon import reckon_shopping
from builder.words.say import HOLE, speaking
from tests.findings_studio import SOUND
from tests.messages import messages

TODAY = date(2027, 1, 15)
LOCALE = "de_DE"
PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
ACCENTED = "".join(chr(0x1D5BA + i) for i in range(26)) + "".join(chr(0x1D5A0 + i) for i in range(26))
MARKED = str.maketrans(PLAIN, ACCENTED)
# What an attribute says to people.
SAID = ("alt", "aria-label", "title", "content")
UNITS = frozenset(
    ["g", "kg", "oz", "lb", "mL", "ml", "L", "fl", "min", "h", "C", "F", "mg", "mm", "cm", "pH", "Wt", "Net", "M", "x", "Uhr"]
)


def marked(text: str) -> str:
    """Translate a message: every letter but those of the names in braces."""
    parts = HOLE.split(text)
    return "⟦" + "".join(f"{{{part}}}" if odd % 2 else part.translate(MARKED) for odd, part in enumerate(parts)) + "⟧"


# The folder of the studio, the studio, and its documents.
Spoken = tuple[Path, Studio, Publication]


@pytest.fixture(scope="module")
def spoken(tmp_path_factory: pytest.TempPathFactory) -> Spoken:
    """Write the language and a studio that speaks it, and compose its documents."""
    folder = tmp_path_factory.mktemp("made-up") / "studio"
    shutil.copytree(SOUND, folder)
    profile = (folder / "studio.yaml").read_text(encoding="utf-8")
    (folder / "studio.yaml").write_text(profile + "language: Made up\n", encoding="utf-8")
    catalog = messages()
    for message in catalog:
        if message.id:
            message.string = marked(message.id) if isinstance(message.id, str) else tuple(map(marked, message.id))
    catalog.locale = LOCALE
    (folder / "shelf" / "languages").mkdir(parents=True)
    with (folder / "shelf" / "languages" / "made-up.po").open("wb") as file:
        write_po(file, catalog)
    found = pipeline.check(folder, on=TODAY)
    assert [one.name for one in found.findings] == ["prose-not-judged"]
    assert found.studio is not None and found.studio.speaks.name == "Made up"
    with speaking(found.studio.speaks.messages):
        shopping = reckon_shopping(found.studio, found.plans, Period(TODAY), today=TODAY)
        made = compose_documents(
            *editions(found.studio, found.plans, found.findings, (LAYOUTS,), TODAY, shopping=shopping, held=found.held)
        )
    return folder, found.studio, made


def own_text(folder: Path, studio: Studio) -> str:
    """Return in one line all that the studio says, and what the library has by a name of its own: works, and places in them."""
    files = [*folder.rglob("*.yaml"), *folder.rglob("*.md"), *(CONTENT / "tables").glob("*.csv")]
    said = [path.read_text(encoding="utf-8") for path in files]
    figures = (*studio.constants.values(), *(one.in_use for card in studio.ingredients.values() for one in card.figures.values()))
    said += [figure.at for figure in figures]
    said += [source.title for source in studio.sources.values()] + [source.by for source in studio.sources.values()]
    said += [rule.at for region in studio.regions.values() for rule in region.rules.values()]
    said += [rule.says for region in studio.regions.values() for rule in region.rules.values()]
    said += [name for card in studio.ingredients.values() if card.label_name for name in (*card.label_name.inci, *card.label_name.plain)]
    said += [sheet.name for sheet in studio.label_sheets.values()]
    locale = Locale.parse(LOCALE)
    said += [name for width in ("wide", "abbreviated") for name in locale.months["format"][width].values()]
    said += [*locale.days["format"]["wide"].values()]
    return re.sub(r"[*_{}\"'’`#\s]+", " ", " ".join(said)).casefold()


@lru_cache(256)
def texts_of(html: str) -> tuple[str, ...]:
    """Return every text that people see or hear."""
    return tuple(_texts_of(html))


def _texts_of(html: str) -> Iterator[str]:
    soup = BeautifulSoup(html, "html.parser")
    # What findings say is English, and marked so.
    for dead in (*soup(["style", "script"]), *soup.select('[lang="en"]:not(html)')):
        dead.extract()
    yield from (text for text in soup.find_all(string=True) if type(text).__name__ == "NavigableString")
    yield from (str(tag[name]) for tag in soup.find_all(True) for name in SAID if tag.has_attr(name) and tag.name != "meta")


def not_said(text: str, known: str) -> Iterator[str]:
    """Yield the phrases of a text that are in plain letters and are nobody's own."""
    for phrase in re.split(r"[^A-Za-z'’ \u00a0-]+", text):
        words = [word for word in re.split(r"[ \u00a0]+", phrase.strip(" \u00a0-'’")) if word and word not in UNITS]
        said = " ".join(words)
        if said and said.replace("’", " ").replace("'", " ").casefold() not in known and len(said) > 1:
            yield said


def is_labels(document: Document) -> bool:
    """Tell whether a document is labels: they speak the languages that the law of the region asks for."""
    return "labels" in document.path


def unsaid(spoken: Spoken) -> Iterator[tuple[str, str]]:
    folder, studio, publication = spoken
    known = own_text(folder, studio)
    for document in publication.documents:
        if document.html.lstrip().startswith("<") and not is_labels(document):
            for text in texts_of(document.html):
                yield from ((document.path, phrase) for phrase in not_said(text, known))


def test_every_fixed_text_is_in_the_language(spoken: Spoken) -> None:
    assert sorted({phrase for _, phrase in unsaid(spoken)}) == []


def test_the_language_is_marked_throughout(spoken: Spoken) -> None:
    publication = spoken[-1]
    pages = [document for document in publication.documents if "<html" in document.html and "label" not in document.path]
    assert len(pages) > 10 and all("⟦" in document.html for document in pages)
