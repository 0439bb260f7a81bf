"""Parts of a lesson on the clock, and which recipe each is about: laid out by hand, in minutes from the start of the class."""

from dataclasses import replace
from typing import Any

import pytest

from builder.model.place import Name
from builder.model.teaching.lesson import Lesson, Mention, Part, Prose, Where, Who
from builder.rules.clock import after_of, ahead_of, ends_at, on_the_clock
from builder.rules.part_recipe import class_parts, home_parts, recipe_about, recipe_in_hand, recipe_of
from tests.check.test_at_the_edge import mixed
from tests.reckon.test_guests import LOTION, STUDIO


def part(title: str, who: Who, minutes: int, **changed: Any) -> Part:
    return Part(title, who, minutes, **{"blocks": (), **changed})


def lesson(*parts: Part) -> Lesson:
    return Lesson("A lesson", (), parts)


WAIT = part("wait", Who.WAITING, 20)
LAID = part("laid", Who.TOGETHER, 15, in_the_wait=True)


@pytest.mark.parametrize(
    ("parts", "laid_out"),
    [
        ((), []),
        ((part("a", Who.TEACHER, 10), part("b", Who.STUDENTS, 5)), [(0, 10, 10), (10, 15, 5)]),
        # What is laid into a wait begins with it, and takes its minutes from it.
        ((part("a", Who.TEACHER, 10), WAIT, LAID, part("b", Who.STUDENTS, 5)), [(0, 10, 10), (10, 30, 5), (10, 25, 15), (30, 35, 5)]),
        ((WAIT, LAID, LAID, part("b", Who.STUDENTS, 5)), [(0, 20, 0), (0, 15, 15), (15, 30, 15), (30, 35, 5)]),
        ((WAIT, part("b", Who.STUDENTS, 5), LAID), [(0, 20, 20), (20, 25, 5), (25, 40, 15)]),
        ((LAID, WAIT), [(0, 15, 15), (15, 35, 20)]),
        # What is not done in class takes none of its time.
        ((part("a", Who.AHEAD, 10), part("b", Who.STUDENTS, 5), part("c", Who.AFTER, 9)), [(0, 5, 5)]),
        ((part("a", Who.STUDENTS, 10, where=Where.HOME_ONLY), part("b", Who.STUDENTS, 5)), [(0, 5, 5)]),
    ],
)
def test_parts_follow_each_other_and_a_wait_holds_what_is_laid_into_it(
    parts: tuple[Part, ...], laid_out: list[tuple[int, int, int]]
) -> None:
    run = on_the_clock(lesson(*parts))
    assert [(one.begins, one.ends, one.alone) for one in run] == laid_out
    assert [one.left for one in run] == [
        alone if one.part.who is Who.WAITING else 0 for one, (_, _, alone) in zip(run, laid_out, strict=True)
    ]
    assert [one.number for one in run] == list(range(1, len(run) + 1))
    assert ends_at(run) == max((ends for _, ends, _ in laid_out), default=0)


def test_what_is_done_ahead_ends_when_the_class_begins_and_days_before_come_first() -> None:
    parts = (
        part("last", Who.AHEAD, 10), part("two days", Who.AHEAD, 5, days_before=2), part("in class", Who.TEACHER, 30),
        part("week", Who.AHEAD, 5, days_before=7), part("just before", Who.AHEAD, 15),
    )  # fmt: skip
    found = [(one.part.title, one.begins, one.ends) for one in ahead_of(lesson(*parts))]
    assert found == [("week", None, None), ("two days", None, None), ("last", -25, -15), ("just before", -15, 0)]


def test_what_staff_do_after_begins_when_the_class_ends_and_days_later_come_last() -> None:
    parts = (
        part("week", Who.AFTER, 5, days_later=7), part("clean", Who.AFTER, 10), part("day", Who.AFTER, 5, days_later=1),
        part("lock", Who.AFTER, 5), part("home", Who.AFTER, 5, where=Where.HOME_ONLY),
    )  # fmt: skip
    found = [(one.part.title, one.begins, one.ends) for one in after_of(lesson(*parts), 90)]
    assert found == [("clean", 90, 100), ("lock", 100, 105), ("day", None, None), ("week", None, None)]


MADE = ("one", "two")


@pytest.mark.parametrize(("recipe", "about"), [(None, "one"), ("one", "one"), ("two", "two"), ("three", None)])
def test_a_part_is_about_the_recipe_that_it_names_or_the_first(recipe: str | None, about: str | None) -> None:
    one = part("a", Who.STUDENTS, 5, recipe=Name(recipe) if recipe else None)
    assert recipe_about(one, MADE) == about


# Work of the students' hands that names nothing is taken for the recipe with lye: the safe side.
@pytest.mark.parametrize(
    ("changed", "in_hand"),
    [
        ({}, "two"),
        ({"who": Who.TOGETHER}, "two"),
        ({"who": Who.TEACHER}, "one"),
        ({"recipe": Name("one")}, "one"),
        ({"recipe": Name("three")}, "one"),
        ({"blocks": (Prose((Mention(Name("water")),)),)}, "one"),
    ],
)
def test_hands_that_name_nothing_work_on_what_has_lye(changed: dict[str, Any], in_hand: str) -> None:
    one = replace(part("a", Who.STUDENTS, 5), **changed)
    assert recipe_in_hand(one, MADE, {"two"}) == in_hand
    assert recipe_in_hand(one, MADE, ()) == "one"


def test_parts_are_followed_where_they_are_done_and_for_the_recipe_that_they_are_about() -> None:
    parts = (
        part("both", Who.STUDENTS, 5), part("class", Who.STUDENTS, 5, where=Where.CLASS_ONLY),
        part("home", Who.STUDENTS, 5, where=Where.HOME_ONLY), part("other", Who.STUDENTS, 5, recipe=Name("two")),
        part("nobody's", Who.STUDENTS, 5, recipe=Name("three")),
    )  # fmt: skip
    make = LOTION.makes[0]
    one = replace(LOTION, makes=tuple(replace(make, recipe=Name(key)) for key in MADE), lesson=replace(LOTION.lesson, parts=parts))
    assert [found.title for found in class_parts(one, "one")] == ["both", "class"]
    assert [found.title for found in home_parts(one, "one")] == ["both", "home"]
    assert [found.title for found in home_parts(one, "two")] == ["other"]
    known = {"one": mixed(), "two": mixed(glycerin="3")}
    found_of = [recipe_of(each, one, replace(STUDIO, recipes=known)) for each in parts]
    assert found_of == [known["one"]] * 3 + [known["two"], None]
