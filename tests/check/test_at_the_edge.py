"""Rules at the very figure where they begin to speak, with the cards and constants that ship; and what each of them lets pass.

The figures of the edges are those of content/constants.yaml and of the cards, whose sources stand there.
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from builder import pipeline
from builder.check.batches import Batch, BatchFinding
from builder.check.dose.base_overloaded import find_overloaded_bases
from builder.check.formula.alkali_on_skin import find_alkali_on_the_skin
from builder.check.keeping.preservatives import called_so, is_preservative, why_not
from builder.check.lye.saponification_far_off import find_saponification_far_off
from builder.check.lye.superfat_out_of_range import find_superfat_out_of_range
from builder.check.recipe.shares_not_whole import of_whole
from builder.check.supplies.price_below_materials import find_prices_below_materials
from builder.model.finding import Finding
from builder.model.hazard import Hazard
from builder.model.recipe.ingredient import CountsAs, Ingredient, MixesWith
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import Share
from builder.model.recipe.recipe import AmountsAs, MeasuredPh, Recipe
from builder.model.recipe.size import TotalSize
from builder.model.subject import WholeRecipe
from tests.making import card, figures, grams, lye, phase, recipe, scale, share, soap, sure, told, worked
from tests.reckon.test_guests import STUDIO
from tests.test_findings import CASES, lay_out


def of_kind(contact: Contact) -> Product:
    return Product("a thing", "A thing", contact, False, DeclaredBy.WEIGHT)


def card_of(name: str) -> Ingredient:
    found = STUDIO.ingredient(name)
    assert found is not None, name
    return found


def batch(formula: Recipe, contact: Contact = Contact.LEAVE_ON, cards: Iterable[Ingredient] = ()) -> Batch:
    known = {**STUDIO.ingredients, **{one.name.casefold(): one for one in cards}}
    made = worked(formula, of_kind(contact), TotalSize(grams(10_000)), known, [scale("0.01")], STUDIO.constants)
    return Batch("a batch", WholeRecipe("test"), made, made.own, STUDIO.constants, cards=known)


def mixed(**percent: str) -> Recipe:
    """Return a recipe of ingredients by their names with underscores, in percent of the total, the rest sunflower oil."""
    lines = {name.replace("_", " "): share(amount) for name, amount in percent.items()}
    rest = 100 - sum((Fraction(amount) for amount in percent.values()), Fraction(0))
    return recipe(phase("all", {**lines, "sunflower oil": share(rest)} if rest else lines), amounts_as=AmountsAs.PERCENT_OF_TOTAL)


def levels(found: Iterable[Finding | BatchFinding]) -> list[str]:
    return [f"{one.name} {'stop' if one.stops else 'caution'}" for one in told(found)]


# Bicarbonate has pH 8.2 to 8.5: above 8, where skin dries, and not above 9, which no cream reaches. Washing soda has 10.5 to 11.5.
@pytest.mark.parametrize(
    ("formula", "contact", "found"),
    [
        (mixed(sodium_bicarbonate="1"), Contact.LEAVE_ON, []),
        (mixed(sodium_bicarbonate="1.01"), Contact.LEAVE_ON, ["alkali-on-skin caution"]),
        (mixed(sodium_bicarbonate="4"), Contact.LIPS, ["alkali-on-skin caution"]),
        (mixed(sodium_bicarbonate="40"), Contact.BATH, []),
        (mixed(sodium_bicarbonate="4"), Contact.RINSE_OFF, []),
        (mixed(sodium_carbonate="1"), Contact.LEAVE_ON, []),
        (mixed(sodium_carbonate="1.01"), Contact.LEAVE_ON, ["alkali-on-skin stop"]),
        (mixed(sodium_carbonate="2"), Contact.RINSE_OFF, []),
        (replace(mixed(sodium_carbonate="2"), ph=MeasuredPh(Fraction(6), Fraction(7), "meter")), Contact.LEAVE_ON, []),
        (replace(mixed(sodium_carbonate="2"), lye=lye()), Contact.LEAVE_ON, []),
    ],
)
def test_an_alkaline_salt_speaks_above_a_drop_on_what_stays_on(formula: Recipe, contact: Contact, found: list[str]) -> None:
    one = batch(replace(formula, lye=None), contact)
    one = replace(one, worked=replace(one.worked, recipe=replace(one.worked.recipe, lye=formula.lye)))
    assert levels(find_alkali_on_the_skin(one)) == found


def test_a_ph_at_the_very_edge_is_on_its_milder_side() -> None:
    for low, high, found in ((9, 9, ["alkali-on-skin caution"]), ("9.01", "9.1", ["alkali-on-skin stop"]), (7, 8, [])):
        salt = card("our salt", pH_in_water=(low, high))
        assert levels(find_alkali_on_the_skin(batch(mixed(our_salt="5"), cards=[salt]))) == found


CLEAR = "Melt-and-pour soap base, clear"


def in_base(amount: str, *, of: str) -> Recipe:
    """Return a base with so much of something, in parts of the base by weight."""
    whole = 100 + Fraction(amount)
    shares = {CLEAR: Share(100 / whole), of: Share(Fraction(amount) / whole)}
    return recipe(phase("all", shares), amounts_as=AmountsAs.PERCENT_OF_TOTAL)


# A clear base takes up at the most 3 % of oil, of liquid and of powder.
@pytest.mark.parametrize("added", ["shea butter", "water", "kaolin clay", "oat flour"])
def test_a_base_speaks_above_what_it_takes(added: str) -> None:
    assert levels(find_overloaded_bases(batch(in_base("2.99", of=added), Contact.RINSE_OFF))) == []
    assert levels(find_overloaded_bases(batch(in_base("3", of=added), Contact.RINSE_OFF))) == []
    assert levels(find_overloaded_bases(batch(in_base("3.02", of=added), Contact.RINSE_OFF))) == ["base-overloaded caution"]


def test_a_powder_raises_dust_and_mixes_with_nothing() -> None:
    dusty = replace(card("our powder"), hazards=(Hazard.DUST,), mixes_with=MixesWith.NEITHER)
    wet = replace(dusty, counts_as=CountsAs.LIQUID)
    silent = (replace(dusty, mixes_with=MixesWith.WATER), replace(dusty, hazards=()))
    for one, found in ((dusty, ["base-overloaded caution"]), (wet, ["base-overloaded caution"]), *((one, []) for one in silent)):
        cards = [one]
        assert levels(find_overloaded_bases(batch(in_base("5", of="our powder"), Contact.RINSE_OFF, cards))) == found


def test_a_base_whose_card_says_nothing_is_judged_by_what_such_bases_take() -> None:
    silent = replace(card_of(CLEAR), name="our base", figures={})
    for amount, found in (("3", []), ("3.02", ["base-overloaded caution"])):
        shares = {"our base": Share(100 / (100 + Fraction(amount))), "shea butter": Share(Fraction(amount) / (100 + Fraction(amount)))}
        formula = recipe(phase("all", shares), amounts_as=AmountsAs.PERCENT_OF_TOTAL)
        assert levels(find_overloaded_bases(batch(formula, Contact.RINSE_OFF, [silent]))) == found


def superfat(percent: str) -> list[str]:
    of = soap({"olive oil": 100}, lye(superfat=Fraction(percent)))
    return levels(find_superfat_out_of_range(replace(STUDIO, recipes={"bar": of})))


def test_a_superfat_from_0_to_below_100_per_cent_passes() -> None:
    assert superfat("-0.01") == ["superfat-below-zero stop"]
    assert superfat("0") == superfat("5") == superfat("99.99") == []
    assert superfat("100") == superfat("150") == ["superfat-too-high stop"]


def test_what_has_no_lye_or_asks_for_no_superfat_passes() -> None:
    weighs = soap({"olive oil": 100}, lye(weighs={"sodium hydroxide": 10}))
    for of in (weighs, mixed(sodium_bicarbonate="1")):
        assert levels(find_superfat_out_of_range(replace(STUDIO, recipes={"one": of}))) == []


BLEND = "phenoxyethanol and ethylhexylglycerin blend"


def test_a_preservative_is_called_so_and_known_to_be_one() -> None:
    known = card_of(BLEND)
    assert is_preservative(known) and why_not(known) == ""
    assert not is_preservative(card_of("olive oil"))
    # What has the figures of a preservative and is called something else is none.
    assert not is_preservative(replace(known, kind=card_of("olive oil").kind))


def test_why_another_does_not_count_is_said_with_all_that_is_missing() -> None:
    known = card_of(BLEND)
    silent = replace(known, preserves=None)
    assert why_not(silent) == "its card lacks `preserves:`"
    without = {name: figure for name, figure in known.figures.items() if name not in ("usual amount", "pH window")}
    assert why_not(replace(known, figures=without)) == "its card lacks `usual amount` and `pH window`"
    seeds = replace(silent, name="grapefruit seed extract")
    assert "extract of seeds" in why_not(seeds) and not is_preservative(seeds)
    # With what it preserves on its card, it is judged by that.
    assert why_not(replace(known, name="grapefruit seed extract")) == ""


def test_the_first_that_is_called_so_and_is_none_is_named() -> None:
    known, oil = card_of(BLEND), card_of("olive oil")
    silent = replace(known, preserves=None)
    assert called_so([oil, known]) is None
    assert called_so([oil, known, silent, seeds_of(silent)]) is silent


def seeds_of(silent: Ingredient) -> Ingredient:
    return replace(silent, name="grapefruit seed extract")


# Olive oil is published with 184 to 196 mg/g; 5 % beside that are 174.8 and 205.8 (content/ingredients/olive-oil.yaml, constants.yaml).
@pytest.mark.parametrize(
    ("low", "high", "is_far"),
    [("174.8", "190", False), ("174.79", "190", True), ("190", "205.8", False), ("190", "205.81", True), ("184", "196", False)],
)
def test_an_own_saponification_value_is_far_off_beyond_the_share_beside_what_is_published(low: str, high: str, is_far: bool) -> None:
    olive = card_of("olive oil")
    own = replace(olive, figures={**olive.figures, "saponification": figures(low, high)}, replaces=olive)
    shelf = {name: own if one is olive else one for name, one in STUDIO.ingredients.items()}
    found = list(find_saponification_far_off(replace(STUDIO, ingredients=shelf)))
    assert levels(found) == (["saponification-far-off stop"] if is_far else [])


# A third of a per cent has no end: as many figures as are shown are six (by hand).
@pytest.mark.parametrize(
    ("shares", "said"),
    [
        (Fraction("0.998"), "99.8 %, so that 0.2 % is missing"),
        (Fraction("1.002"), "100.2 %, so that 0.2 % is too much"),
        (Fraction(2, 3), "66.6666666667 %, so that 33.3333 % is missing"),
        (Fraction("1.5"), "150 %, so that 50 % is too much"),
    ],
)
def test_what_is_missing_to_the_whole_is_told_with_six_figures(shares: Fraction, said: str) -> None:
    assert of_whole(shares) == said


def test_a_price_that_just_pays_for_the_materials_is_met_in_silence(tmp_path: Path) -> None:
    lay_out(next(case for case in CASES if case.name == "price-below-materials"), tmp_path / "studio")
    outcome = pipeline.check(tmp_path / "studio", on=date(2027, 1, 1))
    plan = next(sheet for sheet in outcome.plans if sheet.cost and sheet.cost.total)
    assert plan.students > 1
    pays = sure(plan.cost).total / plan.students
    for price, found in ((pays, []), (pays - Fraction(1, 100), ["price-below-materials caution"])):
        asked = replace(plan, studio_class=replace(plan.studio_class, price=price))
        assert levels(find_prices_below_materials(asked, sure(outcome.studio))) == found
