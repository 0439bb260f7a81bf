"""How a batch is divided: portions and what is left add to the batch, cups, a second container, and water that steams away."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.place import Name
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import NO_MASS, Rest, Temperature
from builder.model.recipe.recipe import Fill, Recipe, SteamsAway
from builder.model.recipe.size import ContainersSize, Lost, PeopleSize, ToFill, TotalSize
from builder.reckon.recipe.portions import lost_at_home, reckon_portions
from tests.making import Number, card, cards, grams, phase, recipe, scale, share, sure, worked

LOTION = Product("lotion", "Lotion", Contact.LEAVE_ON, False, DeclaredBy.WEIGHT)
FINE = [scale("0.01")]
STOCK = cards(card("glycerin"), card("oil", CountsAs.FAT))
sizes = st.fractions(10, 5000, max_denominator=10)
fills = st.fractions(5, 300, max_denominator=10)
small = st.fractions(0, 5, max_denominator=10)


def bottle(weight: Fraction) -> Fill:
    return Fill(Name("bottle"), grams(weight))


def jar(weight: Number) -> Fill:
    return Fill(Name("jar"), grams(weight))


@given(sizes, fills)
def test_portions_and_what_is_left_add_to_the_batch(total: Fraction, fill: Fraction) -> None:
    ((_, portions),) = reckon_portions(grams(total), bottle(fill), TotalSize(grams(total)))
    assert portions.fill * portions.yields + portions.left == grams(total)
    assert portions.left < portions.fill


# 100 g fill no bottle of 113 g, 113 g fill one and 225 g still one; what stays in a pot of 50 g leaves nothing of 40 g to fill.
@pytest.mark.parametrize(("total", "pot", "filled", "left"), [(100, 0, 0, 100), (113, 0, 1, 0), (225, 0, 1, 112), (40, 50, 0, -10)])
def test_only_whole_containers_are_filled(total: int, pot: int, filled: int, left: int) -> None:
    size = TotalSize(grams(total), Lost(grams(pot), NO_MASS))
    ((_, portions),) = reckon_portions(grams(total), bottle(Fraction(113)), size)
    assert (portions.yields, portions.left) == (filled, grams(left))


@given(sizes, fills, fills, st.integers(0, 12), st.integers(0, 12), small, small, small)
def test_two_kinds_of_container_cups_pot_and_rest_add_to_the_batch(
    total: Fraction, one: Fraction, other: Fraction, bottles: int, jars: int, cup: Fraction, demo: Fraction, pot: Fraction
) -> None:
    kinds = (ToFill(bottle(one), bottles), ToFill(jar(other), jars))
    size = PeopleSize(kinds, 1, False, grams(demo), grams(pot), grams(cup))
    (_, first), (_, second) = reckon_portions(grams(total), bottle(one), size)
    taken = first.poured * first.yields + second.poured * second.yields + grams(demo) + grams(pot)
    assert taken + first.left == grams(total)
    assert first.left == second.left
    assert first.poured == first.fill + grams(cup)
    assert first.yields <= bottles
    assert second.yields <= jars
    assert (grams(total) >= sure(first.all_from)) == (first.yields == bottles and second.yields == jars and first.left >= NO_MASS)


@given(st.integers(1, 30), st.integers(1, 20), small, small)
def test_a_batch_for_people_fills_every_container(bottles: int, jars: int, cup: Fraction, pot: Fraction) -> None:
    made = recipe(phase("all", {"water": Rest(), "glycerin": share(3)}), fill="113")
    size = PeopleSize((ToFill(made.fill, bottles), ToFill(jar(55), jars)), 1, False, NO_MASS, grams(pot), grams(cup))
    sheet = worked(made, LOTION, size, STOCK, FINE)
    own, other = sheet.fillings
    assert (own.portions.yields, other.portions.yields) == (bottles, jars)
    assert other.portions.fill == other.fill.weight == grams(55)
    assert sheet.grams.total >= sure(own.portions.all_from)
    assert NO_MASS <= own.portions.left < grams(1)


def test_a_size_that_is_no_class_fills_one_kind_of_container() -> None:
    sheet = worked(recipe(phase("all", {"water": Rest()})), LOTION, ContainersSize(3), STOCK, FINE)
    assert sheet.fillings == (sheet.own,)
    assert sheet.own.portions.all_from is None


# By hand: an eighth of the batch has a quarter of the surface, and a quarter of the film; 0.3 ** (2 / 3) is 0.448, and 8.96 g are 9 g.
@pytest.mark.parametrize(
    ("in_class", "at_home", "left", "left_at_home"),
    [(2000, 250, 40, 10), (1000, 300, 20, 9), (500, 4000, 10, 40), (900, 900, 7, 7), (0, 300, 20, 20), (1000, 300, 0, 0)],
)
def test_what_stays_in_a_pot_goes_with_its_surface(in_class: int, at_home: int, left: int, left_at_home: int) -> None:
    lost = lost_at_home(Lost(grams(left), grams(2)), grams(in_class), grams(at_home))
    assert (lost.in_the_pot, lost.in_each_cup) == (grams(left_at_home), grams(2))


def heated(**named: Any) -> Recipe:
    water = phase("water phase", {"water": Rest(), "glycerin": share(5)}, heat_to=Temperature(Fraction(75)), **named)
    return recipe(water, phase("oil phase", {"oil": share(20)}, heat_to=Temperature(Fraction(75))))


# Common practice, no source: a heated water phase is brought back to the weight it had, with hot water.
def test_a_heated_phase_with_water_is_topped_up_to_what_it_weighed() -> None:
    sheet = worked(heated(), LOTION, TotalSize(grams(1000)), STOCK, FINE)
    (top_up,) = sheet.grams.top_ups
    assert (top_up.phase, top_up.weight, top_up.lost) == ("water phase", grams(800), None)


def test_what_the_studio_weighed_to_steam_away_is_said_for_each_batch() -> None:
    lost = SteamsAway(share("2.5"), "weighed before and after")
    sheet = worked(heated(steams_away=lost), LOTION, TotalSize(grams(1000)), STOCK, FINE)
    assert sheet.grams.top_ups[0].lost == grams(20)
    assert sheet.grams.top_ups[0].measured == "weighed before and after"


@pytest.mark.parametrize("lines", [{"oil": Rest()}, {"glycerin": Rest()}])
def test_a_phase_without_water_is_not_topped_up(lines: Mapping[str, Rest]) -> None:
    made = recipe(phase("oil phase", lines, heat_to=Temperature(Fraction(75))))
    assert worked(made, LOTION, TotalSize(grams(100)), STOCK, FINE).grams.top_ups == ()
