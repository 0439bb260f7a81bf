"""A whole site in French: no word of it is left in English, and its plurals and dates are those of French.

What pages say is the project's own translation, `content/languages/french.po`; sheets are looked at in `test_sheets_in_french.py`. French
takes the singular for 1 and for 0, and writes dates and hours so: Unicode CLDR, plural rules and locale fr_CA, from memory.
"""

import re

import pytest
from bs4 import BeautifulSoup, Tag

from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.words.say import speaking
from tests.compose.conftest import TODAY, read_edition
from tests.compose.french_studio import FILES
from tests.compose.test_another_language import texts_of
from tests.published import squeeze

pytestmark = pytest.mark.long
# Words that no French text has; names of ingredients on labels (INCI) are those of every language.
ENGLISH = re.compile(
    r"\b(the|and|of|with|you|your|from|for|this|is|are|book|seat|seats|class|classes|price|scent|oil|water|salt|month|make|home)\b",
    re.IGNORECASE,
)


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    folder = tmp_path_factory.mktemp("in-french")
    for name, text in FILES.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text.lstrip("\n") + ("language: French\n" if name == "studio.yaml" else ""), encoding="utf-8")
    edition = read_edition(folder)
    assert edition.studio.speaks.name == "French"
    return edition


@pytest.fixture(scope="module")
def documents(edition: Edition) -> list[Document]:
    with speaking(edition.studio.speaks.messages):
        made = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY))
    return [one for one in made.documents if one.folder is Folder.SITE and not one.path.endswith((".pdf", ".css"))]


@pytest.fixture(scope="module")
def page(documents: list[Document]) -> Tag:
    (book,) = next(soup_of(one).select(".book") for one in documents if one.path == "classes/first.html")
    return book


def soup_of(document: Document) -> BeautifulSoup:
    return BeautifulSoup(document.html, "html.parser")


def test_every_kind_of_page_is_there(documents: list[Document]) -> None:
    paths = {one.path for one in documents}
    kinds = {"index.html", "classes.html", "dates.html", "visit.html", "ways-of-teaching.html", "about.html", "safety.html", "404.html"}
    assert kinds | {"classes/first.html", "dates.ics", "dates.xml", "classes/first.ics"} <= paths
    assert sum(path.startswith("find/") for path in paths) > 30


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
