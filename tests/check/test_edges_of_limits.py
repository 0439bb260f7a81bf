"""What is said of an amount beside a limit, by whose limit it is and how much of the thing is certain; limits and cards made for it.

Law of the studio's own region stops, everything else cautions, as the request for the studio says; a ban is a limit of nothing.
"""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from builder.check.batches import Batch, batch_of
from builder.check.dose.limit_words import limit_in_words, span_in_words, why_open
from builder.check.dose.over_limit import find_amounts_over_limits
from builder.check.dose.scent_without_limit import find_scents_without_limit
from builder.check.lye.acid_strength import find_acids_of_unknown_strength
from builder.model.dose.limit import Limit, LimitRole, LimitWeight
from builder.model.dose.towards import Counted
from builder.model.finding import Finding
from builder.model.hazard import Hazard
from builder.model.label.region import ANY_REGIONS
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, Ingredient, LabelName
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.recipe import Recipe
from builder.model.recipe.size import TotalSize
from builder.model.subject import WholeRecipe
from builder.reckon import reckon_recipe
from tests.check.test_at_the_edge import levels, mixed
from tests.making import card, grams, lye, told
from tests.reckon.test_counting import blend, limit
from tests.reckon.test_guests import STUDIO

POWDER, OTHER = card("our powder"), card("our other")
STANDARD, ADVICE = LimitWeight.STANDARD, LimitWeight.HANDBOOK


def seen(formula: Recipe, *rows: Limit, cards: tuple[Ingredient, ...] = (POWDER, OTHER), youngest: int | None = None) -> Batch:
    """Return a batch of a kilogram in the example studio, were it in the EU and knew these limits alone."""
    shelf = {**STUDIO.ingredients, **{one.key: one for one in cards}}
    studio = replace(STUDIO, profile=replace(STUDIO.profile, region="EU"), ingredients=shelf, limits=rows)
    formula = replace(formula, product="balm", youngest_user=youngest)
    return batch_of("a batch", reckon_recipe(studio, formula, TotalSize(grams(1000))), studio, WholeRecipe("test"))


def found(formula: Recipe, *rows: Limit, **named: Any) -> list[Finding]:
    return told(find_amounts_over_limits(seen(formula, *rows, **named)))


def row(most: str = "1", **named: Any) -> Limit:
    return limit("our powder", most=most, **named)


@pytest.mark.parametrize(
    ("percent", "limits", "said"),
    [
        ("1", row(), []),
        ("1.01", row(), ["over-legal-limit stop"]),
        ("1", row(weight=STANDARD), []),
        ("1.01", row(weight=STANDARD), ["over-usual-limit caution"]),
        ("1.01", row(region="Canada"), ["over-usual-limit caution"]),
        ("1.01", row(region=ANY_REGIONS), ["over-legal-limit stop"]),
        ("0.01", row("0"), ["ingredient-banned stop"]),
        ("0.01", row("0", weight=STANDARD), ["ingredient-banned caution"]),
        ("0.01", row("0", weight=ADVICE), ["ingredient-banned caution"]),
    ],
)
def test_an_amount_beside_a_limit_and_above_it(percent: str, limits: Limit, said: list[str]) -> None:
    assert levels(found(mixed(our_powder=percent), limits)) == said


# A blend gives the order of its parts: of two, the first is half of it at the least and all of it at the most, the second half at the most.
@pytest.mark.parametrize(
    ("names", "most", "weight", "said"),
    [
        (("our powder", "our other"), "10", LimitWeight.LAW, []),
        (("our powder", "our other"), "9.99", LimitWeight.LAW, ["limit-not-proven caution"]),
        (("our powder", "our other"), "5", LimitWeight.LAW, ["limit-not-proven caution"]),
        (("our powder", "our other"), "4.99", LimitWeight.LAW, ["over-legal-limit stop"]),
        (("our other", "our powder"), "5", LimitWeight.LAW, []),
        (("our other", "our powder"), "4.99", LimitWeight.LAW, ["limit-not-proven caution"]),
        (("our other", "our powder"), "4.99", STANDARD, ["limit-not-proven caution"]),
        # For what merely may pass custom nobody is asked.
        (("our other", "our powder"), "4.99", ADVICE, []),
        # What a blend declares is in it, however little.
        (("our other", "our powder"), "0", LimitWeight.LAW, ["ingredient-banned stop"]),
    ],
)
def test_what_may_be_too_much_is_asked_for_and_what_is_certain_is_told(
    names: tuple[str, ...], most: str, weight: LimitWeight, said: list[str]
) -> None:
    assert levels(found(mixed(blend="10"), row(most, weight=weight), cards=(blend(*names),))) == said


