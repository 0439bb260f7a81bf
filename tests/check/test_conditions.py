"""Which sentences are tried on a recipe: what fizzes in water, and what holds nuts (common knowledge, no source)."""

from dataclasses import replace

import pytest

from builder.check.teaching.statements import conditions_of
from builder.model.recipe.product import Condition
from tests.making import lye, phase, recipe, share
from tests.reckon.test_guests import STUDIO

SODA, ACID = "sodium bicarbonate", "citric acid"


@pytest.mark.parametrize(
    ("product", "names", "with_lye", "fizzes"),
    [
        ("bath bomb", ("cornstarch",), False, True),
        ("bath salts", (SODA, ACID), False, True),
        ("bath salts", (SODA,), False, False),
        ("bath salts", (ACID,), False, False),
        ("cold-process soap", (SODA, ACID), True, False),
    ],
)
def test_what_holds_a_carbonate_and_an_acid_fizzes_and_so_does_every_bath_bomb(
    product: str, names: tuple[str, ...], with_lye: bool, fizzes: bool
) -> None:
    one = recipe(phase("all", {name: share("10") for name in names}), lye=lye() if with_lye else None)
    assert ("fizz" in conditions_of(replace(one, product=product), STUDIO)) is fizzes


@pytest.mark.parametrize(
    ("name", "families"),
    [
        ("sweet almond oil", {"nuts"}), ("peanut oil", {"nuts"}), ("goat milk", {"milk"}), ("wheat germ oil", {"wheat"}),
        ("vitamin E", {"soy"}), ("sunflower oil", set()), ("coconut oil", set()),
    ],
)  # fmt: skip
def test_promises_about_an_allergen_are_tried_on_what_holds_it(name: str, families: set[str]) -> None:
    one = replace(recipe(phase("all", {name: share("100")})), product="balm")
    assert conditions_of(one, STUDIO) & {Condition.NUTS, Condition.MILK, Condition.WHEAT, Condition.SOY} == families


@pytest.mark.parametrize(
    ("name", "scented"),
    [("lavender essential oil", True), ("menthol", True), ("camphor", True), ("lavender buds", False), ("beeswax", False)],
)
def test_menthol_and_camphor_count_as_scent(name: str, scented: bool) -> None:
    one = replace(recipe(phase("all", {name: share("100")})), product="balm")
    assert ("scented" in conditions_of(one, STUDIO)) is scented
