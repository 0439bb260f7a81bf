"""The panel and the sides of a container that nobody has measured: plain geometry, worked by hand from content/constants.yaml.

Wall and empty head make the outside 1.3 times the capacity. The most slender cylinder is 4 times as high as across, a thin pouch 12 mm
and a thin bar 20 mm thick; bottles are 1.2 to 2.8 times as high as across, tubes 2.4 to 3.6, jars and tins 0.2 to 1 (all common practice).
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.recipe.quantity import Length, Volume
from builder.rules.label.label_surface import could_sit
from builder.rules.label.panel import panel_of
from builder.rules.label.usual_outside import with_usual_outside
from tests.compose.test_label_rules import container
from tests.making import sure
from tests.reckon.test_guests import STUDIO
from tests.rules.test_label_rooms import label_of_100_by_70


# 250 mL are 325 cm3 outside: a cylinder 46.94 mm wide and 187.8 mm high, of whose side 40 % count. 240 mL of pouch: 312 cm3 by 12 mm. A bar
# is cast, and has neither wall nor head: 100 cm3 by 20 mm.
@pytest.mark.parametrize(
    ("shape", "millilitres", "area"),
    [("cylinder", 250, 11_077.09), ("tube", 15, 1_697.70), ("bag", 240, 26_000), ("cavity", 100, 5_000), ("round lid", 100, 5_283)],
)
def test_the_panel_of_a_container_is_the_largest_of_its_capacity(shape: str, millilitres: int, area: float) -> None:
    panel = sure(panel_of(container(shape, Volume(Fraction(millilitres))), STUDIO.constants))
    assert float(panel.area) == pytest.approx(area, rel=1e-4) and not panel.measured


@pytest.mark.parametrize("shape", ["cylinder", "tube", "round lid", "bag", "cavity", "rectangle"])
def test_where_not_even_a_capacity_is_known_there_is_no_panel(shape: str) -> None:
    assert panel_of(container(shape), STUDIO.constants) is None


# A slender bottle of 250 mL is 2.8 times as high as across, 48.44 mm: 152.19 mm around. A stout one is 64.25 mm across and 77.10 mm high.
@pytest.mark.parametrize(
    ("shape", "millilitres", "around", "height", "lid"),
    [
        ("cylinder", 250, 152.188, 77.103, None),
        ("tube", 15, 54.792, 47.915, None),
        ("round lid", 120, 167.950, 18.283, 53.460),
    ],
)
def test_the_side_of_a_round_container_is_the_least_of_usual_ones(
    shape: str, millilitres: int, around: float, height: float, lid: float | None
) -> None:
    outside = with_usual_outside(container(shape, Volume(Fraction(millilitres))), STUDIO.constants).outside
    assert float(sure(outside.around).millimetres) == pytest.approx(around, abs=0.001)
    assert float(sure(outside.height).millimetres) == pytest.approx(height, abs=0.001)
    assert outside.width is None
    assert outside.lid is None if lid is None else float(sure(outside.lid).millimetres) == pytest.approx(lid, abs=0.001)


# A bar of 96 mL that is 32 mm thick has a face of 30 cm2: the narrow one is a square of 54.77 mm, the flat one 40.82 mm high and 1.8 times
# as wide. A pouch of 240 mL, 30 mm thick: 80 cm2, 66.33 mm wide at 0.55 times its height, 100 mm high where it is 0.8 times as wide.
@pytest.mark.parametrize(("shape", "millilitres", "width", "height"), [("cavity", 96, 54.772, 40.825), ("bag", 240, 66.332, 100)])
def test_the_face_of_a_flat_container_is_the_least_of_usual_ones(shape: str, millilitres: int, width: float, height: float) -> None:
    outside = with_usual_outside(container(shape, Volume(Fraction(millilitres))), STUDIO.constants).outside
    assert float(sure(outside.width).millimetres) == pytest.approx(width, abs=0.001)
    assert float(sure(outside.height).millimetres) == pytest.approx(height, abs=0.001)
    assert outside.around is None and outside.lid is None


def test_each_length_that_was_measured_stays_as_it_was() -> None:
    measured = {"height": "30", "around": "200", "width": "66", "lid": "70"}
    for name, length in measured.items():
        outside = with_usual_outside(container("round lid", Volume(Fraction(120)), **{name: length}), STUDIO.constants).outside
        assert sure(getattr(outside, name)).millimetres == Fraction(length)


# All of the side of that cylinder is 11,077.09 / 0.4 = 27,692.7 mm2: a label as large as that can sit on it, and none that is larger.
@pytest.mark.parametrize(
    ("labels", "width", "height", "can"),
    [(1, "276.9", "100", True), (1, "277", "100", False), (2, "276.9", "50", True), (2, "277", "50", False), (3, "277", "50", False)],
)
def test_a_label_can_sit_on_what_nobody_measured_up_to_all_of_its_side(labels: int, width: str, height: str, *, can: bool) -> None:
    one = container("cylinder", Volume(Fraction(250)))
    sheet = replace(label_of_100_by_70(), width=Length(Fraction(width)), height=Length(Fraction(height)))
    assert could_sit(one, sheet, labels, STUDIO.constants) is can
    # A tag hangs on anything, and of what is measured, or of no known capacity, nothing is said here.
    assert could_sit(one, replace(sheet, hole=Length(Fraction(5))), labels, STUDIO.constants)
    assert could_sit(container("cylinder"), sheet, labels, STUDIO.constants)
    assert could_sit(container("cylinder", Volume(Fraction(250)), height="10", around="10"), sheet, labels, STUDIO.constants)