def test_a_limit_of_other_law_is_asked_for_as_well_as_the_law() -> None:
    of = mixed(blend="10")
    (one,) = found(of, row("4.99", region="Canada"), cards=(blend("our other", "our powder"),))
    assert one.name == "limit-not-proven" and "may pass a limit" in one.wrong


# Below 12 an opinion or a standard holds it back as law does, and a handbook does not.
@pytest.mark.parametrize(
    ("weight", "youngest", "said"),
    [
        (LimitWeight.LAW, 11, ["not-for-children stop"]),
        (LimitWeight.OPINION, 11, ["not-for-children stop"]),
        (STANDARD, 11, ["not-for-children stop"]),
        (ADVICE, 11, ["over-usual-limit caution"]),
        (LimitWeight.LAW, 12, []),
        (LimitWeight.LAW, None, []),
    ],
)
def test_a_limit_for_children_holds_back_what_children_use(weight: LimitWeight, youngest: int | None, said: list[str]) -> None:
    children = row(weight=weight, below_age=12, narrower="children below 12")
    assert levels(found(mixed(our_powder="1.01"), children, youngest=youngest)) == said


def test_what_is_no_thing_for_children_is_left_out_and_of_a_limit_less_is_used() -> None:
    for most, wrong, remedy in (("1", "passes a limit for children", "Use less of it, "), ("0", "is not for children", "Leave it out, ")):
        (one,) = found(mixed(our_powder="1.01"), row(most, below_age=12, narrower="children below 12"), youngest=8)
        assert f"our powder {wrong} below 12: " in one.wrong
        assert one.remedy.startswith(remedy)


# A standard that is passed is not said where law stops the same thing; of two that are passed in the same way the stricter is.
def test_of_several_limits_the_strictest_is_said() -> None:
    of = mixed(our_powder="5")
    assert levels(found(of, row("4", weight=STANDARD), row("3"))) == ["over-legal-limit stop"]
    for rows in ((row("4"), row("3")), (row("3"), row("4"))):
        (one,) = found(of, *rows)
        assert "at most 3 % of the product" in one.wrong
    both = mixed(our_powder="5", our_other="5")
    two = (row("3"), limit("our other", most="3", weight=STANDARD))
    assert levels(found(both, *two)) == ["over-legal-limit stop", "over-usual-limit caution"]
    # A ban is stricter than any figure.
    assert levels(found(of, row("0.001"), row("0"))) == ["over-legal-limit stop", "ingredient-banned stop"]
    for rows in ((row("0", weight=STANDARD), row("0", weight=ADVICE)), (row("0", weight=ADVICE), row("0", weight=STANDARD))):
        assert levels(found(of, *rows)) == ["ingredient-banned caution"]


def test_two_that_count_together_pass_together() -> None:
    one = limit("our powder", "our other", most="1")
    (alone,), (both,) = found(mixed(our_powder="1.01"), one), found(mixed(our_powder="0.6", our_other="0.6"), one)
    assert " passes a legal limit: " in alone.wrong and " and " in both.wrong and " together pass a legal limit: " in both.wrong


def counted(one: Ingredient) -> Counted:
    return Counted(one, None, "scent", Fraction(0), Fraction(1, 100))


def test_why_nobody_knows_how_much_there_is() -> None:
    shared = replace(
        blend("our powder", "our other"), label_name=LabelName(("a", "b"), ("a", "b"), Known.MEMORY, {0: (Fraction(1, 2), Fraction(1, 2))})
    )
    assert why_open([counted(shared)], row()).startswith("The shares that are known of a blend")
    assert why_open([counted(POWDER), counted(blend("our powder", "our other"))], row()).startswith("A blend gives the order")
    assert why_open([counted(POWDER)], row()).startswith("A salt or ester counts as less")


