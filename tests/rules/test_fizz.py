"""What of an acid its carbonates leave, by hand: one mol of bicarbonate takes up one mol of acid groups, one of carbonate two.

The acid has two groups to 200 g, and half of what is weighed is acid: of 20 g in 100 g there are 0.1 mol of groups.
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.dose.limit import LimitRole, LimitRules
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.size import TotalSize
from builder.reckon import reckon_recipe
from builder.reckon.dose.counting import reckon_towards
from builder.rules.fizz import acid_left
from tests.check.test_at_the_edge import batch, mixed
from tests.making import card, grams, lye, soap
from tests.reckon.test_counting import limit
from tests.reckon.test_guests import STUDIO
from tests.regions import region


def acid(name: str = "our acid", **missing: None) -> Ingredient:
    one = replace(card(name, molar_mass=200, protons=2, purity=50), kind=IngredientKind.ACID)
    return replace(one, figures={of: figure for of, figure in one.figures.items() if of.replace(" ", "_") not in missing})


BICARBONATE = card("sodium bicarbonate", molar_mass=100)
CARBONATE = card("sodium carbonate", molar_mass=100)


@pytest.mark.parametrize(
    ("percent", "cards", "left"),
    [
        ({"our_acid": "20", "sodium_bicarbonate": "5"}, (), "1/2"),
        ({"our_acid": "20", "sodium_bicarbonate": "10"}, (), "0"),
        ({"our_acid": "20", "sodium_bicarbonate": "20"}, (), "0"),
        ({"our_acid": "20", "sodium_carbonate": "2.5"}, (), "1/2"),
        ({"our_acid": "20", "sodium_bicarbonate": "2.5", "sodium_carbonate": "2.5"}, (), "1/4"),
        ({"our_acid": "10", "other_acid": "10", "sodium_bicarbonate": "5"}, (), "1/2"),
        ({"our_acid": "20", "sodium_bicarbonate": "5"}, (card("sodium bicarbonate", molar_mass=100, purity=50),), "3/4"),
        # What takes up acid is not counted as one, and what is no acid has no groups to be taken up.
        ({"our_acid": "20", "sodium_bicarbonate": "20"}, (acid("sodium bicarbonate"),), "1/2"),
        ({"our_acid": "20", "sodium_bicarbonate": "5", "glycerin": "10"}, (card("glycerin", molar_mass=100, protons=3),), "1/2"),
        # What declares no name is none of them.
        ({"our_acid": "20", "glycerin": "10"}, (replace(card("glycerin", molar_mass=100), label_name=None),), None),
        ({"our_acid": "20"}, (), None),
        ({"sodium_bicarbonate": "5"}, (), None),
        ({"our_acid": "20", "sodium_bicarbonate": "5"}, (acid(protons=None),), None),
        ({"our_acid": "20", "sodium_bicarbonate": "5"}, (acid(molar_mass=None),), None),
        ({"our_acid": "20", "sodium_bicarbonate": "5"}, (card("sodium bicarbonate"),), None),
    ],
)
def test_carbonates_take_up_acid_by_mol(percent: dict[str, str], cards: tuple[Ingredient, ...], left: str | None) -> None:
    lines = batch(mixed(**percent), cards=(BICARBONATE, CARBONATE, acid(), acid("other acid"), *cards)).worked.lines
    assert acid_left(lines) == (Fraction(left) if left else None)


# Of what its carbonates have taken up there is no acid that lowers the pH of a product, and so nothing of it counts as one.
@pytest.mark.parametrize(("soda", "counts"), [("9.9", 1), ("10", 0)])
def test_an_acid_that_is_taken_up_counts_towards_no_limit_for_acids(soda: str, counts: int) -> None:
    row = limit("our acid", role=LimitRole.ACID, lowest_ph=Fraction("3.5"))
    one = batch(mixed(our_acid="20", sodium_bicarbonate=soda), cards=(acid(), BICARBONATE)).worked
    assert len(reckon_towards(one, one.own, {"our acid": acid()}, LimitRules(region("EU"), (row,)))) == counts


# All of an acid meets lye first, as far as there is any: with a superfat of 100 % there is none.
@pytest.mark.parametrize(("superfat", "counts"), [(99, 0), (100, 1)])
def test_an_acid_in_a_soap_is_a_salt_where_there_is_lye(superfat: int, counts: int) -> None:
    row = limit("lactic acid", role=LimitRole.ACID, lowest_ph=Fraction("3.5"))
    bar = replace(soap({"olive oil": 100}, lye(superfat=superfat, purity=100), {"lactic acid": 2}), product="cold-process soap")
    one = reckon_recipe(STUDIO, bar, TotalSize(grams(1000)))
    assert len(reckon_towards(one, one.own, STUDIO.ingredients, LimitRules(region("EU"), (row,)))) == counts
