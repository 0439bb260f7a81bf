"""A whole site in French: no word of it is left in English, and its plurals and dates are those of French.

What pages of classes, dates and booking say is the project's own translation, `content/languages/french.po`; what that does not have yet,
of sheets and cautions, stands in made-up letters here, since a language counts only when it is whole, and no such letter is on any page.
French takes the singular for 1 and for 0, and writes dates and hours so: Unicode CLDR, plural rules and locale fr_CA, from memory.
"""

import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from babel.messages.pofile import read_po, write_po
from bs4 import BeautifulSoup, Tag

from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.library import CONTENT, LAYOUTS
from builder.model.document import Document, Folder
from builder.words.say import speaking
from tests.compose.conftest import TODAY, read_edition
from tests.compose.french_studio import FILES
from tests.compose.test_another_language import MARKED, marked, texts_of
from tests.messages import messages
from tests.published import squeeze

# Words that no French text has; names of ingredients on labels (INCI) are those of every language.
ENGLISH = re.compile(
    r"\b(the|and|of|with|you|your|from|for|this|is|are|book|seat|seats|class|classes|price|scent|oil|water|salt|month|make|home)\b",
    re.IGNORECASE,
)


def write_french(file: Path) -> None:
    """Write what ours says in French; whatever it does not have in made-up letters."""
    with (CONTENT / "languages" / "french.po").open("rb") as opened:
        ours = read_po(opened)
    catalog = messages()
    for message in catalog:
        if not message.id:
            continue
        english = message.id if isinstance(message.id, str) else message.id[0]
        said = ours.get(english, message.context)
        forms = said.string if said and said.string else marked(english)
        # CLDR has three forms: for 0 and 1, for whole millions, and for all else.
        one, *more = (forms,) if isinstance(forms, str) else forms
        message.string = one if isinstance(message.id, str) else (one, *(more or [one]) * 2)
    catalog.locale = "fr_CA"
    file.parent.mkdir(parents=True)
    with file.open("wb") as written:
        write_po(written, catalog)


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    folder = tmp_path_factory.mktemp("in-french")
    for name, text in FILES.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text.lstrip("\n") + ("language: Site french\n" if name == "studio.yaml" else ""), encoding="utf-8")
    write_french(folder / "shelf/languages/site-french.po")
    edition = read_edition(folder)
    assert edition.studio.speaks.name == "Site french"
    return edition


@pytest.fixture(scope="module")
def documents(edition: Edition) -> list[Document]:
    with speaking(edition.studio.speaks.messages):
        made = compose_documents(*editions(edition.studio, edition.sheets, (), (LAYOUTS,), TODAY))
    return [one for one in made.documents if one.folder is Folder.SITE and not one.path.endswith((".pdf", ".css"))]


@pytest.fixture(scope="module")
def page(documents: list[Document]) -> Tag:
    (book,) = next(soup_of(one).select(".book") for one in documents if one.path == "classes/first.html")
    return book


def soup_of(document: Document) -> BeautifulSoup:
    return BeautifulSoup(document.html, "html.parser")


def said_on(document: Document) -> Iterator[str]:
    """Yield every text of a file that people or programs read."""
    if not document.path.endswith(".html"):
        yield document.html.replace("\r\n ", "")
        return
    yield from texts_of(document.html)
    yield from (str(one["content"]) for one in soup_of(document).select("[name=description], [property^=og]"))
    yield from (json.dumps(json.loads(one.get_text()), ensure_ascii=False) for one in soup_of(document).find_all("script"))


def test_every_kind_of_page_is_there(documents: list[Document]) -> None:
    paths = {one.path for one in documents}
    kinds = {"index.html", "classes.html", "dates.html", "visit.html", "ways-of-teaching.html", "about.html", "safety.html", "404.html"}
    assert kinds | {"classes/first.html", "dates.ics", "dates.xml", "classes/first.ics"} <= paths
    assert sum(path.startswith("find/") for path in paths) > 30


def test_no_message_is_left_untranslated(documents: list[Document]) -> None:
    made_up = re.compile(f"[⟦⟧{''.join(map(chr, MARKED.values()))}]")
    left = {f"{one.path}: {text.strip()[:90]}" for one in documents for text in said_on(one) if made_up.search(text)}
    assert left == set()


def test_no_word_is_english(documents: list[Document]) -> None:
    pages = [one for one in documents if one.path.endswith(".html")]
    shown = ((one.path, text) for one in pages for text in texts_of(one.html) if "://" not in text)
    assert {f"{path}: {text.strip()[:90]}" for path, text in shown if ENGLISH.search(text)} == set()
    assert {one.path for one in pages if soup_of(one).html.get("lang") != "fr-CA"} == set()  # type: ignore[union-attr]


def test_plurals_are_those_of_french(page: Tag) -> None:
    assert [squeeze(one.get_text()) for one in page.select(".seats")] == [
        "1 place libre",
        "2 places libres",
        "Complet, 1 personne en attente",
    ]
    assert "Dès 16 ans, avec un adulte avant 18 ans" in squeeze(page.get_text(" "))


def test_days_hours_and_prices_are_written_as_in_french(page: Tag) -> None:
    days = [squeeze(one.get_text()) for one in page.select(".day")]
    assert days == [
        "samedi 6 février 2027",
        "samedi 6 mars 2027",
        "dimanche 1 août 2027",
    ]
    first, second, _ = (squeeze(one.get_text()) for one in page.select(".hours"))
    assert (first, second) == ("10 h 00 – 11 h 10", "14 h 30 – 15 h 40")
    assert squeeze(page.select(".price")[0].get_text()) == "48 $"
    assert "Places en date du 15 janvier 2027." in squeeze(page.get_text(" "))
