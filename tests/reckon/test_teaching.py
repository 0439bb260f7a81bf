"""Formats worked out from parts, the advice on them, and the parts on the clock. What a format is: common practice, no source."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.dates.studio_class import BatchFor, Format, Goal, StudioClass
from builder.model.finding import Finding
from builder.model.recipe.quantity import NO_MASS
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Lesson, Part, Where, Who
from builder.read.teaching.lessons import read_lesson
from builder.reckon.teaching.classes import reckon_class
from builder.rules.clock import after_of, ahead_of, ends_at, on_the_clock
from tests.making import sure
from tests.studios import example_studio, sound_studio

EXAMPLE, _ = example_studio()
STUDIO, _ = sound_studio()
LOTION = STUDIO.classes["one-lotion"]
TALK, WEIGH, PREPARE, FILL, SCENT = (
    "Say why.",
    "1. Weigh {sunflower oil} of oil.",
    "1. Weigh {glycerin} of glycerin.",
    "1. Fill {portion}.",
    "1. Add {scent}.",
)


def taught(*parts: tuple[str, str], of: StudioClass = LOTION) -> ClassPlan:
    """Read a lesson of (who, text) pairs and work out its class."""
    text = "# One\n\nOne.\n" + "".join(f"\n## Part {number} ({who}, 10 min)\n\n{body}\n" for number, (who, body) in enumerate(parts))
    findings: list[Finding] = []
    lesson = read_lesson(text, "lesson.md", {}, findings)
    assert findings == []
    return reckon_class(STUDIO, replace(of, lesson=sure(lesson)))[0]


@pytest.mark.parametrize(
    ("parts", "expected"),
    [
        ([("teacher", WEIGH)], Format.DEMO),
        ([("teacher", WEIGH), ("students", FILL)], Format.DEMO),
        ([("teacher", WEIGH), ("together", TALK)], Format.DEMO),
        ([("students", WEIGH)], Format.HANDS_ON),
        ([("together", WEIGH)], Format.HANDS_ON),
        ([("teacher", TALK), ("students", WEIGH)], Format.HANDS_ON),
        ([("ahead", WEIGH), ("students", SCENT)], Format.HANDS_ON),
        ([("ahead", WEIGH), ("students", FILL)], Format.HANDS_ON),
        ([("teacher", WEIGH), ("students", SCENT)], Format.DEMO_WITH_HANDS_ON_PARTS),
        ([("students", PREPARE), ("teacher", WEIGH)], Format.DEMO_WITH_HANDS_ON_PARTS),
        ([("teacher", TALK)], Format.DEMO),
    ],
)
def test_the_format_follows_from_who_makes_what(parts: Sequence[tuple[str, str]], expected: Format) -> None:
    assert taught(*parts).format is expected


# Common practice, no source: to blend and to pour raw soap is to make it, whoever has weighed it.
@pytest.mark.parametrize(("no_raw_soap", "expected"), [(False, Format.DEMO_WITH_HANDS_ON_PARTS), (True, Format.DEMO)])
def test_students_who_have_raw_soap_in_their_hands_make_something(no_raw_soap: bool, expected: Format) -> None:
    bar = EXAMPLE.classes["first-cold-process-bar"]
    parts = tuple(replace(part, no_raw_soap=no_raw_soap) if part.by_hand else part for part in bar.lesson.parts)
    sheet = reckon_class(EXAMPLE, replace(bar, lesson=replace(bar.lesson, parts=parts)))[0]
    assert sheet.format is expected
    assert sheet.made[0].taught.by_students is not no_raw_soap


def test_every_class_of_the_example_is_what_it_claims_to_be() -> None:
    for studio_class in EXAMPLE.classes.values():
        assert reckon_class(EXAMPLE, studio_class)[0].format is studio_class.format, studio_class.key


@pytest.mark.parametrize(
    ("key", "speaks_for"),
    [
        # Caustic process: a demonstration, or groups with ready-mixed lye. One's own portion or a ready-made base: hands-on.
        ("first-cold-process-bar", "lye is made or used"),
        ("soap-lab-in-pairs", "lye in groups"),
        ("salts-and-scrub-party", "single portions"),
        ("lotion-from-the-jug", "ready-made base"),
        ("lotion-from-scratch", "hot batch"),
    ],
)
def test_advice_fits_the_class(key: str, speaks_for: str) -> None:
    teaching = reckon_class(EXAMPLE, EXAMPLE.classes[key])[0].teaching
    assert speaks_for in {advice.key for advice in teaching.speaks_for}
    assert len(teaching.advice) == len(teaching.speaks_for) + len(teaching.speaks_against)


@pytest.mark.parametrize("key", ["first-cold-process-bar", "lotion-from-scratch", "bath-tea-and-lip-balm"])
def test_who_wants_every_minute_by_hand_is_pointed_to_a_ready_made_base(key: str) -> None:
    # Common practice, no source. Where a base is used already, or nothing is hot or caustic, it is not said.
    for studio_class, said in ((EXAMPLE.classes[key], True), (EXAMPLE.classes["melt-and-pour-soap"], False)):
        advice = reckon_class(EXAMPLE, replace(studio_class, goal=Goal.FUN))[0].teaching.advice
        assert ("every minute by hand" in {one.key for one in advice}) is said


@pytest.mark.parametrize(("group_size", "said"), [(1, False), (2, True), (3, False)])
def test_lye_in_groups_is_for_pairs(group_size: int, *, said: bool) -> None:
    lab = replace(EXAMPLE.classes["soap-lab-in-pairs"], group_size=group_size)
    assert ("lye in groups" in {one.key for one in reckon_class(EXAMPLE, lab)[0].teaching.advice}) is said


def test_every_piece_of_advice_is_used_and_has_a_source() -> None:
    classes = [*EXAMPLE.classes.values(), replace(EXAMPLE.classes["first-cold-process-bar"], goal=Goal.FUN)]
    used = {advice.key for one in classes for advice in reckon_class(EXAMPLE, one)[0].teaching.advice}
    assert used == set(EXAMPLE.format_advice)
    assert all(advice.source.title and advice.because for advice in EXAMPLE.format_advice.values())


def lesson_of(*parts: tuple[Who, int, bool]) -> Lesson:
    made = (Part(f"part {number}", who, minutes, (), in_the_wait=inside) for number, (who, minutes, inside) in enumerate(parts))
    return Lesson("One", (), tuple(made))


def test_parts_laid_into_a_wait_begin_with_it_and_the_next_part_after_it() -> None:
    timeline = on_the_clock(
        lesson_of(
            (Who.STUDENTS, 20, False), (Who.WAITING, 30, False), (Who.TEACHER, 10, True), (Who.TOGETHER, 15, True), (Who.STUDENTS, 5, False)
        )
    )
    assert [(one.begins, one.ends) for one in timeline] == [(0, 20), (20, 50), (20, 30), (30, 45), (50, 55)]
    assert timeline[1].left == 5
    assert ends_at(timeline) == 55


def test_what_takes_longer_than_the_wait_delays_the_next_part() -> None:
    timeline = on_the_clock(lesson_of((Who.WAITING, 10, False), (Who.TEACHER, 25, True), (Who.STUDENTS, 5, False)))
    assert (timeline[2].begins, timeline[0].left) == (25, 0)


PARTS = st.lists(st.tuples(st.sampled_from([Who.TEACHER, Who.STUDENTS, Who.TOGETHER, Who.WAITING]), st.integers(1, 60), st.booleans()))


@given(PARTS)
def test_every_minute_of_the_class_is_accounted_for(parts: Sequence[tuple[Who, int, bool]]) -> None:
    parts = [(who, minutes, inside and who is not Who.WAITING) for who, minutes, inside in parts]
    timeline = on_the_clock(lesson_of(*parts))
    assert sum(one.alone for one in timeline) == ends_at(timeline)
    covered = sorted((one.ends - one.alone, one.ends) for one in timeline if one.alone)
    assert [end for _, end in covered[:-1]] == [begin for begin, _ in covered[1:]]


def test_what_is_done_ahead_ends_when_the_class_begins_and_days_before_come_first() -> None:
    parts = (Part("mix", Who.AHEAD, 60, ()), Part("rest", Who.AHEAD, 100, (), days_before=2), Part("lay out", Who.AHEAD, 40, ()))
    made = [(one.part.title, one.begins, one.ends) for one in ahead_of(Lesson("One", (), parts))]
    assert made == [("rest", None, None), ("mix", -100, -40), ("lay out", -40, 0)]


def test_what_comes_after_begins_with_the_end_of_the_class_and_later_days_come_last() -> None:
    parts = (
        Part("cut", Who.AFTER, 60, (), days_later=2),
        Part("wash", Who.AFTER, 20, ()),
        Part("teach", Who.TEACHER, 90, ()),
        Part("cure", Who.AFTER, 30, (), where=Where.HOME_ONLY),
        Part("look", Who.AFTER, 5, (), days_later=1),
        Part("lock", Who.AFTER, 10, ()),
    )
    made = [(one.part.title, one.begins, one.ends) for one in after_of(Lesson("One", (), parts), 120)]
    assert made == [("wash", 120, 140), ("lock", 140, 150), ("look", None, None), ("cut", None, None)]
    assert ends_at(on_the_clock(Lesson("One", (), parts))) == 90


@pytest.mark.parametrize("key", sorted(EXAMPLE.classes))
def test_every_gram_that_is_needed_is_weighed_by_somebody(key: str) -> None:
    sheet = reckon_class(EXAMPLE, EXAMPLE.classes[key])[0]
    for made in sheet.made:
        lines = [task for task in sheet.weighing.tasks if task.recipe == made.batch.recipe.name]
        in_all = sum((task.each * task.pots for task in lines), NO_MASS)
        steam = sum(
            (top_up.lost.grams * one.copies for one in made.batches for top_up in one.batch.grams.top_ups if top_up.lost), Fraction(0)
        )
        assert in_all.grams + steam == sum(need.mass.grams for need in made.needed)


# As the keys of class.yaml say: without a list of its own a class has there the tools of what is made there.
def test_tools_of_recipes_stand_where_the_class_lists_nothing() -> None:
    plain = replace(LOTION, on_each_bench=(), on_the_demo_table=(), makes=(replace(LOTION.makes[0], batch_for=BatchFor.STUDENT),))
    recipe = replace(STUDIO.recipes["plain-lotion"], tools=("jug", "scale"))
    studio = replace(STUDIO, recipes={**STUDIO.recipes, "plain-lotion": recipe})
    listed = replace(plain, on_each_bench=("a cup",), on_the_demo_table=("a pot",))
    assert reckon_class(studio, plain)[0].preparation.at_benches == ("jug", "scale")
    assert reckon_class(studio, listed)[0].preparation.at_benches == ("a cup",)
    shown = taught(("teacher", WEIGH)).studio_class
    for own, there in (((), ("jug", "scale")), (("a pot",), ("a pot",))):
        assert reckon_class(studio, replace(shown, on_the_demo_table=own))[0].preparation.at_demo == there


# Who weighs oils has no lye in hand, and who names it or its water poured together has.
def test_lye_is_in_the_hands_of_those_whose_parts_name_it() -> None:
    lye, oils = "1. Pour {lye} of sodium hydroxide into {lye water} of cold water.", "1. Weigh {olive oil} of olive oil."
    sheet = taught(("teacher", lye), ("together", oils), of=STUDIO.classes["one-bar"])
    assert sheet.made[0].taught.lye_by == {Who.TEACHER}
