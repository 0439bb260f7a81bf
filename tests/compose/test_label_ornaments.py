"""What designs draw with the mark: cloth, stitches, sprays and garlands from the numbers of a recipe, the same each time, off the words."""

import re
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.compose.label_front.cloth import SETT, cloth
from builder.compose.label_front.designs import DESIGNS, Ornament
from builder.compose.label_front.sprays import MOST_PAIRS, garland, sprays
from builder.compose.label_front.stitches import stitched
from builder.compose.label_layout.composed import lay_out_composed, whole_of
from builder.compose.ornament.portrait import Form
from tests.compose.test_colouring import SHARES, portrait
from tests.compose.test_label_fronts import FACES, LARGE, LEAST, SETTER, SHAPES, label
from tests.making import sure

RECTANGLE = re.compile(r"M(-?[\d.]+) (-?[\d.]+)h([\d.]+)v([\d.]+)h-[\d.]+z")
POINT = re.compile(r"(-?[\d.]+) (-?[\d.]+)")


@settings(max_examples=30, deadline=None)
@given(st.sampled_from(sorted(SHARES)), st.floats(8, 200), st.floats(8, 120))
def test_a_cloth_is_woven_within_its_rectangle_with_the_broadest_stripe_in_the_middle(shares: str, width: float, height: float) -> None:
    one = cloth(portrait(SHARES[shares], Form.BLUNT), 3.0, 2.0, width, height)
    found = [tuple(map(float, piece)) for piece in RECTANGLE.findall(one)]
    assert found
    for x, y, wide, high in found:
        assert x >= 3.0 - 0.02 and y >= 2.0 - 0.02 and x + wide <= 3.0 + width + 0.02 and y + high <= 2.0 + height + 0.02
    down = [(x, wide) for x, y, wide, high in found[1:] if abs(high - height) < 0.02 and wide < SETT]
    middle = next((wide for x, wide in down if x - 0.02 <= 3.0 + width / 2 <= x + wide + 0.02), None)
    assert middle is not None and all(wide <= middle + 0.02 for _, wide in down)


def of_each_recipe() -> list[tuple[str, ...]]:
    bottle = whole_of(SHAPES["bottle"].sheet)
    # Three alike of four petals are the same flower as twelve alike.
    kinds = [portrait(shares, form) for name, shares in SHARES.items() if name != "even three" for form in (Form.ROUND, Form.FACETED)]
    return [(cloth(one, 0, 0, 60, 30), stitched(one, 24), sprays(one, (30, 20), 8, 26, 18), garland(one, bottle, 1, 10)) for one in kinds]


def test_each_recipe_has_its_own_cloth_and_stitches_and_leaves_of_the_form_of_its_petals() -> None:
    drawn = of_each_recipe()
    assert drawn == of_each_recipe() and all(all(parts) for parts in drawn)
    assert len({parts[1] for parts in drawn}) == len(drawn)
    assert len({parts[2] for parts in drawn}) == len({parts[3] for parts in drawn}) == 2


@pytest.mark.parametrize("form", Form)
@pytest.mark.parametrize("side", [7.0, 15.0, 30.0, 60.0])
def test_stitches_lie_in_the_square_of_the_mark_and_sprays_within_reach(side: float, form: Form) -> None:
    one = portrait(SHARES["water and traces"], form)
    crosses = re.findall(r"M([\d.]+) ([\d.]+)l", stitched(one, side))
    assert len(crosses) > 20 and all(0 <= float(x) <= side and 0 <= float(y) <= side for x, y in crosses)
    reach = 1.9 * side
    drawn = sprays(one, (100.0, 100.0), 0.4 * side, reach, side)
    assert drawn.count("M") <= 2 + 2 * (2 * MOST_PAIRS + 1)
    assert all(abs(float(x) - 100.0) <= reach + 0.5 for x, _ in POINT.findall(drawn.split("<g")[1]))


LONG_NAME = "Wild rose and orchard honey hand balm"


# A mark stays off the words: half a millimetre at least, this studio's own measure, no source.
@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("design", DESIGNS)
@pytest.mark.parametrize(
    "name", [*(pytest.param(name, marks=pytest.mark.long) for name in ("Meadow lotion", "Kitchen garden bar")), LONG_NAME]
)
def test_a_mark_stays_off_the_words(design: str, shape: str, name: str) -> None:
    laid = lay_out_composed([(label(name=name), DESIGNS[design])], SHAPES[shape], LEAST["large" if shape in LARGE else "small"], SETTER)
    if laid is None:
        return
    drawing = sure(laid.labels[0][0].drawing)
    radius, x, y = drawing.side / 2, drawing.x + drawing.side / 2, drawing.y + drawing.side / 2
    for block in laid.labels[0][0].blocks:
        if not drawing.side or block.x >= drawing.on.width:
            continue
        high = block.height / len(block.lines)
        for number, line in enumerate(block.lines):
            wide = sum(FACES[block.face or ("bold" if run.bold else "regular")].width(run.text, block.points) + run.blank for run in line)
            left = block.x + (block.width - wide) / 2 if block.is_centred else block.x
            top = block.y + number * high
            nearest = max(left, min(x, left + wide)), max(top + 0.1 * high, min(y, top + 0.9 * high))
            assert hypot(nearest[0] - x, nearest[1] - y) >= radius * (0.97 if drawing.design.ornament is not Ornament.CORNER else 0.9), line
