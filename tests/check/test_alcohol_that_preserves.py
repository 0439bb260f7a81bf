"""Alcohol above 20 % makes a product one of low risk (ISO 29621:2017, from memory), so that a spray of it is asked for no preservative."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.keeping.alcohol import least_alcohol
from builder.check.keeping.preservation import find_products_that_do_not_keep
from builder.model.recipe.recipe import AmountsAs, Recipe
from tests.check.test_at_the_edge import levels, mixed
from tests.making import grams, phase, recipe
from tests.reckon.test_guests import STUDIO


def found(of: Recipe) -> list[str]:
    return levels(find_products_that_do_not_keep(replace(STUDIO, recipes={"one": replace(of, product="lotion")})))


# The alcohol of the pharmacopoeia holds at least 92.3 % by weight: 20 % of it in the whole come of 21.7 %.
@pytest.mark.parametrize(
    ("of", "said"),
    [
        (mixed(ethanol="70", water="30"), []),
        (mixed(ethanol="21.7", water="78.3"), []),
        (mixed(ethanol="21.6", water="78.4"), ["no-preservative stop"]),
        (mixed(denatured_alcohol="60", water="40"), []),
        (mixed(denatured_alcohol="22", water="78"), ["no-preservative stop"]),
        (mixed(isopropyl_alcohol="70", water="30"), ["no-preservative stop"]),
        (mixed(witch_hazel="100"), ["no-preservative stop"]),
        # What is no alcohol and holds water is not taken for alcohol in what is over.
        (mixed(sorbitol_solution="40", water="60"), ["no-preservative stop"]),
        (mixed(water="100"), ["no-preservative stop"]),
    ],
)
def test_what_is_a_fifth_of_alcohol_and_more_needs_no_preservative(of: Recipe, said: list[str]) -> None:
    assert found(of) == said


def test_weights_are_shares_of_their_sum_and_percent_of_oils_of_nothing() -> None:
    of = recipe(phase("all", {"ethanol": grams("100"), "water": grams("100")}), amounts_as=AmountsAs.WEIGHTS)
    assert least_alcohol(of, STUDIO) == Fraction(923, 2000)
    assert least_alcohol(replace(of, amounts_as=AmountsAs.PERCENT_OF_OILS), STUDIO) == 0


def test_of_nothing_at_all_nothing_is_alcohol() -> None:
    assert least_alcohol(recipe(phase("all", {"ethanol": grams("0")}), amounts_as=AmountsAs.WEIGHTS), STUDIO) == 0
