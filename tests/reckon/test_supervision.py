"""Supervision: cases from published guidance, each with its source beside it, and what holds for every number of people."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime
from itertools import chain
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.check.teaching.supervision import find_supervision_wanting
from builder.model.dates.studio_class import BatchFor, ClassDate, StudioClass
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import CautionHere, Part, Prose, Step, Steps, Who
from builder.model.teaching.supervision import WatchedPart
from builder.reckon import reckon_classes
from builder.reckon.teaching.classes import reckon_class
from builder.reckon.teaching.supervision import carry, share_out
from tests.making import only_findings, sure
from tests.published import example
from tests.studios import example_studio, sound_studio

EXAMPLE, _ = example_studio()
SOUND, _ = sound_studio()
RULES = SOUND.supervision
LAB = EXAMPLE.classes["soap-lab-in-pairs"]


def lab(students: int, assistants: int, **changed: Any) -> ClassPlan:
    date = ClassDate(datetime(2027, 3, 6, 10), students, (1, assistants))
    return reckon_class(EXAMPLE, replace(LAB, **changed), date)[0]


def names(sheet: ClassPlan) -> list[tuple[str, bool]]:
    return sorted({(finding.name, finding.stops) for finding in only_findings(find_supervision_wanting(sheet))})


# (rule, age, students that one adult watches, source)
PUBLISHED = [
    ("any work of the hands", 6, 6, "NSPCC recommended ratios, 4 to 8 years 1:6"),
    ("any work of the hands", 8, 6, "NSPCC recommended ratios, 4 to 8 years 1:6"),
    ("any work of the hands", 9, 8, "NSPCC recommended ratios, 9 to 12 years 1:8"),
    ("any work of the hands", 12, 8, "NSPCC recommended ratios, 9 to 12 years 1:8"),
    ("any work of the hands", 13, 10, "NSPCC recommended ratios, 13 to 18 years 1:10"),
    ("any work of the hands", 18, 24, "NSTA on class size, at most 24 students to a teacher"),
    ("hot fat and wax", 12, 6, "common practice, no source"),
    ("hot fat and wax", 13, 8, "common practice, no source"),
    ("lye in the students' hands", 18, 2, "common practice, no source: one supervisor for each pair"),
    ("raw soap in the students' hands", 14, 6, "common practice, no source"),
]


@pytest.mark.parametrize(("rule", "age", "students", "source"), PUBLISHED)
def test_one_adult_watches_as_many_as_the_guidance_says(rule: str, age: int, students: int, source: str) -> None:
    assert source
    assert RULES[rule].to_one(age) == students
    assert carry([RULES[rule]], 1, age) == students


def test_a_teacher_and_three_assistants_carry_eight_students_in_pairs_with_lye_mixed_ahead() -> None:
    # Common practice, no source: one supervisor for each pair, lye mixed and weighed ahead.
    sheet = lab(8, 3)
    assert (sheet.supervision.staff, sheet.supervision.carried, sheet.groups) == (4, 8, 4)
    assert sure(sheet.supervision.limit).key == "lye in the students' hands"
    assert [one.groups for one in sheet.supervision.watchers] == [(1,), (2,), (3,), (4,)]
    assert names(sheet) == []


@pytest.mark.parametrize(
    ("students", "assistants", "changed", "found"),
    [
        (9, 3, {}, [("supervision-too-little", True)]),
        (8, 2, {"seats": 6}, [("supervision-too-little", True)]),
        (12, 5, {"seats": 12}, []),
        (13, 6, {"seats": 13}, [("supervision-too-little", True)]),  # twelve at most, however many watch
        (2, 0, {"seats": 2}, []),
        (2, 0, {"seats": 2, "youngest": 16}, [("second-adult-missing", True)]),
        (4, 1, {"seats": 4, "youngest": 16}, []),
        (4, 1, {"seats": 4, "youngest": 15}, [("too-young", True)]),
        (4, 1, {"seats": 4, "group_size": 3}, [("group-too-large", True)]),
        (8, 3, {"seats": 8, "dates": ()}, []),
        (8, 3, {"seats": 9, "dates": ()}, [("seats-over-supervision", False)]),
    ],
)
def test_hands_on_lye_without_enough_supervision_stops(
    students: int, assistants: int, changed: Mapping[str, Any], found: Sequence[tuple[str, bool]]
) -> None:
    assert names(lab(students, assistants, **changed)) == found


# Thirteen students and six adults: two to an adult are twelve, and twelve are the most of one class. Each asks for something else.
def test_both_numbers_that_a_class_passes_are_said_in_one_run() -> None:
    found = [one.wrong for one in only_findings(find_supervision_wanting(lab(13, 5, seats=13))) if one.name == "supervision-too-little"]
    of_lye = [wrong for wrong in found if "lye in the students' hands" in wrong]
    assert len(of_lye) == 2
    assert "6 adults can watch 12 of the 13" in of_lye[0] and "at most 12 students in one class, and 13 are to come" in of_lye[1]


# NSPCC recommended ratios: always at least two adults with children and teenagers. The rule that stops is the one that is said.
@pytest.mark.parametrize(
    ("key", "youngest", "assistants", "found"),
    [
        ("salts-and-scrub-party", 17, 0, [("second-adult-missing", False)]),
        ("salts-and-scrub-party", 17, 1, []),
        ("salts-and-scrub-party", 18, 0, []),
        ("soap-lab-in-pairs", 17, 0, [("second-adult-missing", True)]),
    ],
)
def test_two_adults_are_there_where_a_minor_may_come(key: str, youngest: int, assistants: int, found: Sequence[tuple[str, bool]]) -> None:
    when = ClassDate(datetime(2027, 3, 6, 10), 2, (1, assistants))
    sheet = reckon_class(EXAMPLE, replace(EXAMPLE.classes[key], youngest=youngest, seats=2), when)[0]
    assert names(sheet) == found


def test_no_stop_on_lye_can_be_accepted_away() -> None:
    stops = [one for one in only_findings(find_supervision_wanting(lab(12, 2, youngest=12, group_size=4))) if one.stops]
    assert stops and not any(one.acceptable for one in stops)


def test_the_teachers_own_lye_needs_no_ratio_for_lye() -> None:
    lesson = replace(LAB.lesson, parts=tuple(replace(part, who=Who.TEACHER) if part.by_hand else part for part in LAB.lesson.parts))
    assert lab(24, 0, lesson=lesson).supervision.carried is None
    assert names(lab(24, 0, lesson=lesson)) == []


def test_raw_soap_stays_with_whom_it_has_reached() -> None:
    by_title = {part.title: part.hazards for part in lab(8, 3).supervision.parts}
    assert "raw soap" in by_title["Pour your mold"] and "raw soap" in by_title["Clean up in gloves"]
    assert "raw soap" not in by_title["Weigh and melt the oils"]


BALM, BARS = EXAMPLE.classes["bath-tea-and-lip-balm"], EXAMPLE.classes["melt-and-pour-soap"]


def watched(a_class: StudioClass, change: Callable[[Part], Part] = lambda part: part) -> dict[str, WatchedPart]:
    """Return the parts by hand of a class, each part of its lesson changed."""
    lesson = replace(a_class.lesson, parts=tuple(map(change, a_class.lesson.parts)))
    dated = replace(a_class, lesson=lesson, dates=(ClassDate(datetime(2027, 3, 6, 10), 8),))
    (sheet,) = reckon_classes(EXAMPLE, [dated], on=date(2027, 1, 2))
    return {part.title: part for part in sheet.supervision.parts if part.by_hand}


def titled(title: str, **changed: Any) -> Callable[[Part], Part]:
    return lambda part: replace(part, **changed) if part.title == title else part


def hot_parts(parts: Mapping[str, WatchedPart], hazard: str) -> dict[str, bool]:
    return {title: hazard in part.lingering for title, part in parts.items() if hazard in part.hazards}


# The balm is weighed for the melt, melted, poured and labelled: the pot stands on the bench till the end. The tea is never hot.
def test_what_is_hot_stays_hot_in_the_later_parts_on_that_recipe() -> None:
    assert hot_parts(watched(BALM), "hot fat") == {
        "Weigh and grind": False, "Melt the balm": False, "Flavor and pour": True, "Label and tidy": True,
    }  # fmt: skip
    assert all(RULES["hot fat and wax"] in watched(BALM)[title].rules for title in ("Flavor and pour", "Label and tidy"))


def test_it_stays_hot_until_a_part_begins_cooled() -> None:
    assert hot_parts(watched(BALM, titled("Label and tidy", cooled=True)), "hot fat") == {
        "Weigh and grind": False, "Melt the balm": False, "Flavor and pour": True,
    }  # fmt: skip


# The bars set for half an hour, while everybody washes up beside the pot; then they are cold.
def test_it_stays_hot_until_a_wait_is_over_also_for_what_is_done_in_the_wait() -> None:
    assert hot_parts(watched(BARS), "hot") == {"Pour your bars": False, "While the bars set": True}


def test_without_the_wait_it_is_hot_till_the_end() -> None:
    no_wait = lambda part: replace(part, who=Who.TEACHER if part.who is Who.WAITING else part.who, in_the_wait=False)  # noqa: E731
    assert hot_parts(watched(BARS, no_wait), "hot") == {"Pour your bars": False, "While the bars set": True, "Unmold, wrap, label": True}


def test_a_wait_for_one_recipe_cools_no_other() -> None:
    wait = replace(BARS.lesson.parts[0], title="It sets", who=Who.WAITING, recipe=BALM.makes[0].recipe)
    before = [part for part in BALM.lesson.parts if part.title != "Label and tidy"]
    lesson = replace(BALM.lesson, parts=(*before, wait, BALM.lesson.parts[-1]))
    assert hot_parts(watched(replace(BALM, lesson=lesson)), "hot fat")["Label and tidy"]


def by_teacher(*titles: str) -> Callable[[Part], Part]:
    return lambda part: replace(part, who=Who.TEACHER) if part.title in titles else part


# Whoever has melted it: balm is as hot in the tins that the students pour.
def test_what_the_teacher_heats_is_hot_where_students_pour_it() -> None:
    change = by_teacher("Weigh and grind", "Melt the balm")
    assert hot_parts(watched(BALM, change), "hot fat") == {"Flavor and pour": True, "Label and tidy": True}
    cooled = lambda part: replace(change(part), cooled=part.title == "Flavor and pour")  # noqa: E731
    assert hot_parts(watched(BALM, cooled), "hot fat") == {}


# Staff melt the base before the class; the bars are filled from it, and no caution stands there.
@pytest.mark.parametrize(("changed", "hot"), [({}, True), ({"cooled": True}, False)])
def test_what_was_melted_ahead_is_hot_for_who_fills_from_it(changed: Mapping[str, bool], hot: bool) -> None:
    parts = watched(BARS, lambda part: without_cautions(titled("Pour your bars", **changed)(part)))
    assert ("hot" in parts["Pour your bars"].hazards) is hot
    assert "hot" not in parts["Tint and scent"].hazards and "hot" not in parts["Unmold, wrap, label"].hazards


def test_what_was_made_days_before_has_cooled() -> None:
    early = lambda part: without_cautions(replace(part, days_before=1) if part.who is Who.AHEAD else part)  # noqa: E731
    assert "hot" not in watched(BARS, early)["Pour your bars"].hazards


def test_what_the_teacher_only_talks_about_is_not_hot() -> None:
    talk = lambda part: replace(part, who=Who.TEACHER, blocks=()) if part.title in ("Weigh and grind", "Melt the balm") else part  # noqa: E731
    assert hot_parts(watched(BALM, talk), "hot fat") == {}


def without_cautions(part: Part) -> Part:
    return replace(part, blocks=tuple(block for block in part.blocks if not isinstance(block, CautionHere)))


# Raw soap is treated as corrosive (common practice, no source): the teacher makes the lye and pours it into the oils, students blend and
# pour, and no step names the lye.
def test_students_who_finish_the_teachers_soap_work_with_raw_soap() -> None:
    teacher = by_teacher("Weigh and melt the oils", "Take your lye")
    parts = watched(LAB, lambda part: without_cautions(teacher(part)))
    raw = [title for title, part in parts.items() if "raw soap" in part.hazards]
    assert raw == ["Blend to trace", "Stir in clay and scent", "Pour your mold", "Clean up in gloves", "Records, labels, cure"]


# Two products, the soap second, and steps that say of neither that it is meant.
@pytest.mark.parametrize(("no_raw_soap", "raw"), [(False, True), (True, False)])
def test_steps_that_name_nothing_are_taken_for_those_on_the_soap(no_raw_soap: bool, raw: bool) -> None:
    steps = Part("Blend and pour", Who.STUDENTS, 10, (Steps((Step(("Blend it and pour it.",)),)),), no_raw_soap=no_raw_soap)
    both = replace(BALM, makes=(*BALM.makes, *LAB.makes), lesson=replace(BALM.lesson, parts=(*BALM.lesson.parts, steps)))
    assert ("raw soap" in watched(both)["Blend and pour"].hazards) is raw


def without_words(part: Part) -> Part:
    blocks = (Steps(tuple(Step(step.pieces) for step in block.steps)) if isinstance(block, Steps) else block for block in part.blocks)
    return replace(part, title_says=(), blocks=tuple(block for block in blocks if not isinstance(block, Prose)))


def test_a_part_that_says_so_brings_no_raw_soap_until_lye_has_reached_the_students() -> None:
    silent = lambda part: without_words(without_cautions(replace(by_teacher("Take your lye")(part), no_raw_soap=True)))  # noqa: E731
    none = watched(LAB, silent)
    assert not any("raw soap" in part.hazards for part in none.values())
    assert "raw soap" in watched(LAB, lambda part: replace(part, no_raw_soap=True))["Pour your mold"].hazards


# The heading says "no raw soap" everywhere, the title "Blend to trace" says otherwise, and the words count.
def test_no_raw_soap_does_not_override_what_the_words_say() -> None:
    parts = watched(LAB, lambda part: without_cautions(replace(by_teacher("Take your lye")(part), no_raw_soap=True)))
    assert "raw soap" in parts["Blend to trace"].hazards
    assert "raw soap" not in parts["Weigh and melt the oils"].hazards


@pytest.mark.parametrize("key", sorted(EXAMPLE.classes))
def test_what_lingers_carries_no_fewer_than_the_part_that_brought_it(key: str) -> None:
    for sheet in (one for one in example().plans if one.studio_class.key == key):
        parts = [part for part in sheet.supervision.parts if part.by_hand]
        brought = [part.carried for part in parts if not part.lingering and part.carried is not None]
        assert all(sure(part.carried) >= min(brought) for part in parts if part.lingering)


def test_a_batch_for_each_student_is_watched_like_any_other() -> None:
    sheet = lab(8, 3, makes=tuple(replace(make, batch_for=BatchFor.STUDENT) for make in LAB.makes), group_size=1)
    assert sheet.supervision.carried == 8
    assert [one.groups for one in sheet.supervision.watchers] == [(1, 2), (3, 4), (5, 6), (7, 8)]


@given(st.integers(0, 40), st.integers(1, 4), st.integers(0, 5))
def test_every_group_has_one_adult_and_nobody_has_two_more_than_another(groups: int, teachers: int, assistants: int) -> None:
    shared = share_out(groups, (teachers, assistants))
    assert [one.number for one in shared if one.is_teacher] == list(range(1, teachers + 1))
    assert [one.number for one in shared if not one.is_teacher] == list(range(1, assistants + 1))
    assert list(chain.from_iterable(one.groups for one in shared)) == list(range(1, groups + 1))
    sizes = [len(one.groups) for one in shared]
    assert max(sizes) - min(sizes) <= 1


@given(st.integers(1, 9), st.integers(1, 80))
def test_more_adults_never_carry_fewer(staff: int, age: int) -> None:
    for rule in RULES.values():
        fewer, more = carry([rule], staff, age), carry([rule], staff + 1, age)
        assert (fewer is None and more is None) or sure(fewer) <= sure(more)


def test_every_rule_says_where_it_comes_from_and_how_that_is_known() -> None:
    hazards = {caution.hazard for caution in SOUND.cautions.values()} | {"dry lye"}
    for rule in RULES.values():
        assert rule.basis and all(one.source.title and one.at for one in rule.basis), rule.key
        assert set(rule.hazards) <= hazards, rule.key
        assert rule.bands == tuple(sorted(rule.bands, key=lambda band: band.from_age)), rule.key


def test_gear_is_counted_for_everybody_in_the_room() -> None:
    worn = {one.item: one.people for one in lab(8, 3).preparation.worn}
    assert worn["chemical splash goggles"] == worn["lye-resistant gloves"] == 12
    assert "goggles" not in worn
    demo = reckon_class(EXAMPLE, EXAMPLE.classes["first-cold-process-bar"], ClassDate(datetime(2027, 3, 6, 10), 11))[0]
    # Those who watch lye wear goggles too; statutes on eye protection in schools name visitors. Gloves are for who handles it.
    worn = {one.item: one.people for one in demo.preparation.worn}
    assert (worn["chemical splash goggles"], worn["lye-resistant gloves"]) == (13, 2)
