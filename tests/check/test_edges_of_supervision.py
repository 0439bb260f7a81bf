"""Rules on watching people at work at the very number where they begin to speak, with a rule made for it.

That a rule lets pass what it allows, and speaks of one more, is what its words say ("at most", "from 12 years"); no figure of it is a fact.
"""

from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest

from builder.check.teaching.supervision import find_supervision_wanting
from builder.model.dates.studio_class import ClassDate
from builder.model.hazard import Hazard
from builder.model.recipe.figure import Known
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.supervision import Band, Basis, OwnNumbers, WatchedPart, Watcher, WatchRule
from builder.reckon.teaching.classes import reckon_class
from tests.check.test_at_the_edge import levels
from tests.making import SOURCE, only_findings
from tests.reckon.test_guests import LOTION, STUDIO

RULE = WatchRule(
    "hot work", (Hazard.HOT,), stops=True, basis=(Basis(SOURCE, "here", Known.READ),), youngest=12, group_of=3,
    bands=(Band(10, 4), Band(18, 8)), most=12, two_adults=True, ahead_below=14,
)  # fmt: skip
SHIPPED = replace(RULE, floor=OwnNumbers(youngest=8))
ONE = reckon_class(STUDIO, replace(LOTION, youngest=18), ClassDate(datetime(2027, 3, 6, 10), 6, (1, 0)))[0]


def plan(rule: WatchRule = RULE, *, students: int = 8, staff: int = 1, age: int = 18, by_hand: bool = True, **changed: Any) -> ClassPlan:
    """Return a class of one part that this rule is about."""
    here = {"not_ahead": (), "carried": None, "group_size": 3, "seats": 99, "dates": (), **changed}
    part = WatchedPart(1, "Pour", by_hand, (Hazard.HOT,), (rule,), None, not_ahead=here.pop("not_ahead"))
    carried = here.pop("carried")
    watchers = tuple(Watcher(number == 0, number + 1, False, ()) for number in range(staff))
    watched = replace(ONE.supervision, parts=(part,), carried=carried, limit=rule if carried else None, watchers=watchers)
    return replace(ONE, studio_class=replace(ONE.studio_class, youngest=age, **here), supervision=watched, students=students)


def said(one: ClassPlan) -> list[str]:
    return levels(find_supervision_wanting(one))


TOO_LITTLE, TOO_YOUNG, ONE_ADULT = ["supervision-too-little stop"], ["too-young stop"], ["second-adult-missing stop"]


@pytest.mark.parametrize(
    ("one", "found"),
    [
        (plan(students=8), []),
        (plan(students=9), TOO_LITTLE),
        (plan(students=9, staff=2), []),
        (plan(students=8, staff=2, age=17), []),
        (plan(students=9, staff=2, age=17), TOO_LITTLE),
        (plan(students=12, staff=2), []),
        (plan(students=13, staff=2), TOO_LITTLE),
        (plan(students=4, staff=2, age=12), []),
        (plan(students=4, staff=2, age=11), TOO_YOUNG),
        (plan(students=4, age=17), ONE_ADULT),
        (plan(group_size=4), ["group-too-large stop"]),
        # Nobody of whom a part asks nothing is watched, and where nobody is there to watch that is a finding of its own.
        (plan(students=40, by_hand=False), []),
        (plan(students=40, staff=0), []),
    ],
)
def test_a_rule_speaks_of_one_more_than_it_allows(one: ClassPlan, found: list[str]) -> None:
    assert said(one) == found


def test_what_a_rule_only_advises_cautions_and_of_what_stops_minors_adults_are_told() -> None:
    mild = replace(RULE, stops=False)
    assert said(plan(mild, students=9)) == ["supervision-too-little caution"]
    minors = replace(mild, stops_minors=True)
    assert said(plan(minors, students=9)) == ["supervision-too-little caution"]
    assert said(plan(minors, students=9, staff=2, age=17)) == TOO_LITTLE


# By hand: 17 students to 8 for each adult are three adults; two can watch 16.
def test_as_many_adults_are_asked_for_as_watch_all() -> None:
    rule = replace(RULE, most=None)
    for students, staff, can, needed in ((9, 1, "1 adult can watch 8 of the 9", 2), (17, 2, "2 adults can watch 16 of the 17", 3)):
        (found,) = only_findings(find_supervision_wanting(plan(rule, students=students, staff=staff)))
        assert can in found.wrong and found.remedy.startswith(f"Have {needed} adults that day ")
    (found,) = only_findings(find_supervision_wanting(plan(rule, students=24, staff=2)))
    assert found.remedy.startswith("Have 3 adults that day ")


@pytest.mark.parametrize(
    ("age", "hazard", "found"), [(14, Hazard.HOT, []), (13, Hazard.HOT, ["not-weighed-ahead stop"]), (13, Hazard.DUST, [])]
)
def test_what_brings_the_hazard_is_weighed_ahead_for_children(age: int, hazard: Hazard, found: list[str]) -> None:
    assert said(plan(students=4, staff=2, age=age, not_ahead=(("our oil", (hazard,)),))) == found


@pytest.mark.parametrize(
    ("own", "told"),
    [
        ({}, ""),
        ({"youngest": 11}, "from 11 years instead of 12"),
        ({"youngest": 13}, ""),
        ({"bands": (Band(10, 9),)}, "9 students to an adult instead of 8"),
        ({"bands": (Band(10, 7),)}, ""),
        ({"most": 13}, "13 students at most instead of 12"),
        ({"most": 11}, ""),
        ({"group_of": 4}, "groups of 4 instead of 3"),
        ({"group_of": 2}, ""),
    ],
)
def test_numbers_of_a_studio_are_laxer_beyond_those_of_the_library(own: dict[str, Any], told: str) -> None:
    found = only_findings(find_supervision_wanting(plan(replace(SHIPPED, shipped=SHIPPED, **own), students=4, staff=2, group_size=2)))
    assert [one.name for one in found] == ["policy-laxer"] * bool(told)
    assert all(told in one.wrong for one in found)
    # Of what is no rule on lye the library has no floor, and the studio is free.
    free = replace(RULE, shipped=RULE, **own)
    assert said(plan(free, students=4, staff=2, group_size=2)) == []


@pytest.mark.parametrize(
    ("seats", "changed", "found"),
    [
        (8, {}, 0),
        (9, {}, 1),
        (9, {"students": 9, "staff": 2}, 0),
        (9, {"carried": None}, 0),
        (9, {"dates": (ClassDate(datetime(2027, 3, 6, 10), 6, (1, 1)),)}, 0),
        (9, {"dates": (ClassDate(datetime(2027, 3, 6, 10), 6),)}, 1),
    ],
)
def test_no_more_seats_can_be_booked_than_adults_watch(seats: int, changed: dict[str, Any], found: int) -> None:
    assert said(plan(seats=seats, **{"carried": 8, **changed})) == ["seats-over-supervision caution"] * found


def test_one_is_spoken_of_as_one() -> None:
    single = replace(RULE, bands=(Band(10, 1),), most=None)
    (found,) = only_findings(find_supervision_wanting(plan(single, students=2)))
    assert "at most 1 student. 1 adult can watch 1 of the 2." in found.wrong and found.remedy.startswith("Have 2 adults ")
    (found,) = only_findings(find_supervision_wanting(plan(replace(RULE, most=1), students=2)))
    assert "at most 1 student in one class, and 2 are to come" in found.wrong
    (found,) = only_findings(find_supervision_wanting(plan(students=1, carried=1, seats=2)))
    assert "2 seats can be booked, and 1 adult can watch 1 student " in found.wrong
