"""The foot of a home sheet: all first aid for lye where two lines hold it with the numbers, and else what is most urgent."""

import pytest

from builder.compose.home.foot import foot_of_home
from builder.compose.teaching.lesson_flow import Foot
from builder.compose.views.caution import Call

EMERGENCY, POISON = Call("Emergency", "911"), Call("Poison centre", "1-800-222-1222")


def test_without_lye_it_says_what_comes_first() -> None:
    assert foot_of_home((EMERGENCY, POISON), with_lye=False) == (Foot.EMPTY, "Local rules and the safety data sheet come first.")


@pytest.mark.parametrize("calls", [(), (EMERGENCY,), (EMERGENCY, POISON)])
def test_with_lye_it_bears_all_that_the_cautions_leave_to_it(calls: tuple[Call, ...]) -> None:
    """Public Health England 2015, NIOSH 2007-107 and New Jersey's fact sheet on sodium hydroxide, as the caution on lye."""
    foot, says = foot_of_home(calls, with_lye=True)
    assert foot is Foot.LYE
    for words in (
        "Lye: brush off if dry",
        "wet clothes off",
        "lids open",
        "Running water at once, at least 20 minutes",
        "until help",
        "no vomiting",
    ):
        assert words in says


def test_where_many_numbers_leave_no_room_the_cautions_say_it_themselves() -> None:
    foot, says = foot_of_home((EMERGENCY, POISON, Call("Eye clinic", "802-555-0199")), with_lye=True)
    assert foot is Foot.EMPTY
    assert says == "Skin or eyes: running water at once, at least 20 minutes. Swallowed: no vomiting."
