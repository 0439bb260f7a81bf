"""Every caution stands on the page of each step that it is about, before it: read in the pressed sheets of the example.

On a take-home sheet that is so without exception. In large print, where a part takes several pages, and on the sheets for staff and bench,
whose foot has the first aid, the head of a page names each caution of the part that stands on a page before (principle of ANSI Z535.6,
from memory: a message about a step is placed with the step). A caution is held to be about all that follows it in its part.
"""

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from builder.fonts.files import only_our_fonts
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.press.pool import presses
from tests.composing import styles
from tests.press.cautions_read import StepRead, steps_read
from tests.published import EXAMPLE, MOST_TO_WARN, composed_for, sheets_of

HOME, LARGE, BENCH, STAFF = "take-home sheet", "take-home sheet in large print", "steps at the bench", "teacher's sheet"
HEADS = {HOME: 26, LARGE: 58, BENCH: 36, STAFF: 33}  # Points from the upper edge, above which the head of a page stands.
# By default the sheets with most to warn of in least room; with `--long` those of every recipe and class, and each home size.
BY_DEFAULT = {**MOST_TO_WARN, STAFF: ("2027-01-23",)}


def html_of(sheet: Path) -> str:
    return composed_for(sheet).read_text(encoding="utf-8")


def pressed(kind: str, html: str) -> bytes:
    with TemporaryDirectory() as folder, only_our_fonts(Path(folder)), presses(EXAMPLE, (LAYOUTS,)) as ready:
        ((_, made),) = ready.press([Document(Folder.PRINT, "sheet.pdf", html, styles(kind))])
    return made.pdf


def read(kind: str, parts: tuple[str, ...]) -> list[StepRead]:
    """Read sheets as they were published, and one that was not as it is pressed."""
    sheets = sheets_of(kind, parts)
    assert len(sheets) >= len(parts)
    pdfs = ((html, sheet.read_bytes() if sheet.exists() else pressed(kind, html)) for sheet in sheets for html in (html_of(sheet),))
    found = [step for html, pdf in pdfs for step in steps_read(pdf, html, HEADS[kind])]
    assert len(found) > 20
    return found


def lacking(steps: list[StepRead]) -> list[str]:
    return [f"page {step.page}, {step.words}: {', '.join(sorted(step.lacks))}" for step in steps if step.lacks]


@pytest.mark.parametrize("parts", [BY_DEFAULT[HOME], pytest.param(("",), marks=pytest.mark.long)])
def test_on_a_take_home_sheet_each_caution_stands_on_the_page_of_each_step_that_it_is_about(parts: tuple[str, ...]) -> None:
    assert not lacking(read(HOME, parts))


@pytest.mark.parametrize(
    ("kind", "parts"),
    [
        *((kind, BY_DEFAULT[kind]) for kind in (LARGE, BENCH, STAFF)),
        *(pytest.param(kind, ("",), marks=pytest.mark.long) for kind in (LARGE, BENCH, STAFF)),
    ],
)
def test_elsewhere_the_head_of_a_page_names_each_caution_that_stands_on_a_page_before(kind: str, parts: tuple[str, ...]) -> None:
    steps = read(kind, parts)
    unsaid = [step for step in steps if not all(name in step.head for name in step.lacks)]
    assert not lacking(unsaid)


@pytest.mark.parametrize("parts", [BY_DEFAULT[LARGE], pytest.param(("",), marks=pytest.mark.long)])
def test_in_large_print_the_first_step_of_each_caution_stands_on_its_page(parts: tuple[str, ...]) -> None:
    assert not [step for step in read(LARGE, parts) if step.first & step.lacks]


def test_a_caution_that_stands_on_the_page_before_is_seen() -> None:
    """The reading itself: of a sheet pressed as a part runs on anywhere, it has to tell what its pages lack."""
    (sheet,) = sheets_of(HOME, ("gallon-jug-lotion--4",))
    split = "<style>.part, .under, .over, .beneath { display: block; break-inside: auto } .beneath { break-before: page }</style></head>"
    html = html_of(sheet).replace("</head>", split)
    assert lacking(steps_read(pressed(HOME, html), html, HEADS[HOME]))
