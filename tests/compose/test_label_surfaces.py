"""Whether a label sits on its container, and which sheet is taken where the studio names none."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from math import pi, sqrt
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.compose.label_layout.label_plans import LabelPlan, plan_labels
from builder.compose.label_layout.label_sheets import uses_to_try
from builder.model.label.label_sheet import LabelSheet, Paper
from builder.model.recipe.figure import Figure
from builder.model.recipe.quantity import Length, Volume
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.label.label_places import labels_for
from builder.rules.label.label_surface import could_sit, sits
from builder.rules.label.usual_outside import FLAT, ROUND, with_usual_outside
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.compose.test_label_rules import container
from tests.making import sure

MEASURES = "source: common-practice, at: measured with a tape, known: measured}\n"


@pytest.fixture(scope="module")
def stocks(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, LabelSheet]:
    return read_edition(write_studio(tmp_path_factory.mktemp("surfaces"))).studio.label_sheets


@pytest.fixture(scope="module")
def constants(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, Figure]:
    return read_edition(write_studio(tmp_path_factory.mktemp("constants"))).studio.constants


# Plain geometry: a label of 95.25 mm by 63.5 mm (letter 2 x 4), and circles and squares of 60.96 mm, whose diagonal is 86.2 mm.
@pytest.mark.parametrize(
    ("shape", "outside", "sheet", "labels", "sat"),
    [
        ("cylinder", {"height": "63.5", "around": "95.25"}, "letter 2 x 4", 1, True),
        ("cylinder", {"height": "63.4", "around": "200"}, "letter 2 x 4", 1, False),
        ("cylinder", {"height": "70", "around": "190"}, "letter 2 x 4", 2, False),
        ("cylinder", {"height": "70", "around": "190.5"}, "letter 2 x 4", 2, True),
        ("cylinder", {"height": "70"}, "letter 2 x 4", 1, None),
        ("cylinder", {"lid": "30"}, "letter 2 x 4", 1, None),
        ("round lid", {"lid": "61"}, "letter 3 x 4 round", 1, True),
        ("round lid", {"lid": "60"}, "letter 3 x 4 round", 1, None),
        ("round lid", {"lid": "86"}, "letter 3 x 4 square", 1, None),
        ("round lid", {"lid": "86.3"}, "letter 3 x 4 square", 1, True),
        ("round lid", {"lid": "60", "height": "20", "around": "210"}, "letter 3 x 4 round", 1, False),
        ("bag", {"width": "75", "height": "100"}, "letter 2 x 4", 1, False),
        ("bag", {"width": "75", "height": "100"}, "letter 3 x 4 square", 2, True),
        ("cavity", {"width": "65", "height": "96"}, "letter 2 x 4", 1, True),
        ("bag", {"width": "75", "height": "100"}, "letter tags", 1, True),
        ("cylinder", {}, "letter 2 x 4", 1, None),
    ],
)
def test_what_sits(
    stocks: Mapping[str, LabelSheet], shape: str, outside: Mapping[str, Any], sheet: str, labels: int, sat: bool | None
) -> None:
    assert sits(container(shape, **outside), stocks[sheet], labels) is sat


@given(st.sampled_from(("cylinder", "round lid", "bag", "cavity")), st.integers(10, 200), st.integers(10, 400), st.integers(1, 3))
def test_what_sits_also_sits_on_a_larger_container_and_with_fewer_labels(
    stocks: Mapping[str, LabelSheet], shape: str, height: int, other: int, labels: int
) -> None:
    outside: dict[str, Any] = {"height": str(height), "around": str(other), "width": str(other), "lid": str(other)}
    larger: dict[str, Any] = {key: str(int(value) + 7) for key, value in outside.items()}
    for stock in (stocks["letter 2 x 4"], stocks["letter 3 x 4 round"]):
        if sits(container(shape, **outside), stock, labels):
            assert sits(container(shape, **larger), stock, labels)
            assert labels == 1 or sits(container(shape, **outside), stock, labels - 1)


def plans(tmp_path: Path, measures: str) -> tuple[Studio, ClassPlan, LabelPlan]:
    recipe = FILES["recipes/salts.yaml"].replace("4 fl oz jar, weight: 113 g", "our jar, weight: 113 g, measured: one filled")
    shelf = f"our jar: {{capacity: 4 fl oz, shape: round lid, {measures}{MEASURES}"
    edition = read_edition(write_studio(tmp_path, recipes__salts_yaml=recipe, shelf__containers_yaml=shelf))
    return edition.studio, edition.plans[-1], next(plan_labels(edition.studio, edition.plans[-1]))


def test_labels_of_the_size_of_the_container_come_first_and_a_tag_bears_what_a_lid_does_not(tmp_path: Path) -> None:
    _, _, roomy = plans(tmp_path / "roomy", "height: 70 mm, around: 240 mm, lid: 70 mm, ")
    stock = sure(roomy.laid_out).sheet
    assert stock.name.startswith("our jar, ") and stock.height.millimetres <= 70
    assert stock.width.millimetres * sure(roomy.laid_out).count <= 240
    studio, sheet, flat = plans(tmp_path / "flat", "height: 12 mm, around: 136 mm, lid: 43 mm, ")
    assert sure(flat.laid_out).sheet.is_round and sure(flat.laid_out).sheet.width.millimetres <= 43
    stock = sure(sure(flat.laid_out).back).sheet
    assert stock.hole is not None
    # The text of a tag stands below its hole, which is drawn from 9 mm to 14 mm.
    (cells, *_) = sure(sure(flat.laid_out).back).labels
    assert all(block.y >= 14 for cell in cells for block in cell.blocks)
    tried = [(one.sheet.name, one.count, one.back) for stocks in uses_to_try(studio, sheet, flat.filling.fill) for one in stocks]
    names = [name for name, _, _ in tried]
    assert len(tried) == len(set(tried)) and names.index(stock.name) < names.index("letter 1 x 2")


def test_without_measures_labels_of_the_usual_size_come_first_then_a_tag_and_last_what_sits_on_no_usual_jar(tmp_path: Path) -> None:
    studio, sheet, plan = plans(tmp_path, "")
    tried = [
        (one.sheet.name, one.count, one.back and one.back.name)
        for stocks in uses_to_try(studio, sheet, plan.filling.fill)
        for one in stocks
    ]
    assert tried[0] == ("our jar, front and back", 2, None)
    names = [name for name, _, _ in tried]
    front_and_tag = tried.index(("our jar, lid and base", 1, "letter tags"))
    assert front_and_tag < names.index("letter tags") < names.index("letter 3 x 6")


@pytest.mark.long
def test_a_front_on_the_container_has_its_back_on_a_tag_where_both_find_no_room(tmp_path: Path) -> None:
    shelf = "our vial: {capacity: 10 mL, shape: cylinder, height: 55 mm, around: 60 mm, " + MEASURES
    recipe = FILES["recipes/salts.yaml"].replace("4 fl oz jar, weight: 113 g", "our vial, weight: 10 g, measured: one filled")
    edition = read_edition(write_studio(tmp_path, recipes__salts_yaml=recipe, shelf__containers_yaml=shelf))
    laid = sure(next(plan_labels(edition.studio, edition.plans[-1])).laid_out)
    assert laid.count == 1 and laid.sheet.width.millimetres <= 30 and laid.sheet.height.millimetres <= 55
    assert laid.back and laid.back.sheet.hole is not None


# Plain geometry: a cylinder of that volume whose straight side is so many times as high as it is across; a slab of that face and thickness.
@given(st.sampled_from(("cylinder", "tube", "round lid")), st.integers(2, 1000), st.integers(0, 20))
def test_the_least_sides_of_usual_containers_are_on_each_of_them(
    constants: Mapping[str, Figure], shape: str, millilitres: int, between: int
) -> None:
    one = container(shape, Volume(Fraction(millilitres)))
    figure = constants[ROUND[one.shape]]
    proportion = float(figure.low + (figure.highest - figure.low) * between / 20)
    across = (4000 * millilitres / (pi * proportion)) ** (1 / 3)
    outside = with_usual_outside(one, constants).outside
    assert sure(outside.around).millimetres <= pi * across + 1e-6
    assert sure(outside.height).millimetres <= proportion * across + 1e-6
    assert not outside.lid or outside.lid.millimetres <= across + 1e-6


@given(st.sampled_from(("cavity", "bag")), st.integers(20, 1000), st.integers(0, 10), st.integers(0, 10))
def test_the_least_faces_of_usual_bars_and_pouches_are_on_each_of_them(
    constants: Mapping[str, Figure], shape: str, millilitres: int, thick: int, between: int
) -> None:
    one = container(shape, Volume(Fraction(millilitres)))
    thickness, proportion = (
        float(figure.low + (figure.highest - figure.low) * at / 10)
        for figure, at in zip((constants[name] for name in FLAT[one.shape]), (thick, between), strict=True)
    )
    width = sqrt(1000 * millilitres / thickness * proportion)
    outside = with_usual_outside(one, constants).outside
    assert sure(outside.width).millimetres <= width + 1e-6 and sure(outside.height).millimetres <= width / proportion + 1e-6


def test_what_was_measured_is_taken_as_it_is_and_what_is_unknown_stays_so(constants: Mapping[str, Figure]) -> None:
    jar = with_usual_outside(container("round lid", Volume(Fraction(120)), lid="70"), constants).outside
    assert sure(jar.lid).millimetres == 70 and sure(jar.around).millimetres < 170 and sure(jar.height).millimetres < 30
    assert with_usual_outside(container("bag"), constants).outside == container("bag").outside


# 1/2 fl oz are 14.8 mL: the lid of the flattest such tin is 2.3 square inches, and a label of 9.4 square inches sits on none.
def test_a_label_that_no_container_of_its_capacity_could_bear_does_not_sit(stocks: dict[str, LabelSheet], tmp_path: Path) -> None:
    constants = read_edition(write_studio(tmp_path)).studio.constants
    tin = container("round lid", Volume(Fraction("14.79")))
    assert not could_sit(tin, stocks["letter 2 x 4"], 1, constants)
    assert could_sit(tin, stocks["letter 3 x 6"], 1, constants)
    bottle = container("cylinder", Volume(Fraction("118.3")))
    assert could_sit(bottle, stocks["letter 2 x 4"], 2, constants)
    assert could_sit(tin, stocks["letter tags"], 2, constants)


def test_a_label_to_colour_in_takes_its_place_too(tmp_path: Path) -> None:
    studio, sheet, plan = plans(tmp_path, "height: 70 mm, around: 150 mm, lid: 70 mm, ")
    assert sure(plan.laid_out).count * sure(plan.laid_out).sheet.width.millimetres <= 150
    wishes = replace(studio.profile.labels, to_colour=True)
    studio = replace(studio, profile=replace(studio.profile, labels=wishes))
    assert sure(next(plan_labels(studio, sheet)).laid_out).sheet.width < Length(Fraction(95))


# Plain geometry, and paper of 8.5 in by 11 in and of 210 mm by 297 mm (ISO 216).
@given(
    st.sampled_from(("cylinder", "tube", "round lid", "bag", "cavity")), st.integers(10, 260), st.integers(20, 500), st.integers(15, 150),
    st.sampled_from(((Paper.LETTER, 215.9, 279.4), (Paper.A4, 210.0, 297.0))),
)  # fmt: skip
def test_labels_of_a_container_sit_on_it_and_lie_on_their_paper(
    shape: str, height: int, around: int, lid: int, paper: tuple[Paper, float, float]
) -> None:
    one = container(shape, height=str(height), around=str(around), width=str(lid), lid=str(lid))
    for stock, labels in labels_for(one, paper[0]):
        assert sits(one, stock, labels)
        x, y = stock.position(stock.positions - 1)
        left, top = stock.position(0)
        assert left >= 6.35 and top >= 6.35, "printers leave up to 6.35 mm"
        assert x + float(stock.width.millimetres) <= paper[1] - 6.35 and y + float(stock.height.millimetres) <= paper[2] - 6.35
        assert stock.is_cut and stock.across.millimetres >= 6
