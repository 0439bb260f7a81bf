"""A studio that writes what no page expects: tags, quotes, other scripts, a word without end. Every output stays what it is.

What is read back is read by parsers that are none of ours: the Nu HTML checker, Chromium, expat, icalendar, json, a reader of PDF.
"""

import io
import json
import os
from pathlib import Path
from xml.etree import ElementTree

import icalendar
import pikepdf
import pypdfium2
import pytest
from bs4 import BeautifulSoup

from builder.compose.publication import compose_documents, editions
from builder.fonts.files import only_our_fonts
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.press.pool import presses
from tests.browser import Browser
from tests.compose.conftest import FILES, TODAY, read_edition, write_studio
from tests.compose.test_machines import PLACE
from tests.site.looks import TOO_WIDE
from tests.site.nu import complaints
from tests.whole_run import LONG as LONG_RUN

TITLE = "</title></style><script>alert(1)</script> & \"q\" 'q' ]]> <!-- -- % {} \\\\ ; , ß שלום 👩‍🔬"
LONG = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft"
QUOTED = json.dumps(TITLE, ensure_ascii=False)
ALL_ENDINGS = {".html", ".ics", ".xml", ".json", ".css"}


@pytest.fixture(scope="module")
def composed(tmp_path_factory: pytest.TempPathFactory) -> list[Document]:
    lesson_of = FILES["classes/first/class.yaml"]
    changed = {
        "studio_yaml": FILES["studio.yaml"]
        .replace("region: US\n", PLACE)
        .replace("name: Test studio", f"name: {QUOTED}")
        .replace("tagline: Small classes", f"tagline: {QUOTED}")
        + f"booking: {{includes: {QUOTED}, children: {LONG}, payment: {QUOTED}, refunds: {LONG}}}\n",
        "classes__first__class_yaml": lesson_of.replace("title: The first class", f"title: {QUOTED}")
        .replace("summary: Salts and a bar.", f"summary: {QUOTED}")
        .replace("take home: A jar and a bar.", f"take home: {json.dumps(LONG + TITLE, ensure_ascii=False)}")
        .replace("for: beginners", f"for: {QUOTED}")
        .replace("enrolled: 3}", f"cancelled: {QUOTED}, revision: 1}}"),
        "recipes__salts_yaml": FILES["recipes/salts.yaml"].replace("name: Plain salts", f"name: {json.dumps(LONG)}"),
        "pages__about_md": f"# About {LONG}\n\nWe say `</script>` and ]]> and {LONG}{LONG}.\n",
    }
    edition = read_edition(write_studio(tmp_path_factory.mktemp("hostile"), **changed))
    return list(compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY)).documents)


@pytest.fixture(scope="module")
def documents(composed: list[Document]) -> list[Document]:
    return [one for one in composed if one.folder is Folder.SITE and not one.path.endswith(".pdf")]


@pytest.fixture(scope="module")
def site(documents: list[Document], tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("site")
    for style in LAYOUTS.glob("styles/*"):
        (folder / "styles").mkdir(exist_ok=True)
        (folder / "styles" / style.name).write_bytes(style.read_bytes())
    for document in documents:
        (folder / document.path).parent.mkdir(parents=True, exist_ok=True)
        (folder / document.path).write_text(document.html, encoding="utf-8", newline="")
    assert {Path(document.path).suffix for document in documents} <= ALL_ENDINGS
    return folder


@pytest.mark.long
def test_the_checker_of_html_finds_nothing(site: Path) -> None:
    assert complaints(site) == []


@pytest.mark.long(sample=True)
def test_no_program_runs_and_nothing_is_cut_or_too_wide(site: Path, chromium: Browser) -> None:
    """Without `--long` each third page."""
    chromium.size(320, 700)
    found = {}
    for page in sorted(site.rglob("*.html"))[:: 1 if LONG_RUN in os.environ else 3]:
        chromium.open(page)
        found[page.name] = [*chromium.evaluate(TOO_WIDE), *chromium.complaints]
        data = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser").find_all("script")
        assert all(script["type"] == "application/ld+json" for script in data)
        assert chromium.evaluate("document.scripts.length") == len(data) <= 1
    assert not any(found.values()), "\n".join(f"{name}: {one}" for name, all_of_it in found.items() for one in all_of_it)


def test_the_class_has_its_title_everywhere(documents: list[Document]) -> None:
    by_path = {document.path: document.html for document in documents}
    page = BeautifulSoup(by_path["classes/first.html"], "html.parser")
    heading = page.find("h1")
    assert heading and heading.get_text().replace("\u00a0", " ") == TITLE
    script = page.find("script")
    assert script
    course = next(node for node in json.loads(script.get_text())["@graph"] if node["@type"] == "Course")
    assert (course["name"], course["description"]) == (TITLE, TITLE)
    for path in ("dates.ics", "classes/first.ics"):
        text = by_path[path]
        assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))
        events = icalendar.Calendar.from_ical(text).walk("VEVENT")
        assert events
        assert all(TITLE in str(event["SUMMARY"]) for event in events)
    feed = ElementTree.fromstring(by_path["dates.xml"])
    assert any(TITLE in (title.text or "") for title in feed.iter("{http://www.w3.org/2005/Atom}title"))
    assert len(list(ElementTree.fromstring(by_path["site-map.xml"]))) > 5
    assert json.loads(by_path["dates.json"])


def test_on_paper_the_title_is_text(composed: list[Document], tmp_path: Path) -> None:
    """Letters that our fonts lack are told; all others are printed as they are written, and the file has the whole title."""
    (sheet,) = [one for one in composed if one.path.endswith("teacher.pdf")]
    with only_our_fonts(tmp_path), presses(tmp_path, (LAYOUTS,)) as ready:
        ((_, made),) = ready.press([sheet])
    assert made.warnings and all("font" in warning for warning in made.warnings)
    with pikepdf.open(io.BytesIO(made.pdf)) as pdf:
        assert TITLE in str(pdf.docinfo["/Title"])
    pages = pypdfium2.PdfDocument(made.pdf)
    printed = "".join("".join(page.get_textpage().get_text_range().split()) for page in pages)
    assert "".join(TITLE.partition("ß")[0].split()) in printed
