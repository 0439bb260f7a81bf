"""A scale holds what is weighed and the vessel that it is weighed in.

What vessels weigh is common practice without a source, from memory, as one finds it with a scale in a kitchen or a laboratory.
"""

from fractions import Fraction
from typing import Unpack

import pytest

from builder.check.recipe.amount_for_scale import find_amounts_scales_cannot_weigh
from builder.library import CONTENT
from builder.model.recipe.column import Column
from builder.model.recipe.quantity import Rest, Temperature
from builder.model.recipe.recipe import AmountsAs
from builder.model.recipe.size import TotalSize
from builder.model.studio import Scale
from builder.reckon.recipe.scales import pick_scale, vessel_by
from tests.check.test_seldom_met import seen_in
from tests.making import CONSTANTS, OfPhase, grams, phase, recipe, scale, share, told, worked
from tests.reckon.test_batches import LOTION, STOCK
from tests.reckon.test_guests import STUDIO

USUAL = vessel_by(STUDIO.constants)
SMALL, BIG = scale("0.1", "500"), scale("1", "5000")


# (grams in it, what the vessel weighs): none of these pairs is sent to a scale that vessel and contents together overload.
@pytest.mark.parametrize(
    ("inside", "empty"),
    [
        ("0.5", 5),  # a paper cup
        ("90", 15),  # a cup of polypropylene, 150 mL
        ("90", 40),  # a glass beaker, 100 mL
        ("240", 100),  # a glass beaker, 250 mL
        ("450", 60),  # a jug of polypropylene, 500 mL
        ("450", 190),  # a glass beaker, 600 mL
        ("900", 340),  # a glass beaker, 1 L
        ("1800", 750),  # a steel pot, 2 L
    ],
)
@pytest.mark.parametrize("most", [20, 50, 100, 150, 200, 300, 500, 600, 1000, 2000, 3000])
def test_a_usual_vessel_overloads_no_scale_that_is_named(inside: str, empty: int, most: int) -> None:
    fine, coarse = scale("0.01", most), scale("1", "20000")
    picked, fits = pick_scale(grams(inside), [fine, coarse], USUAL)
    assert fits
    assert grams(inside) + grams(empty) <= picked.up_to


# What everybody weighs so in a kitchen stays on the scale where they weigh it.
@pytest.mark.parametrize(
    ("inside", "scales", "expected"),
    [
        ("2", [scale("0.001", "20"), SMALL], scale("0.001", "20")),  # a pinch in a paper cup, on a scale for jewels
        ("100", [scale("0.01", "200"), SMALL], scale("0.01", "200")),  # the lye of a small loaf
        ("300", [SMALL, BIG], SMALL),  # an oil in a plastic jug
        ("450", [SMALL, BIG], BIG),
        ("3300", [SMALL, BIG], BIG),  # the oil of a big class in its pot
    ],
)
def test_usual_amounts_stay_on_their_scale(inside: str, scales: list[Scale], expected: Scale) -> None:
    assert pick_scale(grams(inside), scales, USUAL) == (expected, True)


def in_one_phase(total: int, **heated: Unpack[OfPhase]) -> Column:
    """Weigh water, an oil and a little glycerin out on both scales."""
    made = recipe(phase("all", {"water": Rest(), "oil": share(40), "glycerin": share(2)}, **heated))
    return worked(made, LOTION, TotalSize(grams(total)), STOCK, [SMALL, BIG], constants={**CONSTANTS, **STUDIO.constants}).grams


# 348 g, 240 g and 12 g: the scale of 500 g holds each in a jug, and not 600 g in one. 58 g, 40 g and 2 g it holds together.
def test_a_scale_that_cannot_hold_a_phase_at_once_is_told_of() -> None:
    column = in_one_phase(600)
    assert {w.scale for w in column.weighed} == {SMALL}
    assert column.one_at_a_time == (("all", SMALL),)
    assert in_one_phase(100).one_at_a_time == ()


# Where vessels weigh nothing a scale of 500 g holds a phase of 500 g at once, and one of 501 g not.
@pytest.mark.parametrize(("total", "told_of"), [(500, ()), (501, (("all", SMALL),))])
def test_a_scale_holds_what_it_holds_at_most(total: int, told_of: tuple[tuple[str, Scale], ...]) -> None:
    made = recipe(phase("all", {"water": Rest(), "oil": share(40), "glycerin": share(2)}))
    column = worked(made, LOTION, TotalSize(grams(total)), STOCK, [SMALL, BIG]).grams
    assert {w.scale for w in column.weighed} == {SMALL}
    assert column.one_at_a_time == told_of


# A pot with a phase in it is weighed before and after heating, by a scale that holds both.
@pytest.mark.parametrize(("total", "fits"), [(600, True), (3500, True), (4800, False)])
def test_the_pot_of_a_heated_phase_stands_on_a_scale_too(total: int, fits: bool) -> None:
    (top_up,) = in_one_phase(total, heat_to=Temperature(Fraction(70))).top_ups
    assert top_up.fits is fits


def test_the_reference_says_what_a_vessel_is_taken_to_weigh() -> None:
    least, part = (STUDIO.constants[name].typical for name in ("lightest weighing cup", "weighing vessel to what it holds"))
    assert f"taken at {least} g and {part} % of what is in it" in (CONTENT / "reference" / "sums.md").read_text("utf-8")


# A kilogram in halves: 500 g and a jug stand on a scale of 1 kg, and on one of 500 g they do not. Together, in the pot that is weighed
# before and after heating, they want one that holds more than the kilogram.
@pytest.mark.parametrize(
    ("most", "found", "remedy"),
    [("500", 2, "Weigh it in parts"), ("1000", 1, "Make two batches"), ("2000", 0, "")],
)
def test_what_no_scale_holds_with_its_vessel_is_told_of_once(most: str, found: int, remedy: str) -> None:
    heated = phase("all", {"water": share(50), "glycerin": share(50)}, heat_to=Temperature(Fraction(70)))
    one = seen_in("US", recipe(heated, amounts_as=AmountsAs.PERCENT_OF_TOTAL), scales=(scale("0.1", most),))
    told_of = told(find_amounts_scales_cannot_weigh(one))
    assert [(finding.name, finding.remedy.startswith(remedy)) for finding in told_of] == [("amount-over-the-scale", True)] * found
