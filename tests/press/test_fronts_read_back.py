"""Labels of the example, pressed and read back from the PDF: what a front says, how high its letters are, where everything stands.

Heights by the area of the principal display panel: 1/16 in up to 5 square inches, 1/8 in above that and up to 25 (21 CFR 701.13(i), from
memory); other text 1/16 in, on the small o, or the capitals where nothing else is used (21 CFR 701.3(b), read). The panel of a cylinder is
40 % of its height by the way around, of a flat face its whole, of a lid the circle (21 CFR 701.10, read for the 40 %).
"""

from collections.abc import Iterator, Mapping, Sequence
from ctypes import byref, c_double
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from math import pi

import pypdfium2
import pypdfium2.raw
import pytest

from builder.compose.edition import Edition
from builder.compose.label_front.designs import DESIGNS
from builder.compose.label_layout.label_lines import Block, line_height
from builder.compose.publication import editions
from builder.compose.scopes import LABELS, Labelled
from builder.fonts.typefaces import typefaces_of_labels
from builder.library import LAYOUTS
from builder.model.document import Document
from builder.model.teaching.class_plan import MadeProduct
from builder.press import press_one
from tests import published
from tests.composing import KINDS
from tests.making import sure
from tests.published import EXAMPLE

FACES = typefaces_of_labels()
MM = 72 / 25.4
INCH = 25.4
SIXTEENTH, EIGHTH = INCH / 16, INCH / 8
MEASURED = 0.02  # What the outline of a letter is read off by, in millimetres.
# The panels of the example's containers in square inches, by the measures on its shelf.
PANELS = {
    "meadow-lotion": 0.4 * 76 * 152 / INCH**2,
    "pump-side-hand-soap": 0.4 * 96 * 183 / INCH**2,
    "still-water-bath-salts": 0.4 * 64 * 236 / INCH**2,
    "orchard-sugar-scrub": 0.4 * 80 * 258 / INCH**2,
    "kitchen-garden-bar": 84 * 58 / INCH**2,
    "window-bar": 82 * 56 / INCH**2,
    "winter-hand-cream": pi / 4 * 62**2 / INCH**2,
    "mint-tin-lip-balm": pi / 4 * 43**2 / INCH**2,
}
NAMES = {
    "meadow-lotion": ("Meadow lotion", "Lotion", "Net Wt 3.98 oz (113 g)"),
    "pump-side-hand-soap": ("Pump-side hand soap", "Liquid soap", "7.55 fl oz (223 mL)"),
    "still-water-bath-salts": ("", "Bath salts", "Net Wt 10.58 oz (300 g)"),
    "orchard-sugar-scrub": ("", "Body scrub", "Net Wt 10.05 oz (285 g)"),
    "kitchen-garden-bar": ("Kitchen garden bar", "Soap", "Net Wt 3.68 oz (104 g)"),
    "window-bar": ("Window bar", "Soap", "Net Wt 3.52 oz (100 g)"),
    "winter-hand-cream": ("Winter hand cream", "Cream", "Net Wt 1.94 oz (55 g)"),
    "mint-tin-lip-balm": ("Mint tin lip balm", "Lip balm", "Net Wt 0.45 oz (13 g)"),
}


@dataclass(frozen=True)
class Letter:
    """A letter as it is printed, in millimetres from the upper left corner of the paper: where the pen begins it, and its outline."""

    text: str
    begins: float
    left: float
    top: float
    right: float
    bottom: float


def letters_of(pdf: bytes) -> list[Letter]:
    with pypdfium2.PdfDocument(pdf) as read:
        return list(_letters(read[0]))


def _letters(page: pypdfium2.PdfPage) -> Iterator[Letter]:
    text, high = page.get_textpage(), page.get_height()
    said = text.get_text_range(0, text.count_chars())
    assert len(said) == text.count_chars()
    for number, letter in enumerate(said):
        if letter.isspace():
            continue
        x, y = c_double(), c_double()
        assert pypdfium2.raw.FPDFText_GetCharOrigin(text, number, byref(x), byref(y))
        left, bottom, right, top = text.get_charbox(number)
        yield Letter(letter, x.value / MM, left / MM, (high - top) / MM, right / MM, (high - bottom) / MM)


@cache
def example() -> Edition:
    outcome = published.example()
    seen, _ = editions(sure(outcome.studio), outcome.plans, outcome.findings, (LAYOUTS,), date(2027, 1, 2), held=outcome.held)
    return seen


@cache
def labels_of(recipe: str, design: str) -> tuple[Labelled, list[Letter]]:
    """Return the labels of the first date on which a product is made, and the letters of their first page; with a design, of that one."""
    edition = example()
    sheet = next(one for one in edition.plans for made in one.made if made.batch.recipe.key == recipe)
    if design:
        of_class = replace(sheet.studio_class, labels=replace(sheet.studio_class.labels, design=design, to_colour=False))
        made = tuple(_undesigned(one) for one in sheet.made)
        sheet = replace(sheet, studio_class=of_class, made=made)
    seen = replace(edition, plans=(sheet,))
    labelled = next(one for one in LABELS.all(seen) if any(plan.made.batch.recipe.key == recipe for plan in one.of))
    document: Document = sure(KINDS["labels"].make(seen, labelled))
    return labelled, letters_of(press_one(document, EXAMPLE, (LAYOUTS,)))


