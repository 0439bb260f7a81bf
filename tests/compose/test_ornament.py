"""The mark of a recipe: each its own, the same at every size, near where amounts are near, read back from the SVG, and no sign of anything.

That petals at even angles in threes to sixes are signs of danger, of faiths and of nations is common knowledge, no source.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import combinations
from math import atan2, hypot, pi
from typing import Any

import numpy
import pytest
import scipy  # whose parts are loaded when they are asked for
import yaml
from bs4 import BeautifulSoup
from hypothesis import given
from hypothesis import strategies as st
from numpy import ndarray
from PIL import Image, ImageDraw

from builder.compose.ornament.flower import along, flower_of
from builder.compose.ornament.portrait import MOST_PETALS, Form, Portion, Portrait, portrait_of
from builder.compose.ornament.svg import Look, line_width, mark
from builder.compose.ornament.tints import _OF_FORM, _WORDS, paler, tint_of
from builder.compose.ornament.words import how_to_read, mark_in_words
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from tests import published
from tests.making import sure

NAMES = [yaml.load(file.read_text(encoding="utf-8"), yaml.CBaseLoader)["name"] for file in sorted(published.EXAMPLE.glob("recipes/*.yaml"))]
SIDE = 40
DOTS_TO_MM = 10
ALIKE = 0.95  # Two pictures that agree by more than this are taken for the same mark: the cosine between them.


@cache
def example() -> tuple[Studio, dict[str, WorkedBatch], list[tuple[WorkedBatch, WorkedBatch]]]:
    outcome = published.example()
    made = [one for plan in outcome.plans for one in plan.made]
    batches = {one.batch.recipe.name: one.batch for one in made}
    return sure(outcome.studio), batches, [(one.batch, home.batch) for one in made for home in one.home]


def portraits() -> dict[str, Portrait]:
    studio, batches, _ = example()
    return {name: portrait_of(studio, batch) for name, batch in batches.items()}


def petals_of(svg: str) -> list[list[tuple[float, float]]]:
    """Return the petals of an SVG as lists of points: paths that are closed."""
    paths = [str(path["d"]) for path in BeautifulSoup(svg, "html.parser").find_all("path")]
    return [[(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", d)] for d in paths if d.endswith("Z")]


def length(petal: Sequence[tuple[float, float]]) -> float:
    (x1, y1), (x2, y2) = petal[0], petal[12]
    return hypot(petal[6][0] - (x1 + x2) / 2, petal[6][1] - (y1 + y2) / 2)


def drawn(portrait: Portrait, side: int = SIDE, dots: int = DOTS_TO_MM) -> tuple[ndarray, ndarray]:
    """Return the lines and the areas of a mark as pictures, each petal in front of the one before."""
    flower = flower_of(portrait, side)
    size = round(side * dots)
    areas = Image.new("L", (size, size), 0)
    draw = ImageDraw.Draw(areas)
    for number, petal in enumerate(flower.petals, 1):
        draw.polygon([(x * dots, y * dots) for x, y in along(petal.outline)], fill=number)
    (x, y), r = flower.heart.at, flower.heart.radius
    draw.ellipse([(x - r) * dots, (y - r) * dots, (x + r) * dots, (y + r) * dots], fill=200)
    image = numpy.asarray(areas).astype(float)
    return numpy.hypot(*numpy.gradient(image)) > 0, image


def picture(portrait: Portrait) -> ndarray:
    """Return a mark as an eye sees it at 12 mm: lines, veins and dots, blurred by a quarter of a millimetre."""
    lines, _ = drawn(portrait, 12)
    dark = Image.fromarray((lines * 255).astype("uint8"))
    flower = flower_of(portrait, 12)
    for vein in (vein for petal in flower.petals for vein in petal.veins):
        ImageDraw.Draw(dark).line([(x * DOTS_TO_MM, y * DOTS_TO_MM) for x, y in vein], fill=255)
    for dot in flower.dots:
        (x, y), r = dot.at, dot.radius
        ImageDraw.Draw(dark).ellipse([(x - r) * DOTS_TO_MM, (y - r) * DOTS_TO_MM, (x + r) * DOTS_TO_MM, (y + r) * DOTS_TO_MM], fill=255)
    soft = scipy.ndimage.gaussian_filter(numpy.asarray(dark).astype(float), 0.25 * DOTS_TO_MM)
    alike: numpy.ndarray[Any, numpy.dtype[Any]] = soft / numpy.linalg.norm(soft)
    return alike


def test_no_two_recipes_of_the_example_are_alike() -> None:
    seen = {name: picture(portrait) for name, portrait in portraits().items()}
    assert len(seen) == 11
    alike = {(a, b): float((seen[a] * seen[b]).sum()) for a, b in combinations(seen, 2)}
    assert max(alike.values()) < ALIKE, sorted(alike.items(), key=lambda pair: -pair[1])[:6]
    # A recipe whose amounts are off by two per cent in turn is still itself to the eye.
    for name, portrait in portraits().items():
        parts = [replace(part, share=part.share * Fraction(100 + 2 * (-1) ** number, 100)) for number, part in enumerate(portrait.parts)]
        off = replace(portrait, parts=tuple(sorted(parts, key=lambda part: -part.share)))
        assert float((seen[name] * picture(off)).sum()) > ALIKE, name


def test_scents_differ_and_the_flower_stays() -> None:
    studio, batches, _ = example()
    batch = batches["Still water bath salts"]
    options = [dict(variant.chosen) for variant in batch.own.variants]
    scents = {one["scent"] for one in options if one["colour"] == "Ultramarine blue"}
    assert len(scents) > 2
    marks = [portrait_of(studio, batch, {"scent": scent, "colour": "Ultramarine blue"}) for scent in scents]
    assert len({tuple(flower_of(one, 20).dots) for one in marks}) == len(scents)
    with_scent = [one for one in marks if one.scents]
    assert len({flower_of(one, 20).petals for one in with_scent}) == 1


@pytest.mark.parametrize("name", NAMES)
def test_petals_are_as_long_as_the_weighings_say(name: str) -> None:
    studio, batches, _ = example()
    batch = batches[name]
    portrait = portrait_of(studio, batch)
    weights: dict[str, Fraction] = {}
    for w in batch.grams.weighed:
        dry = w.line.strength or 1  # A ready-mixed lye counts as what was dissolved, and as water.
        for what, grams in ((w.line.ingredient.name, w.line.exact.grams * dry), ("Water", w.line.exact.grams * (1 - dry))):
            if grams:
                weights[what] = weights.get(what, Fraction(0)) + grams
    lengths = [length(petal) for petal in petals_of(mark(portrait, SIDE))]
    assert len(lengths) == len(portrait.parts) * portrait.rounds
    shown = {part.name: lengths[number * portrait.rounds] for number, part in enumerate(portrait.parts)}
    assert all(name in shown for name in weights)
    for a, b in combinations(weights, 2):
        if weights[a] > weights[b]:
            assert shown[a] >= shown[b], (a, b)
        if weights[a] > 1.1 * weights[b] and weights[b] > 0:
            assert shown[a] > shown[b], (a, b)
    assert max(weights, key=weights.__getitem__).casefold() in mark_in_words(portrait).casefold() or portrait.rounds > 1


def test_a_recipe_has_one_mark_in_class_and_at_home() -> None:
    studio, _, homes = example()
    assert len(homes) > 5
    for in_class, at_home in homes:
        here, there = portrait_of(studio, in_class), portrait_of(studio, at_home)
        if in_class.grams.lye:  # The lye at home is not the pack whose purity the studio knows, so that there is a little more of it.
            assert all(hypot(x1 - x2, y1 - y2) < 0.25 for (x1, y1), (x2, y2) in zip(tips(here), tips(there), strict=True))
        else:
            assert mark(here, 20) == mark(there, 20)


def tips(portrait: Portrait) -> list[tuple[float, float]]:
    return [petal.outline[6] for petal in flower_of(portrait, SIDE).petals]


FORMS = st.fixed_dictionaries({form: st.fractions(0, 1, max_denominator=100) for form in Form}).filter(lambda forms: any(forms.values()))
SHARES = st.lists(st.fractions(Fraction(1, 1000), 1, max_denominator=1000), min_size=1, max_size=MOST_PETALS)


def portrait_with(shares: Sequence[Fraction], forms: Mapping[Form, Fraction]) -> Portrait:
    parts = sorted((Portion(str(number), share) for number, share in enumerate(shares)), key=lambda part: -part.share)
    rounds = {1: 8, 2: 5, 3: 4, 4: 3, 5: 2, 6: 2}.get(len(shares), 1)
    return Portrait("Any", tuple(parts), forms, rounds)


@given(SHARES, FORMS, st.lists(st.integers(-10, 10), min_size=MOST_PETALS, max_size=MOST_PETALS))
def test_a_small_change_of_amounts_is_a_small_change_of_the_drawing(
    shares: Sequence[Fraction], forms: Mapping[Form, Fraction], changes: Sequence[int]
) -> None:
    """One per cent more or less of each ingredient moves no point by more than half a millimetre at 40 mm, also where two change places."""
    changed = [share * (1 + Fraction(by, 1000)) for share, by in zip(shares, changes, strict=False)]
    before, after = (flower_of(portrait_with(one, forms), SIDE) for one in (shares, changed))
    for old, new in zip(before.petals, after.petals, strict=True):
        assert all(hypot(x1 - x2, y1 - y2) < 0.5 for (x1, y1), (x2, y2) in zip(old.outline, new.outline, strict=True))


@given(SHARES, FORMS)
def test_a_mark_stays_in_its_square_and_fills_it(shares: Sequence[Fraction], forms: Mapping[Form, Fraction]) -> None:
    flower = flower_of(portrait_with(shares, forms), SIDE)
    points = [point for petal in flower.petals for point in along(petal.outline)]
    assert all(0 <= x <= SIDE and 0 <= y <= SIDE for x, y in points)
    spans = [max(axis) - min(axis) for axis in zip(*points, strict=True)]
    assert max(spans) == pytest.approx(0.97 * SIDE)
    assert min(spans) > 0.6 * SIDE


@given(SHARES, FORMS)
def test_petals_never_stand_evenly(shares: Sequence[Fraction], forms: Mapping[Form, Fraction]) -> None:
    """No mark is a trefoil, a cross or a star: at least eight petals, and between those as long as the longest no even angles."""
    flower = flower_of(portrait_with(shares, forms), SIDE)
    if len(shares) < 7:
        assert len(flower.petals) >= 8
    angles = sorted(atan2(petal.outline[6][1] - petal.foot[1], petal.outline[6][0] - petal.foot[0]) for petal in flower.petals)
    gaps = [(b - a) % (2 * pi) for a, b in zip(angles, [*angles[1:], angles[0]], strict=True)]
    assert max(gaps) > 1.3 * min(gaps)


@pytest.mark.parametrize("name", [pytest.param(name, marks=pytest.mark.long if number % 3 else ()) for number, name in enumerate(NAMES)])
def test_each_petal_can_be_coloured_in(name: str) -> None:
    """At 40 mm each field holds a disc of 4 mm; lines are 0.8 pt. What lies beneath others shows at least that much in one piece."""
    portrait = portraits()[name]
    lines, areas = drawn(portrait)
    for number in range(1, len(portrait.parts) * portrait.rounds + 1):
        inside = numpy.pad((areas == number) & ~lines, 1)
        assert 2 * scipy.ndimage.distance_transform_edt(inside).max() / DOTS_TO_MM >= 4, number
    assert 'stroke-width="0.28"' in mark(portrait, SIDE, Look.TO_COLOUR_IN)


def test_lines_are_never_too_thin_for_a_home_printer() -> None:
    assert [round(line_width(side), 2) for side in (12, 20, 40)] == [0.2, 0.24, 0.28]


def test_many_ingredients_share_their_last_petal_and_say_so() -> None:
    studio, batches, _ = example()
    batch = batches["Green lab bar"]
    more = tuple(
        replace(batch.lines[0], ingredient=replace(batch.lines[0].ingredient, name=f"Oil {number}"), share=Fraction(number, 10000))
        for number in range(1, 8)
    )
    portrait = portrait_of(studio, replace(batch, lines=(*batch.lines, *more)))
    assert len(portrait.parts) == MOST_PETALS
    assert portrait.together == 6
    assert "17 ingredients" in mark_in_words(portrait)
    assert "The 6 ingredients of which there is least are one petal together." in how_to_read(portrait)


def test_what_is_said_of_a_mark_is_true_of_it() -> None:
    found = portraits()
    assert mark_in_words(found["Kitchen garden bar"]) == (
        "Mark of Kitchen garden bar: a flower of 9 petals for 9 ingredients, the longest for olive oil."
        " The dots in the middle are the letters of lavender, large ones for vowels."
    )
    assert how_to_read(found["Window bar"]) == "Each ingredient and each choice has 4 petals: the longer, the more there is of it."
    dots = flower_of(found["Kitchen garden bar"], SIDE).dots
    largest = max(dot.radius for dot in dots)
    assert "".join("V" if dot.radius == largest else "c" for dot in dots) == "cVcVccVc"  # l-a-v-e-n-d-e-r
    for portrait in found.values():
        svg = BeautifulSoup(mark(portrait, 20), "html.parser")
        assert sure(svg.svg)["role"] == "img"
        assert sure(svg.title).get_text() == mark_in_words(portrait)


def test_tints_are_light_enough_for_black_and_dark_enough_for_grey() -> None:
    """Relative luminance and contrast as WCAG 2.2 defines them."""

    def luminance(tint: str) -> float:
        parts = [int(tint[at : at + 2], 16) / 255 for at in (1, 3, 5)]
        red, green, blue = (one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts)
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    for tint in {*_WORDS, *_OF_FORM.values()}:
        assert (luminance(tint) + 0.05) / 0.05 >= 7
        assert 1.05 / (luminance(tint) + 0.05) >= 1.5
        assert paler(tint, 0) == tint
        assert paler(tint, 1) == "#ffffff"
    studio, batches, _ = example()
    assert (
        len(
            {
                tint_of(portrait_of(studio, batches["Orchard sugar scrub"], {"scent": one}))
                for one in ("Sweet orange essential oil", "Lavender essential oil", None)
            }
        )
        == 3
    )


def test_a_flower_from_which_all_choices_are_left_out_has_eight_petals_too() -> None:
    studio, batches, _ = example()
    for name, batch in batches.items():
        bare = portrait_of(studio, batch, dict.fromkeys((dose.what for dose in batch.own.doses), None))
        assert len(bare.parts) * bare.rounds >= 8, name
