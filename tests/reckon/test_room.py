"""Which limits lower what students may add, by how much, and which leave it alone: portions of 100 g, a choice of 0.5 %, by hand."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.dose.dose import MostOf
from builder.model.dose.limit import Limit, LimitWeight, PercentOf
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, LabelName
from builder.model.recipe.quantity import Volume
from builder.model.recipe.recipe import AmountsAs
from builder.model.recipe.size import TotalSize
from tests.making import Number, card, cards, fat, grams, phase, recipe, scale, sure, worked
from tests.reckon.test_doses import LOTION, choice, limit, made, most_of, scent

MINT = scent("mint")
BLEND = scent("blend", label_name=LabelName(("A", "B"), ("a", "b"), Known.MEMORY))
ALL_SCENT = limit(most="0")


def of_mint(*limits: Limit, accepts: tuple[str, ...] = (), region: str = "EU", oils: str = "") -> MostOf:
    lines: dict[str, Number] | None = {"water": 100 - Fraction(oils), "oil": oils} if oils else None
    sheet, _ = made((choice("scent", "mint"),), cards(MINT, fat("oil", 190)), *limits, lines=lines, accepts=accepts, region=region)
    return most_of(sheet, "mint")


# What is banned, is no question of how much: the whole of it is kept, and a finding stops it. Of no scent at all there is simply no room.
@pytest.mark.parametrize(
    "lowers_nothing",
    [
        limit("Mint", most="0"),
        replace(limit("Mint"), most=None),
        limit("Rose", most="0.1"),
        limit("Mint", most="0.1", percent_of=PercentOf.OILS),  # no oil is in it
        limit("Mint", most="0.6"),
    ],
)
def test_what_leaves_a_choice_alone(lowers_nothing: Limit) -> None:
    one = of_mint(lowers_nothing)
    assert (one.weight, one.lowered) == (grams("0.5"), None)


def test_of_no_scent_at_all_there_is_no_room() -> None:
    assert not of_mint(ALL_SCENT).is_offered


# 0.5 % of a fifth of oils are 0.1 g in a portion of 100 g; of all of it, x / (100 + x) = 0.1 % comes to 0.1001 g.
def test_a_share_of_the_oils_is_not_thinned_by_what_is_added() -> None:
    assert of_mint(limit("Mint", most="0.5", percent_of=PercentOf.OILS), oils="20").weight == grams("0.1")
    assert of_mint(limit("Mint", most="0.2", percent_of=PercentOf.OILS), oils="100").weight == grams("0.2")
    assert of_mint(limit("Mint", most="0.2")).weight == grams("0.2")


# B is at most half of the blend, and may be nothing of it: 0.1 % of B lets 0.2 g of it in, where what may be in it counts.
@pytest.mark.parametrize(
    ("weight", "region", "accepts", "most"),
    [
        (LimitWeight.LAW, "EU", (), "0.2"),
        (LimitWeight.OPINION, "EU", (), "0.2"),
        (LimitWeight.STANDARD, "EU", (), "0.2"),
        (LimitWeight.PRACTICE, "EU", (), "0.5"),  # custom asks for what is certain
        (LimitWeight.LAW, "EU", ("limit-not-proven",), "0.5"),
        (LimitWeight.LAW, "EU", ("over-usual-limit",), "0.2"),
        (LimitWeight.STANDARD, "EU", ("over-usual-limit",), "0.5"),
        (LimitWeight.LAW, "US", (), "0.2"),  # law of elsewhere binds as an opinion does
    ],
)
def test_what_a_blend_may_hold_binds_where_somebody_has_judged(
    weight: LimitWeight, region: str, accepts: tuple[str, ...], most: str
) -> None:
    sheet, _ = made((choice("scent", "blend"),), cards(BLEND), limit("B", most="0.1", weight=weight), accepts=accepts, region=region)
    assert most_of(sheet, "blend").weight == grams(most)


# The batch holds the blend itself: certain of it is nothing of B, and 0.3 % of it may be 0.15 % of B, above the limit already.
def test_what_may_be_in_it_binds_only_where_the_batch_is_within() -> None:
    lines = {"water": "99.7", "blend": "0.3"}
    sheet, _ = made((choice("scent", "blend"),), cards(BLEND), limit("B", most="0.1"), lines=lines)
    assert most_of(sheet, "blend").weight == grams("0.5")
    sheet, _ = made((choice("scent", "mint"),), cards(MINT), limit("Mint", most="0.1"), lines={"water": "99.7", "mint": "0.3"})
    one = most_of(sheet, "mint")
    assert not one.is_offered and sure(one.lowered).passed_already
    # What has taken all of a limit has not passed it.
    sheet, _ = made((choice("scent", "mint"),), cards(MINT), limit("Mint", most="0.3"), lines={"water": "99.7", "mint": "0.3"})
    one = most_of(sheet, "mint")
    assert not one.is_offered and not sure(one.lowered).passed_already


def test_a_batch_that_rounds_to_nothing_counts_towards_nothing() -> None:
    one, rules = made((choice("scent", "mint"),), cards(MINT), limit("Mint"))
    nothing = worked(one.recipe, LOTION, TotalSize(grams("0.001")), cards(MINT), (scale("0.01"),), rules=rules)
    assert nothing.grams.total == grams(0)
    assert (nothing.own.towards, nothing.own.variants) == ((), ())


# By hand: 50 mL of 0.92 g/mL are 46 g, and 50 mL of a powder of which 0.5 g lie in a millilitre 25 g.
def test_a_volume_weighs_by_its_density_and_a_powder_by_that_of_its_bulk() -> None:
    stock = cards(card("oil", CountsAs.FAT, density="0.92"), card("clay", density="2.6", bulk_density="0.5"))
    half = Volume(Fraction(50))
    of = recipe(phase("all", {"oil": half, "clay": half}), amounts_as=AmountsAs.WEIGHTS)
    batch = worked(of, LOTION, TotalSize(grams(71)), stock, (scale("0.01"),))
    assert [w.mass for w in batch.grams.weighed] == [grams(46), grams(25)]


# In 100 g with a limit of 0.3 % there is room for 0.3 g, of which a gram takes 1 - 0.003; the other choice has taken some of it.
def test_the_working_of_a_most_says_what_there_was_and_what_others_took() -> None:
    both = (choice("scent", "mint", most="0.6"), choice("more", "mint", most="0.3"))
    sheet, _ = made(both, cards(MINT), limit("Mint", most="0.3"), division="0.001")
    first = sheet.own.doses[0].each[0].mass.grams
    one, other = (working for working in sheet.own.workings if working.rule == "most under a limit")
    for working in (one, other):
        given = {name.name: name.value for name in working.given}
        assert given["limit"] == Fraction("0.003") and given["in the batch"] == 0 and given["fill"] == 100
        assert given["room in a portion"] == Fraction("0.3") and given["what 1 g takes"] == Fraction("0.997")
        assert working.result == (given["room in a portion"] - given["taken by other choices"]) / Fraction("0.997")
    # The second is worked out beside what the first has come to.
    assert {name.name: name.value for name in other.given}["taken by other choices"] == first * Fraction("0.997")
