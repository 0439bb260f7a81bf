"""Which sentences are tried on a recipe: what fizzes in water, and what holds nuts (common knowledge, no source)."""

from dataclasses import replace

import pytest

from builder.check.teaching.statements import conditions_of
from builder.model.recipe.product import Condition
from tests.check.test_at_the_edge import CLEAR
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


# What each word of `only:` means stands at the head of content/tables/unsafe_steps.yaml; the recipes are judged by it, by hand.
@pytest.mark.parametrize(
    ("product", "names", "with_lye", "holds"),
    [
        ("lotion", ("water", "sunflower oil"), False, {"no lye", "unpreserved"}),
        ("lotion", ("water", "sunflower oil", "potassium sorbate"), False, {"no lye"}),
        ("lotion", ("water", "lotion base"), False, {"no lye"}),
        ("lotion", ("aloe vera juice", "sunflower oil"), False, {"no lye", "unpreserved"}),
        ("balm", ("sunflower oil", "beeswax"), False, {"no lye", "animal"}),
        ("balm", ("sunflower oil", "candelilla wax"), False, {"no lye"}),
        ("balm", ("sunflower oil", "lavender essential oil"), False, {"no lye", "scented"}),
        ("bath salts", ("sea salt",), False, {"no lye", "wet", "bath"}),
        ("bath salts", ("sea salt", "sunflower oil"), False, {"no lye", "wet", "bath", "oily"}),
        ("scrub", ("sea salt", "sunflower oil"), False, {"no lye", "wet", "scrub", "oily"}),
        ("scrub", ("sea salt", "glycerin"), False, {"no lye", "wet", "scrub"}),
        ("melt-and-pour soap", (CLEAR, "sunflower oil"), False, {"no lye", "wet"}),
        ("cold-process soap", ("sunflower oil", "water"), True, {"lye", "wet", "uncured"}),
        ("cold-process soap", ("sunflower oil", "water"), False, {"lye", "wet", "uncured"}),
        ("hot-process soap", ("sunflower oil", "water"), True, {"lye", "wet"}),
        ("scrub", ("sunflower oil", "water"), True, {"lye", "wet", "scrub", "uncured"}),
        ("balm", ("what nobody knows",), False, {"no lye"}),
    ],
)
def test_all_that_holds_of_a_recipe(product: str, names: tuple[str, ...], with_lye: bool, holds: set[str]) -> None:
    one = recipe(phase("all", {name: share("10") for name in names}), lye=lye() if with_lye else None)
    assert conditions_of(replace(one, product=product), STUDIO) == holds
