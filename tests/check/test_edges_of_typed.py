"""Amounts, volumes and counts that are typed into a lesson, at the number from which on they are found to differ. All by hand."""

from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from builder import pipeline
from builder.check.teaching.typed_facts import find_typed_facts_that_differ
from builder.model.recipe.quantity import Volume
from tests.check.test_seen_from_elsewhere import studio_of
from tests.making import only_findings
from tests.test_findings import check

LESSON = "classes/one-lotion/lesson.md"


# Half a per cent of 113 g are 0.565 g; a drop weighs no more than glycerol over the 18 of a millilitre, 1.261 / 18 = 0.0701 g: 8 drops.
@pytest.mark.parametrize(
    ("says", "found"),
    [
        ("Add 8 drops of lavender essential oil.", False),
        ("Add 9 drops of lavender essential oil.", True),
        ("Add 5 to 8 drops of your lavender.", False),
        ("Add 8 to 9 drops of your lavender.", True),
        ("Add 0.5 % of lavender oil.", False),
        ("Add 0.51 % of lavender oil.", True),
        # It is less than half a per cent of 113 g, and no figure in per cent.
        ("Add 0.56 g of lavender oil.", False),
        ("Do not add 9 drops of lavender.", False),
        ("Stir it until it is smooth; then add 8 drops of lavender.", False),
        ("Stir it until it is smooth; then add 9 drops of lavender.", True),
        ("Will 9 drops of lavender do?", False),
    ],
)
def test_a_portion_takes_as_many_drops_as_it_may(tmp_path: Path, says: str, *, found: bool) -> None:
    rest = ("4. Or stir in 3 % lavender oil.\n", "")
    changes = (("3. Add 400 drops of lavender essential oil. Never add 500 drops of lavender.", f"3. {says}"), rest)
    assert ("amount-typed-too-high" in check(studio_of("amount-typed-too-high", tmp_path, LESSON, *changes))[2]) is found


# Six people and a spare one: 7 x 113 g x 3 % = 23.73 g; at home 250 g x 3 % = 7.5 g or 0.265 oz. Of 12 % of oils 3 % are 25 %. A number is
# right to its last digit: within 1 of 24, within 0.1 of 23.7.
@pytest.mark.parametrize(
    ("says", "found"),
    [
        *((f"{right} glycerin", False) for right in ("23.73 g", "23.7 g", "24 g", "23 g", "7.5 g", "7 grams", "0.265 oz", "0.3 ounces")),
        *((f"{right} glycerin", False) for right in ("3 %", "3.0 per cent", "25 %", "2 to 3 %", "3 to 5 %")),
        *((f"{wrong} glycerin", True) for wrong in ("22 g", "25 g", "23.75 g", "6 g", "0.9 oz", "4 %", "26 %", "4 to 6 %")),
        ("22 g sugar", False),  # nothing is worked out for it
    ],
)
def test_a_typed_amount_is_one_of_those_that_are_worked_out(tmp_path: Path, says: str, *, found: bool) -> None:
    changes = ("20 g of glycerin, which is 3 % glycerin.", f"{says}.")
    assert ("amount-typed-differs" in check(studio_of("amount-typed-differs", tmp_path, LESSON, changes))[2]) is found


# By hand: 500 g of oils are 713 g of soap with 0.426 of lye to one of oils; at 0.95 g/mL, the least of fresh soap, they take up 752 mL.
@pytest.mark.parametrize(
    ("volume", "found"), [("0.75 L", True), ("751 mL", True), ("753 mL", False), ("1 litre", False), ("0.5 kg", False)]
)
def test_a_mould_holds_what_the_home_batch_takes_up(tmp_path: Path, volume: str, *, found: bool) -> None:
    err = check(studio_of("typed-fact-differs", tmp_path, "recipes/plain-bar.yaml", ("for about 0.5 L", f"for {volume}")))[2]
    assert ("is too small for the home batch" in err) is found


def test_what_a_mould_just_holds_does_not_run_over(tmp_path: Path) -> None:
    studio = studio_of("typed-fact-differs", tmp_path, "recipes/plain-bar.yaml", ("for about 0.5 L", "for 750 mL"))
    plans = pipeline.check(studio, on=date(2027, 1, 1)).plans
    plan = next(plan for plan in plans if any(m.home and m.home[0].batch.grams.lye for m in plan.made))
    for millilitres, found in (("750", False), ("750.01", True)):
        volume = Volume(Fraction(millilitres))
        made = tuple(replace(m, home=tuple(replace(h, batch=replace(h.batch, volume=volume)) for h in m.home)) for m in plan.made)
        said = " ".join(one.wrong for one in only_findings(find_typed_facts_that_differ(replace(plan, made=made))))
        assert ("is too small for the home batch" in said) is found


# 250 g fill two bottles of 113 g.
@pytest.mark.parametrize(
    ("says", "found"),
    [
        ("Fill 2 bottles in all.", False),
        ("Fill two bottles in all.", False),
        ("Fill three bottles in all.", True),
        ("Fill 3 small bottles in all.", True),
        ("Fill twelve bottles in all.", True),
        ("Fill your second bottle.", False),
        ("Wash 12 bottles.", False),  # nothing is filled
        ("Do not fill 12 bottles.", False),
    ],
)
def test_as_many_are_filled_as_the_home_batch_fills(tmp_path: Path, says: str, *, found: bool) -> None:
    err = check(studio_of("typed-fact-differs", tmp_path, LESSON, ("Fill 12 bottles in all.", says)))[2]
    assert ("goes to the sheets for home" in err) is found


# 350 g fill three.
def test_the_second_bottle_is_the_last_of_two(tmp_path: Path) -> None:
    studio = studio_of("typed-fact-differs", tmp_path, LESSON, ("Fill 12 bottles in all.", "Fill your second bottle."))
    about = studio / "classes/one-lotion/class.yaml"
    about.write_text(about.read_text(encoding="utf-8").replace("at home: [250 g]", "at home: [350 g]"), encoding="utf-8")
    assert "goes to the sheets for home, and the home batch of 350 g fills 3." in check(studio)[2]
