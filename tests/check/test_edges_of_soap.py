"""What is added to soap, its superfat and doses at the figure from which on they are found (content/constants.yaml: common practice)."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.batches import Batch
from builder.check.dose.doses_high import find_high_doses
from builder.check.lye.lye_during_the_cook import find_lye_left_during_the_cook
from builder.check.lye.lye_rounding import find_superfat_moved_by_rounding
from builder.check.lye.soap_additions import find_too_much_in_soap
from builder.check.lye.superfat_as_answer import find_unusual_superfat
from builder.model.place import NOWHERE, Name
from builder.model.recipe.product import Contact
from builder.model.recipe.recipe import Choice
from builder.model.recipe.size import OilsSize
from builder.model.subject import WholeRecipe
from tests.check.test_at_the_edge import batch, levels, mixed, of_kind
from tests.check.test_edges_of_lye import COOKED, seen
from tests.making import card, grams, lye, scale, share, soap, told, worked
from tests.reckon.test_guests import STUDIO

CLAY = card("our clay", in_soap=(1, 2))


def with_clay(percent: str, chosen: str = "") -> list[str]:
    choices = (Choice("clay", (Name("our clay"), None), share(chosen)),) if chosen else ()
    bar = replace(soap({"olive oil": 100}, lye(), {"our clay": percent} if percent else None), choices=choices)
    return levels(find_too_much_in_soap(batch(bar, Contact.RINSE_OFF, [CLAY])))


@pytest.mark.parametrize(("percent", "found"), [("2", 0), ("1.999", 0), ("2.01", 1)])
def test_a_soap_bears_what_is_usual_of_its_oils(percent: str, found: int) -> None:
    assert with_clay(percent) == ["too-much-in-soap caution"] * found


@pytest.mark.parametrize(
    ("oils", "division", "percent", "found"),
    [
        # 2.004 % of 500 g are 10.02 g; the scale divides 0.1 g, and what is weighed is 10.0 g: no more than the usual 2 %.
        # 2.02 % are 10.1 g.
        (500, "0.1", "2.004", 0),
        (500, "0.1", "2.02", 1),
        # What is usual may be weighed, though the scale shows a little more of it: 2 % of 530 g are 10.6 g, of which a scale of
        # 1 g shows 11 g.
        (530, "1", "2", 0),
        (530, "1", "2.001", 1),
    ],
)
def test_a_soap_bears_what_is_weighed_for_it(oils: int, division: str, percent: str, found: int) -> None:
    bar, stock = soap({"olive oil": 100}, lye(), {"our clay": percent}), {**STUDIO.ingredients, "our clay": CLAY}
    made = worked(bar, of_kind(Contact.RINSE_OFF), OilsSize(grams(oils)), stock, [scale(division)], STUDIO.constants)
    one = Batch("a batch", WholeRecipe("test"), made, made.own, STUDIO.constants, cards=stock)
    assert levels(find_too_much_in_soap(one)) == ["too-much-in-soap caution"] * found


# By hand: 1000 g of olive oil take about 128 g of lye and 260 g of water, so that 1 % of a portion is about 1.39 % of its oils.
@pytest.mark.parametrize(
    ("percent", "chosen", "found"), [("", "1.3", 0), ("", "1.5", 1), ("0.6", "0.9", 0), ("0.6", "1.1", 1), ("2", "0.1", 1)]
)
def test_what_students_add_to_a_soap_counts_with_what_it_holds(percent: str, chosen: str, found: int) -> None:
    assert with_clay(percent, chosen) == ["too-much-in-soap caution"] * found


@pytest.mark.parametrize(
    ("name", "percent", "found"),
    [("Sea salt bar", "25", 0), ("Sea salt bar", "100", 0), ("Sea salt bar", "24", 1), ("Sea salt bar", "101", 1), ("Sea bar", "50", 1)],
)
def test_a_soap_that_is_called_a_salt_bar_may_be_one(name: str, percent: str, found: int) -> None:
    bar = replace(soap({"coconut oil": 100}, lye(), {"sea salt": percent}), name=name)
    assert levels(find_too_much_in_soap(batch(bar, Contact.RINSE_OFF))) == ["too-much-in-soap caution"] * found


def test_what_is_no_soap_bears_what_it_may() -> None:
    assert levels(find_too_much_in_soap(batch(mixed(our_clay="50"), cards=[CLAY]))) == []


# Above 20 % much of the fat finds no lye. Where lye was weighed, and not asked for, none is left for the fat at 100 %.
@pytest.mark.parametrize(
    ("asked", "weighed", "found"),
    [
        ("0.2", False, []),
        ("0.2001", False, ["superfat-unusual caution"]),
        ("1", False, ["superfat-unusual caution"]),
        ("0.2", True, []),
        ("0.9999", True, ["superfat-unusual caution"]),
        ("1", True, ["superfat-too-high stop"]),
    ],
)
def test_a_superfat_is_unusual_above_a_fifth(asked: str, found: list[str], *, weighed: bool) -> None:
    one = seen(asked=Fraction(asked))
    plan = lye(weighs={"sodium hydroxide": 60}) if weighed else lye(superfat=5)
    assert levels(find_unusual_superfat(replace(one, worked=replace(one.worked, recipe=replace(one.worked.recipe, lye=plan))))) == found


# A point of superfat, either way: what was got beside what was asked, and at home the most that rounding may move it.
@pytest.mark.parametrize(
    ("got", "may_move", "at_home", "found"),
    [
        ("0.06", "0.005", False, []),
        ("0.0601", "0.005", False, ["superfat-moved-by-rounding caution"]),
        ("0.04", "0.005", False, []),
        ("0.0399", "0.005", False, ["superfat-moved-by-rounding caution"]),
        ("0.05", "0.02", False, []),
        ("0.05", "0.01", True, []),
        ("0.05", "0.0101", True, ["home-size-too-small stop"]),
        ("0.0601", "0.01", True, ["superfat-moved-by-rounding caution"]),
    ],
)
def test_rounding_moves_a_superfat_by_a_point_at_most(got: str, may_move: str, found: list[str], *, at_home: bool) -> None:
    one = seen(superfat=Fraction(got), asked=Fraction("0.05"), rounding_may_move=Fraction(may_move))
    assert levels(find_superfat_moved_by_rounding(replace(one, size_place=NOWHERE if at_home else None))) == found


# On a sheet stands one decimal of a per cent: -0.04 % is printed as zero, and -0.06 % as 0.1 % too much lye (by hand).
@pytest.mark.parametrize(("before", "found"), [(None, 0), ("0", 0), ("-0.0004", 0), ("-0.0006", 1), ("-0.05", 1), ("0.02", 0)])
def test_lye_is_left_during_the_cook_below_what_is_printed_as_zero(before: str | None, found: int) -> None:
    one = seen(COOKED, before_the_cook=before and Fraction(before), late=("Shea butter",))
    assert levels(find_lye_left_during_the_cook(one)) == ["lye-left-during-the-cook caution"] * found


@pytest.mark.parametrize(("at_most", "found"), [("10", []), ("10.1", ["dose-very-high caution"])])
def test_a_dose_of_a_tenth_is_the_highest(at_most: str, found: list[str]) -> None:
    of = replace(mixed(), choices=(Choice("scent", (Name("lavender essential oil"),), share(at_most)),))
    findings = told(find_high_doses(replace(STUDIO, recipes={"one": of})))
    assert levels(findings) == found
    # A slip of the decimal point is asked about: the tenth part.
    assert all('Was "1.01 %" meant?' in one.remedy for one in findings)