def _undesigned(made: MadeProduct) -> MadeProduct:
    recipe = replace(made.batch.recipe, label_design="")
    containers = tuple(replace(one, jars=tuple(replace(jar, design="") for jar in one.jars)) for one in made.containers)
    batches = tuple(replace(one, batch=replace(one.batch, recipe=recipe)) for one in made.batches)
    return replace(made, batches=batches, containers=containers)


def lines_of(labelled: Labelled) -> Iterator[tuple[Block, int, str, float, float]]:
    """Yield each line of the labels of the first sheet: its block, its number in it, what it says, and where its cell begins."""
    stock = labelled.labels[0].laid_out.sheet
    number = labelled.first - 1
    for label in labelled.labels:
        for blocks in (one.blocks for one in label.positions):
            if number >= stock.positions:
                return
            x, y = stock.position(number)
            number += 1
            for block in blocks:
                for at, line in enumerate(block.lines):
                    yield block, at, "".join(run.text for run in line), x, y


def printed(block: Block, at: int, x: float, y: float, letters: Sequence[Letter]) -> list[Letter]:
    """Return the letters of one line: those whose middle lies in its height and width."""
    high = line_height(block.points, block.leading)
    top, left = y + block.y + at * high, x + block.x
    found = (
        one
        for one in letters
        if top <= (one.top + one.bottom) / 2 < top + high and left - 0.3 <= (one.left + one.right) / 2 <= left + block.width + 0.3
    )
    return sorted(found, key=lambda one: one.begins)


PRODUCTS: Mapping[str, Sequence[str]] = {recipe: ("", *DESIGNS) if recipe == "meadow-lotion" else ("",) for recipe in PANELS}
# By default one recipe, around a bottle, in the design of its class; the others with --long: faces and their widths are tried one by one in
# test_labels.py.
BY_DEFAULT = ("pump-side-hand-soap", "")
CASES = [
    pytest.param(recipe, design, marks=() if (recipe, design) == BY_DEFAULT else pytest.mark.long)
    for recipe, designs in PRODUCTS.items()
    for design in designs
]


@pytest.mark.parametrize(("recipe", "design"), CASES)
def test_every_line_is_printed_where_it_was_laid_out(recipe: str, design: str) -> None:
    """To a tenth of a millimetre: the beginning of what stands at the left, the middle of what is centred."""
    labelled, page = labels_of(recipe, design)
    lines = 0
    for block, at, said, x, y in lines_of(labelled):
        words = "".join(said.split())
        if not words:
            continue
        found = printed(block, at, x, y, page)
        assert "".join(one.text for one in found) == words
        begins = found[0].begins
        face = FACES[block.face or ("bold" if block.lines[at][-1].bold else "regular")]
        ends = found[-1].begins + face.width(words[-1], block.points) + block.tracking * block.points / MM
        if block.is_centred:
            assert (begins + ends) / 2 == pytest.approx(x + block.x + block.width / 2, abs=0.1), said
        else:
            assert begins == pytest.approx(x + block.x, abs=0.1), said
        assert ends <= x + block.x + block.width + 0.1
        lines += 1
    assert lines > 10


@pytest.mark.parametrize(("recipe", "design"), CASES)
def test_letters_are_as_high_as_the_law_asks_for_and_net_contents_stand_at_the_bottom(recipe: str, design: str) -> None:
    labelled, page = labels_of(recipe, design)
    stock = labelled.labels[0].laid_out.sheet
    least = EIGHTH if PANELS[recipe] > 5 else SIXTEENTH
    seen = 0
    for block, at, said, x, y in lines_of(labelled):
        found = printed(block, at, x, y, page)
        small = [one.bottom - one.top for one in found if one.text == "o"]
        capitals = [one.bottom - one.top for one in found if one.text in "BDEFHIKLMNPRTUXZ"]
        is_net = any(run.text.startswith(("Net", "7.55")) for run in block.lines[0])
        bound = least if is_net else SIXTEENTH
        if any(letter.islower() for letter in said):
            assert all(one >= bound - MEASURED for one in small), (said, min(small))
        else:
            assert all(one >= SIXTEENTH - MEASURED for one in capitals), (said, min(capitals))
        if is_net:
            seen += 1
            lowest = max(one.bottom for one in found)
            assert lowest <= y + float(stock.height.millimetres)
            if PANELS[recipe] > 5:
                assert min(one.top for one in found) >= y + 0.7 * float(stock.height.millimetres) - 0.1, said
    assert seen >= 1


@pytest.mark.parametrize(("recipe", "design"), CASES)
def test_a_front_says_what_it_is_and_how_much_and_its_name_is_the_largest(recipe: str, design: str) -> None:
    labelled, page = labels_of(recipe, design)
    name, identity, net = NAMES[recipe]
    said = "".join(one.text for one in page).casefold()
    for text in (name, identity, net):
        assert "".join(text.casefold().split()) in said, text
    for front in {one.positions[0].blocks for one in labelled.labels}:
        sizes = {"".join(run.text for line in block.lines for run in line): block.points for block in front}
        of_net = max(size for text, size in sizes.items() if text.startswith(("Net", "7.55")))
        others = [size for text, size in sizes.items() if not text.startswith(("Net", "7.55"))]
        assert of_net <= 0.7 * max(others) + 0.01 or labelled.plan.studio_class.labels.to_colour