def test_a_limit_is_told_with_what_it_is_a_share_of() -> None:
    assert limit_in_words(row("0.5")) == "at most 0.5 % of the product"
    assert limit_in_words(row("0")) == "at most 0 % of the product"
    assert limit_in_words(row("0.5", counted_as="Acid")) == "at most 0.5 % of the product, counted as acid"
    assert limit_in_words(replace(row(), parts=(row(),))).startswith("all of them together at most 100 %")
    assert span_in_words(Fraction(1, 100), Fraction(1, 100)) == "1 %" and span_in_words(Fraction(0), Fraction(1, 100)) == "from 0 % to 1 %"


# An oil without a limit is told of where it is known to sensitise, or where nothing is known of it; what burns in the sun and stays on the
# skin has a finding of its own, and a made scent has its certificate.
@pytest.mark.parametrize(
    ("kind", "oils", "hazards", "product", "said"),
    [
        (IngredientKind.ESSENTIAL_OIL, True, (), "balm", 0),
        (IngredientKind.ESSENTIAL_OIL, True, (Hazard.SENSITISER,), "balm", 1),
        (IngredientKind.ESSENTIAL_OIL, False, (), "balm", 1),
        (IngredientKind.FRAGRANCE, False, (Hazard.SENSITISER,), "balm", 0),
        (IngredientKind.ESSENTIAL_OIL, False, (Hazard.PHOTOTOXIC,), "balm", 0),
        (IngredientKind.ESSENTIAL_OIL, False, (Hazard.PHOTOTOXIC,), "scrub", 1),
    ],
)
def test_a_scent_without_a_limit_is_told_of_where_it_may_do_harm(
    kind: IngredientKind, oils: bool, hazards: tuple[Hazard, ...], product: str, said: int
) -> None:
    known = STUDIO.ingredients["lavender essential oil"]
    ours = replace(known, name="our scent", kind=kind, oils=known.oils if oils else (), hazards=hazards, certificate=None)
    one = seen(mixed(glycerin="3"))
    worked = replace(one.worked, unlimited=(ours,), product=STUDIO.products[product])
    line = worked.grams.weighed[0]
    weighed = (replace(line, line=replace(line.line, ingredient=ours)), *worked.grams.weighed[1:])
    columns = tuple(replace(column, weighed=weighed) if column is worked.grams else column for column in worked.columns)
    assert (
        levels(find_scents_without_limit(replace(one, worked=replace(worked, columns=columns)))) == ["scent-without-limit caution"] * said
    )


def test_of_all_scent_together_the_words_are_its_own() -> None:
    total = replace(row("1", weight=STANDARD), names=(), role=LimitRole.ESSENTIAL_OIL)
    (one,) = found(mixed(lavender_essential_oil="1.01"), total)
    assert one.name == "scent-over-usual" and one.remedy.startswith("Use less, ")
    assert found(mixed(lavender_essential_oil="1"), total) == []


# An acid is sold dry and in solutions: how much of it there is says its purity, or the shares that its supplier has stated.
@pytest.mark.parametrize(
    ("kind", "counts", "shares", "purity", "with_lye", "said"),
    [
        (IngredientKind.ACID, CountsAs.OTHER, False, False, False, 1),
        (IngredientKind.OTHER, CountsAs.ACID, False, False, False, 1),
        (IngredientKind.OTHER, CountsAs.OTHER, False, False, False, 0),
        (IngredientKind.ACID, CountsAs.OTHER, True, False, False, 0),
        (IngredientKind.ACID, CountsAs.OTHER, False, True, False, 0),
        # What takes up lye is a finding of its own.
        (IngredientKind.ACID, CountsAs.OTHER, False, False, True, 0),
    ],
)
def test_how_strong_an_acid_is_is_asked_for_where_a_limit_counts_it(
    kind: IngredientKind, counts: CountsAs, shares: bool, purity: bool, with_lye: bool, said: int
) -> None:
    label = LabelName(("our acid",), ("our acid",), Known.SUPPLIER, {0: (Fraction(1), Fraction(1))} if shares else {})
    ours = replace((card("our acid", purity=80) if purity else card("our acid")), kind=kind, counts_as=counts, label_name=label)
    one = seen(mixed(our_acid="1"), limit("our acid", most="5"), cards=(ours,))
    if with_lye:
        one = replace(one, worked=replace(one.worked, recipe=replace(one.worked.recipe, lye=lye())))
    assert levels(find_acids_of_unknown_strength(one)) == ["strength-missing stop"] * said
