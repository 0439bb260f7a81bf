"""A studio in French is French to its last sheet, and weighs the same as in English.

No sentence of ours is left in English, but for what findings say and for titles of works. Signs are set, and numbers written, as in French
of Canada: a comma before decimals, a space before a colon and before the sign of percent that does not break (Unicode CLDR, locale fr_CA,
from memory). Which numbers a sheet holds does not depend on the language, by plain meaning.
"""

import re
import shutil
from collections import Counter
from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from builder import pipeline
from builder.compose.publication import compose_documents, editions
from builder.library import LAYOUTS
from builder.model.finding import Finding
from builder.model.supplies.shopping import Period
from builder.reckon import reckon_shopping
from builder.words.say import speaking
from tests.compose.test_another_language import texts_of
from tests.making import sure
from tests.page_text import tree_of

pytestmark = pytest.mark.long
TODAY = date(2027, 1, 15)
IN_FRENCH = Path(__file__).parent / "in_french"
# Words that no French text has.
ENGLISH = re.compile(
    r"\b(the|and|of|with|you|your|for|this|is|are|it|each|weigh|about|weeks?|months?|days?|hours?|lye|home|make|if|no|than|that|what|when|who|"
    r"january|february|march|april|june|july|feb|apr|bottle|jar|bar|bars|label|teacher|student|students|sheet|copy|copies|batch)\b",
    re.IGNORECASE,
)
WITH_UNIT = re.compile(r"(\d+(?:[.,]\d+)?)[\s\u00a0\u202f]*(g|oz|kg|mL|L|%|°C|°F|mm)(?![a-zA-Z])")


class Studio:
    """The documents of the studio in one language, each by its path, with what was found."""

    def __init__(self, folder: Path, *, in_english: bool) -> None:
        """Copy the studio and compose all that it publishes; in English only its own words are French."""
        shutil.copytree(IN_FRENCH, folder)
        for file in (folder / "studio.yaml", *folder.glob("recipes/*.yaml")) if in_english else ():
            text = file.read_text(encoding="utf-8")
            file.write_text(text.replace("language: French\n", "").replace("  English:\n", "  French:\n"), encoding="utf-8")
        found = pipeline.check(folder, on=TODAY)
        assert not found.stops, [(one.name, one.wrong) for one in found.findings if one.stops]
        studio = sure(found.studio)
        self.findings: tuple[Finding, ...] = found.findings
        self.speaks = studio.speaks.name
        with speaking(studio.speaks.messages):
            shopping = reckon_shopping(studio, found.plans, Period(TODAY), today=TODAY)
            made = compose_documents(*editions(studio, found.plans, found.findings, (LAYOUTS,), TODAY, shopping=shopping, held=found.held))
        # What laws, standards and handbooks are called, and where something stands in them, is theirs.
        figures = [one.in_use for card in studio.ingredients.values() for one in card.figures.values()]
        figures += studio.constants.values()
        self.works = {one.at for one in figures} | {one.title for one in studio.sources.values()}
        self.documents: Mapping[str, str] = {f"{one.folder}/{one.path}": one.html for one in made.documents if "<html" in one.html}


def name_of(path: str) -> str:
    return path.rpartition("/")[2].partition("--")[0].removesuffix(".pdf").removesuffix(".html")


@pytest.fixture(scope="module")
def french(tmp_path_factory: pytest.TempPathFactory) -> Studio:
    return Studio(tmp_path_factory.mktemp("french") / "studio", in_english=False)


@pytest.fixture(scope="module")
def english(tmp_path_factory: pytest.TempPathFactory) -> Studio:
    return Studio(tmp_path_factory.mktemp("english") / "studio", in_english=True)


def said(french: Studio) -> Iterator[tuple[str, str]]:
    """Yield what each document says, but labels, which are in two languages, and works by their names."""
    works = sorted(french.works, key=len, reverse=True)
    for path, html in french.documents.items():
        for text in texts_of(html) if "/labels" not in path else ():
            for work in works if ENGLISH.search(text) else ():
                text = text.replace(work, "")
            if "://" not in text:
                yield path, text


def test_it_speaks_french_and_says_that_nobody_here_reads_its_words(french: Studio, english: Studio) -> None:
    names = [one.name for one in french.findings]
    # The roster says "arachide", which is a family of allergens in French.
    assert "allergy-unclear" not in names
    assert (french.speaks, names.count("prose-not-judged"), names.count("language-incomplete")) == ("French", 1, 0)
    assert "prose-not-judged" not in [one.name for one in english.findings]


def test_every_kind_of_sheet_is_there(french: Studio) -> None:
    names = set(map(name_of, french.documents))
    assert {"teacher", "assistants", "bench-steps", "bench-cards", "batch-cards", "dose-cards", "checklist", "costs", "workings"} <= names
    assert {"roster", "shopping", "why-this-format", "pack", "take-home-sels-de-la-greve", "take-home-savon-du-lavoir"} <= names
    assert any("large-print" in path for path in french.documents)


def test_every_document_is_marked_as_french(french: Studio) -> None:
    for path, html in french.documents.items():
        assert sure(tree_of(html).find("html")).get("lang") == "fr-CA", path


def test_no_sentence_is_english(french: Studio) -> None:
    assert {f"{path}: {text.strip()[:100]}" for path, text in said(french) if ENGLISH.search(text)} == set()


def test_signs_are_set_as_in_french(french: Studio) -> None:
    texts = list(said(french))
    assert [(path, text) for path, text in texts if re.search(r"[^\s\d\u00a0]: |[^\u00a0] :|«[^\u00a0]|[^\u00a0]»|[“”]", text)] == []
    assert [(path, text) for path, text in texts if re.search(r"\$\d", text)] == []
    assert [(path, text) for path, text in texts if re.search(r"\d\.\d+[\s\u00a0]?(g|oz|kg|%|\$)|\d%", text)] == []


def test_the_same_is_weighed_in_both_languages(french: Studio, english: Studio) -> None:
    assert french.documents.keys() == english.documents.keys() and len(french.documents) > 60
    for path, html in french.documents.items():
        assert weights(html) == weights(english.documents[path]), path


def test_the_same_dates_and_cautions_are_in_both_languages(french: Studio, english: Studio) -> None:
    for path, html in french.documents.items():
        one, other = tree_of(html), tree_of(english.documents[path])
        for marks in ("time[datetime]", ".steps li", ".tick"):
            assert len(one.select(marks)) == len(other.select(marks)), (path, marks)
        # How many parts one box stands over, its length decides, and French is longer.
        assert len(cautions(one)) == len(cautions(other)), path
        assert [mark["datetime"] for mark in one.select("time[datetime]")] == [mark["datetime"] for mark in other.select("time[datetime]")]
    assert max(len(cautions(tree_of(html))) for html in french.documents.values()) > 2


def cautions(tree: BeautifulSoup) -> set[str]:
    """Return the names of the cautions of a document."""
    return {signal.get_text(" ", strip=True).removeprefix(word_of(signal)).strip() for signal in tree.select(".caution .signal")}


def word_of(signal: Tag) -> str:
    word = signal.select_one(".word")
    return word.get_text(" ", strip=True) if word else ""


def weights(html: str) -> Counter[tuple[str, str]]:
    """Count every number that stands before a unit, whatever sign stands before its decimals."""
    return Counter((number.replace(",", "."), unit) for number, unit in WITH_UNIT.findall(" ".join(texts_of(html))))
