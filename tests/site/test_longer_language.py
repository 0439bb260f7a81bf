"""A language whose words are two fifths longer than ours: on a narrow phone nothing is cut off or too wide, and a class is printed whole.

The language is made by code from `messages.pot`; two fifths is what a text of some length may grow by in translation (common practice, no
source).
"""

import io
from collections.abc import Iterator
from pathlib import Path

import pytest
from babel.messages.pofile import write_po
from pypdfium2 import PdfDocument

from builder.compose.publication import compose_documents, editions
from builder.library import LAYOUTS
from builder.model.document import Folder
from builder.words.say import HOLE, speaking
from tests.browser import Browser
from tests.compose.conftest import TODAY, read_edition
from tests.compose.french_studio import FILES
from tests.messages import messages
from tests.site.looks import TOO_WIDE

ACCENTED = str.maketrans("aeioucnAEIOUCN", "áéíóúçñÁÉÍÓÚÇÑ")
WORD, GROWS_BY = "lóñgér ", 0.4


def stretched(text: str) -> str:
    """Translate a message: accents on its letters, and more words after it; the names in braces stay."""
    parts = HOLE.split(text)
    said = "".join(f"{{{part}}}" if odd % 2 else part.translate(ACCENTED) for odd, part in enumerate(parts))
    more = round(GROWS_BY * sum(map(len, parts[::2])))
    return f"{said} {(WORD * (more // len(WORD) + 1))[:more].strip()}".rstrip() if more > 1 else said


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    studio, folder = (tmp_path_factory.mktemp(name) for name in ("studio", "site"))
    for name, text in FILES.items():
        (studio / name).parent.mkdir(parents=True, exist_ok=True)
        (studio / name).write_text(text.lstrip("\n") + ("language: Longer\n" if name == "studio.yaml" else ""), encoding="utf-8")
    catalog = messages()
    for message in catalog:
        if message.id:
            message.string = stretched(message.id) if isinstance(message.id, str) else tuple(map(stretched, message.id))
    catalog.locale = "de_DE"
    (studio / "shelf/languages").mkdir(parents=True, exist_ok=True)
    with (studio / "shelf/languages/longer.po").open("wb") as file:
        write_po(file, catalog)
    edition = read_edition(studio)
    assert edition.studio.speaks.name == "Longer"
    with speaking(edition.studio.speaks.messages):
        made = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY))
    for style in LAYOUTS.glob("styles/*"):
        (folder / "styles").mkdir(exist_ok=True)
        (folder / "styles" / style.name).write_bytes(style.read_bytes())
    for document in made.documents:
        if document.folder is Folder.SITE and not document.path.endswith(".pdf"):
            (folder / document.path).parent.mkdir(parents=True, exist_ok=True)
            (folder / document.path).write_text(document.html, encoding="utf-8", newline="")
    yield folder


def pages(site: Path) -> list[Path]:
    """Return the pages, one for each question of visitors."""
    of_choices = {page.name.partition("-")[0]: page for page in sorted((site / "find").glob("*.html"))}
    return sorted({*site.glob("*.html"), *site.glob("classes/*.html"), *of_choices.values()})


@pytest.mark.long
@pytest.mark.parametrize("width", [320, 768, 1280])
def test_longer_words_have_room(site: Path, chromium: Browser, width: int) -> None:
    chromium.size(width, 700)
    found = {}
    for page in pages(site):
        chromium.open(page)
        assert chromium.evaluate("document.body.innerText.includes('lóñgér')"), page.name
        chromium.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
        found[page.name] = chromium.evaluate(TOO_WIDE)
    assert len(found) > 15
    assert {name: wrong for name, wrong in found.items() if wrong} == {}


@pytest.mark.long
def test_a_class_in_longer_words_is_printed_whole(site: Path, chromium: Browser) -> None:
    for page in sorted(site.glob("classes/*.html")):
        if "--" not in page.name:
            chromium.open(page)
            sheets = [sheet.get_textpage().get_text_bounded() for sheet in PdfDocument(io.BytesIO(chromium.pdf()))]
            assert 1 <= len(sheets) <= 2 and "lóñgér" in sheets[0], page.name
