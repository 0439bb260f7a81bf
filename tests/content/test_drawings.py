"""Every drawing: there, in one style, to be read at its printed size, and said in words; shown beside its step with the right figure."""

import re
import xml.etree.ElementTree as ElementTree
from pathlib import Path
from typing import cast

import pytest

from builder.compose.teaching.drawn import figure_html
from builder.compose.teaching.pieces import TextWriter
from builder.library import CONTENT
from builder.list_names import ListName
from builder.model.drawing import READING
from builder.model.finding import Finding
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.teaching.lesson import Prose, Steps, drawings_in
from builder.read.teaching.blocks import TextBlock, read_blocks
from builder.reference.lists import Shown, list_of
from builder.tasks.drafts import drawn_on, library_of, studio_in
from tests.published import EXAMPLE

DRAWINGS = library_of(None).drawings
INK, TINT, WHITE = "#1d1a17", "#c9dbe2", "#ffffff"
# The writer of this test does not look into the batch.
ANY_BATCH = cast(WorkedBatch, object())
SVG = "{http://www.w3.org/2000/svg}"


def test_every_file_is_in_the_index_and_the_other_way_round() -> None:
    files = {path.stem.replace("-", " ") for path in (CONTENT / "drawings").glob("*.svg")}
    assert files == set(DRAWINGS)
    wanted = (
        "lye into water",
        "no trace",
        "light trace",
        "heavy trace",
        "tared jug",
        "cutting the block",
        "goggles and gloves",
        "water bath",
    )
    assert {*wanted, "drops", "portions on the scale", "out of reach of children", "hot pot"} <= files


@pytest.mark.parametrize("name", DRAWINGS)
def test_each_is_in_one_style_at_a_size_that_can_be_read(name: str) -> None:
    root = ElementTree.fromstring(DRAWINGS[name].svg)
    left, top, width, height = map(float, root.attrib["viewBox"].split())
    assert (left, top) == (0, 0)
    assert root.get("width") == f"{width / 2:g}mm" and root.get("height") == f"{height / 2:g}mm"
    assert 30 <= height / 2 <= 45 and width / 2 in (45, 90)
    colours = {one.get(key) for one in root.iter() for key in ("fill", "stroke")} - {None, "none"}
    assert colours <= {INK, TINT, WHITE}
    assert not any(one.get("style") or one.get("id") or one.get("class") for one in root.iter())
    lines = [float(one.attrib["stroke-width"]) for one in root.iter() if one.get("stroke-width") and one.get("stroke") != WHITE]
    assert min(lines) >= 0.8  # 0.4 mm
    texts = [one.text for one in root.iter(f"{SVG}text")]
    numbered = {str(number) for number in range(1, 9)} if name == "bench from above" else set()  # Of the legend beside it.
    assert all(text in (READING, "0") or text in numbered for text in texts)


@pytest.mark.parametrize("name", DRAWINGS)
def test_each_is_said_in_words(name: str) -> None:
    drawing = DRAWINGS[name]
    assert drawing.alt.endswith(".") and len(drawing.alt) > 40
    assert drawing.caption and len(drawing.caption) < 70
    figure = figure_html(drawing)
    assert f'role="img"><title>{drawing.alt.replace(chr(39), "&#x27;")}</title>' in figure
    assert READING not in figure


@pytest.mark.parametrize(
    ("amount", "shown"),
    [
        ("144.2\u00a0g", "144.2\u00a0g"),
        ("144.2\u00a0g (5.085\u00a0oz)", "144.2\u00a0g"),
        ("12 strokes (94\u00a0g)", ""),
        ("at most 1.2\u00a0g", ""),
        ("4 bars", ""),
        ("5 glasses", ""),
        ("", ""),
    ],
)
def test_a_scale_shows_a_weight_and_nothing_else(amount: str, shown: str) -> None:
    figure = figure_html(DRAWINGS["weighing"], amount)
    assert re.findall(r"<text[^>]*>([^<]*)</text>", figure)[0] == shown
    assert (f"The display shows {shown}." in figure) == bool(shown)
    assert figure_html(DRAWINGS["tared jug"], amount) == figure_html(DRAWINGS["tared jug"])


def read(text: str) -> tuple[list[TextBlock], list[Finding]]:
    findings: list[Finding] = []
    return read_blocks(text, "lesson.md", findings), findings


def test_in_a_step_it_stands_before_its_words_and_ends_with_it() -> None:
    (steps,), findings = read("1. Weigh {water} of water. {drawing: weighing}\n2. Stir.\n")
    assert findings == [] and isinstance(steps, Steps)
    assert [hole.name.text for hole in drawings_in((steps,))] == ["weighing"]
    assert "drawing" not in " ".join(sentence.words for step in steps.steps for sentence in step.sentences)
    writer = TextWriter(lambda *_: "20\u00a0g", str, str, lambda name: DRAWINGS[name.key])
    html = writer.fill(steps.steps[0].pieces, ANY_BATCH)
    assert html.startswith('<div class="beside"><figure class="drawing">') and html.endswith('<div class="below"></div>')
    assert ">20\u00a0g</text>" in html
    assert "<div" not in writer.fill(steps.steps[1].pieces, None)


def test_several_stand_in_a_paragraph_of_their_own() -> None:
    (row,), findings = read("{drawing: no trace}\n{drawing: light trace} {drawing: heavy trace}\n")
    assert findings == [] and isinstance(row, Prose)
    assert [hole.name.text for hole in drawings_in((row,))] == ["no trace", "light trace", "heavy trace"]
    assert len(row.pieces) == 3


@pytest.mark.parametrize("text", ["Soap {drawing: drops} is soap.\n", "| a |\n|---|\n| {drawing: drops} |\n", "- {drawing: drops}\n"])
def test_elsewhere_it_is_found(text: str) -> None:
    assert [one.name for one in read(text)[1]] == ["brace-out-of-place"]


def test_it_is_proposed_where_words_fit_until_it_is_there() -> None:
    studio = studio_in(EXAMPLE)
    for drawing in DRAWINGS.values():
        for fits in drawing.fits:
            assert len(fits) > 1, (drawing.name, fits)
    rows = {row[0]: row[2] for row in list_of(ListName.DRAWINGS, Shown(drawn_on(EXAMPLE), studio)).rows}
    lesson = "classes/bath-tea-and-lip-balm/lesson.md"
    lines = Path(EXAMPLE, lesson).read_text().splitlines()
    (step,) = [
        place for place, line in enumerate(lines, 1) if line.endswith("Put a small dry cup on the pocket scale, and set the scale to zero.")
    ]
    assert f"{lesson}:{step}" in list_of(ListName.DRAWINGS, Shown(drawn_on(EXAMPLE), studio), "tared jug").rows[0][2]
    assert rows["{drawing: lye into water}"] == ""  # It stands in every part that puts lye into water.
    assert len(rows) == len(DRAWINGS)


def test_the_example_shows_them_where_they_help() -> None:
    studio = studio_in(EXAMPLE)
    shown = {hole.name.text for one in studio.classes.values() for part in one.lesson.parts for hole in drawings_in(part.blocks)}
    assert {
        "lye into water",
        "light trace",
        "tared jug",
        "weighing",
        "water bath",
        "cutting the block",
        "drops",
        "goggles and gloves",
    } <= shown
