"""A measured pH, and shares of acids and preservatives, at the figure from which on they are found (content/constants.yaml, the cards)."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.formula.acid_left_over import find_acid_left_over
from builder.check.formula.ph_by_kind import find_ph_out_of_place
from builder.check.keeping.keeping import find_what_does_not_keep
from builder.check.keeping.low_risk import has_extreme_ph
from builder.check.keeping.preservative_amount import find_preservative_amounts
from builder.model.finding import Acceptance
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.product import Contact
from builder.model.recipe.recipe import MeasuredPh, Recipe
from tests.check.test_at_the_edge import batch, levels, mixed
from tests.check.test_seldom_met import seen_in
from tests.making import figures, lye, soap, told
from tests.reckon.test_guests import STUDIO

SORBATE = "potassium sorbate"


def found_of(formula: Recipe, *cards: Ingredient) -> list[str]:
    """Return what the pH of a recipe brings."""
    shelf = {**STUDIO.ingredients, **{one.key: one for one in cards}}
    return levels(find_ph_out_of_place(replace(STUDIO, ingredients=shelf, recipes={"one": formula})))


def measured(low: str, high: str) -> MeasuredPh:
    return MeasuredPh(Fraction(low), Fraction(high), "meter")


# A mixture of pH 2 or less, or of 11.5 or more, is taken for corrosive (Regulation (EC) 1272/2008, Annex I, 3.2.3.1.2, from memory). What
# stays on the skin has 3.5 (CIR on alpha hydroxy acids, read) to 9 (common practice, no source).
@pytest.mark.parametrize(
    ("low", "high", "stays_on", "washed_off"),
    [
        ("2", "3", ["ph-burns stop"], ["ph-burns stop"]),
        ("2.1", "3", ["ph-not-for-skin stop"], []),
        ("3.4", "5", ["ph-not-for-skin stop"], []),
        ("3.5", "9", [], []),
        ("5", "9.1", ["ph-not-for-skin stop"], []),
        ("5", "11.4", ["ph-not-for-skin stop"], []),
        ("5", "11.5", ["ph-burns stop"], ["ph-burns stop"]),
    ],
)
def test_a_ph_is_one_for_skin_with_both_its_ends(low: str, high: str, stays_on: list[str], washed_off: list[str]) -> None:
    for product, said in (("lotion", stays_on), ("scrub", washed_off)):
        assert found_of(replace(mixed(water="50"), product=product, ph=measured(low, high))) == said


@pytest.mark.parametrize(("product", "known"), [("lotion", True), ("balm", False)])
def test_what_such_products_usually_have_is_said_where_it_is_known(product: str, *, known: bool) -> None:
    sour = replace(mixed(water="50"), product=product, ph=measured("3", "3"))
    (found,) = told(find_ph_out_of_place(replace(STUDIO, recipes={"one": sour})))
    assert (f"A {product} usually has pH" in found.remedy) is known


# Soap has pH 8.5 to 10.5 in a solution of 1 % (ASTM D2179, read).
@pytest.mark.parametrize(("low", "high", "found"), [("8.5", "10.5", 0), ("8.4", "10", 1), ("9", "10.6", 1), ("10.5", "10.5", 0)])
def test_a_finished_soap_has_the_ph_of_soap(low: str, high: str, found: int) -> None:
    bar = replace(soap({"olive oil": 100}, lye()), product="cold-process soap", ph=measured(low, high))
    assert found_of(bar) == ["soap-ph-unusual caution"] * found


# ISO 29621: of low risk is what has a pH below 3 or above 10.
@pytest.mark.parametrize(
    ("low", "high", "extreme"),
    [("2.5", "2.9", True), ("2.5", "3", False), ("10", "11", False), ("10.1", "11", True), ("2.9", "10.1", False)],
)
def test_low_risk_lies_beyond_the_ph_of_the_standard(low: str, high: str, *, extreme: bool) -> None:
    assert has_extreme_ph(replace(mixed(water="50"), ph=measured(low, high)), STUDIO) is extreme


def test_a_ph_that_nobody_measured_is_no_low_risk() -> None:
    assert not has_extreme_ph(mixed(water="50"), STUDIO)


# Usual is 0.2 to 0.5 % on this card.
@pytest.mark.parametrize(
    ("percent", "found"),
    [
        ("0.199", ["preservative-too-little caution"]),
        ("0.2", []),
        ("0.5", []),
        ("0.501", ["preservative-over-usual caution"]),
    ],
)
def test_a_preservative_has_its_usual_amount_with_both_its_ends(percent: str, found: list[str]) -> None:
    known = STUDIO.ingredients[SORBATE]
    ours = replace(known, figures={**known.figures, "usual amount": figures("0.2", "0.5")})
    one = batch(mixed(water="50", potassium_sorbate=percent), cards=[ours])
    assert levels(find_preservative_amounts(one)) == found


# Annex V of the EU has a most for sorbic acid and its salts (entry 4, 0.6 % as acid): what passes that is a finding of its own.
def test_more_than_is_usual_is_left_to_the_law_where_it_speaks() -> None:
    known = STUDIO.ingredients[SORBATE]
    ours = replace(known, figures={**known.figures, "usual amount": figures("0.2", "0.5")})
    formula = mixed(water="50", potassium_sorbate="0.55")
    assert levels(find_preservative_amounts(batch(formula, cards=[ours]))) == ["preservative-over-usual caution"]
    assert levels(find_preservative_amounts(seen_in("EU", formula, ours))) == []


# What is preserved and not tested keeps six months, water without a preservative seven days (common practice, no source). By the calendar
# six months are 181 to 184 days (July to December), so that half a year in weeks is not longer than they are.
@pytest.mark.parametrize(
    ("keeps", "preserved", "found"),
    [
        ("6 months", True, 0),
        ("7 months", True, 1),
        ("26 weeks", True, 0),
        ("27 weeks", True, 1),
        ("184 days", True, 0),
        ("185 days", True, 1),
        ("7 days", False, 0),
        ("8 days", False, 1),
        ("6 months", False, 1),
    ],
)
def test_what_holds_water_keeps_so_long_and_no_longer(keeps: str, found: int, *, preserved: bool) -> None:
    of = mixed(water="50", potassium_sorbate="0.4") if preserved else mixed(water="50")
    of = replace(of, product="lotion", keeps=keeps, accepts={"no-preservative": Acceptance("It is used up on the day.")})
    here = replace(STUDIO, recipes={"one": of})
    assert levels(find_what_does_not_keep(here)) == ["keeps-unsupported caution"] * found


@pytest.mark.parametrize(("keeps", "found"), [("1 day", 0), ("2 days", 1), ("", 0)])
def test_what_is_for_a_single_use_keeps_a_day_at_most(keeps: str, found: int) -> None:
    of = replace(mixed(water="50"), product="lotion", keeps=keeps, single_use=True, storage="Use it at once.")
    assert levels(find_what_does_not_keep(replace(STUDIO, recipes={"one": of}))) == ["keeps-unsupported caution"] * found


# By hand: a mol of citric acid (192.124 g) takes three of sodium hydrogen carbonate (3 x 84.007 g), so that 10 % of the acid take 13.118 %
# of bicarbonate. With 12.5 % of it 95.3 % of the acid are taken up, and less than the twentieth part is left; with 12.4 % it is 94.5 %.
@pytest.mark.parametrize(
    ("bicarbonate", "contact", "found"),
    [
        ("12.5", Contact.BATH, 0),
        ("12.4", Contact.BATH, 1),
        ("12.4", Contact.RINSE_OFF, 1),
        ("12.4", Contact.LEAVE_ON, 0),
        ("0", Contact.BATH, 0),
    ],
)
def test_a_twentieth_of_the_acid_may_be_left_over(bicarbonate: str, contact: Contact, found: int) -> None:
    fizz = {"sodium_bicarbonate": bicarbonate} if bicarbonate != "0" else {}
    one = batch(mixed(citric_acid="10", **fizz), contact)
    assert levels(find_acid_left_over(one)) == ["acid-left-over caution"] * found
    with_lye = replace(one, worked=replace(one.worked, recipe=replace(one.worked.recipe, lye=lye())))
    assert levels(find_acid_left_over(with_lye)) == []
