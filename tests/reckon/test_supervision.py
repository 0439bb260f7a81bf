"""Supervision: cases from published guidance, each with its source beside it, and what holds for every number of people."""

from dataclasses import replace
from datetime import datetime
from itertools import chain
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.check.supervision import find_supervision_wanting
from builder.model.lesson import Who
from builder.model.studio_class import BatchFor, ClassDate
from builder.read import read_studio
from builder.reckon.classes import reckon_class
from builder.reckon.supervision import carry, share_out
from builder.stock import CONTENT

EXAMPLE, _ = read_studio(Path(__file__).parent.parent.parent / "site_example", CONTENT)
SOUND, _ = read_studio(Path(__file__).parent.parent / "findings" / "_sound", CONTENT)
RULES = SOUND.supervision
LAB = EXAMPLE.classes["soap-lab-in-pairs"]


def lab(students, assistants, **changed):
    date = ClassDate(datetime(2027, 3, 6, 10), students, (1, assistants))
    return reckon_class(EXAMPLE, replace(LAB, **changed), date)[0]


def names(sheet):
    return sorted({(finding.name, finding.stops) for finding in find_supervision_wanting(sheet)})


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
def test_one_adult_watches_as_many_as_the_guidance_says(rule, age, students, source):
    assert source
    assert RULES[rule].to_one(age) == students
    assert carry([RULES[rule]], 1, age) == students


def test_a_teacher_and_three_assistants_carry_eight_students_in_pairs_with_lye_mixed_ahead():
    # Common practice, no source: one supervisor for each pair, lye mixed and weighed ahead.
    sheet = lab(8, 3)
    assert (sheet.supervision.staff, sheet.supervision.carried, sheet.groups) == (4, 8, 4)
    assert sheet.supervision.limit.key == "lye in the students' hands"
    assert sheet.supervision.watched == ((1,), (2,), (3,), (4,))
    assert names(sheet) == []


@pytest.mark.parametrize(
    ("students", "assistants", "changed", "found"),
    [
        (9, 3, {}, [("supervision-too-little", True)]),
        (8, 2, {"seats": 6}, [("supervision-too-little", True)]),
        (2, 0, {"seats": 2}, []),
        (2, 0, {"seats": 2, "youngest": 16}, [("second-adult-missing", True)]),
        (4, 1, {"seats": 4, "youngest": 16}, []),
        (4, 1, {"seats": 4, "youngest": 15}, [("too-young", True)]),
        (4, 1, {"seats": 4, "group_size": 4}, [("group-too-large", True)]),
    ],
)
def test_hands_on_lye_without_enough_supervision_stops(students, assistants, changed, found):
    assert names(lab(students, assistants, **changed)) == found


def test_no_stop_on_lye_can_be_accepted_away():
    assert [finding.acceptable for finding in find_supervision_wanting(lab(12, 2, youngest=12, group_size=4)) if finding.stops] == [
        False
    ] * len([finding for finding in find_supervision_wanting(lab(12, 2, youngest=12, group_size=4)) if finding.stops])


def test_the_teachers_own_lye_needs_no_ratio_for_lye():
    lesson = replace(LAB.lesson, parts=tuple(replace(part, who=Who.TEACHER) if part.by_hand else part for part in LAB.lesson.parts))
    assert lab(24, 0, lesson=lesson).supervision.carried is None
    assert names(lab(24, 0, lesson=lesson)) == []


def test_raw_soap_stays_with_whom_it_has_reached():
    by_title = {part.title: part.hazards for part in lab(8, 3).supervision.parts}
    assert "raw soap" in by_title["Pour your mould"] and "raw soap" in by_title["Clean up in gloves"]
    assert "raw soap" not in by_title["Weigh and melt the oils"]


def test_a_batch_for_each_student_is_watched_like_any_other():
    sheet = lab(8, 3, makes=tuple(replace(make, batch_for=BatchFor.STUDENT) for make in LAB.makes), group_size=1)
    assert sheet.supervision.carried == 8
    assert sheet.supervision.watched == ((1, 2), (3, 4), (5, 6), (7, 8))


@given(st.integers(0, 40), st.integers(1, 9))
def test_every_group_has_one_adult_and_nobody_has_two_more_than_another(groups, staff):
    shared = share_out(groups, staff)
    assert len(shared) == staff
    assert list(chain.from_iterable(shared)) == list(range(1, groups + 1))
    sizes = [len(one) for one in shared]
    assert max(sizes) - min(sizes) <= 1


@given(st.integers(1, 9), st.integers(1, 80))
def test_more_adults_never_carry_fewer(staff, age):
    for rule in RULES.values():
        fewer, more = carry([rule], staff, age), carry([rule], staff + 1, age)
        assert (fewer is None and more is None) or fewer <= more


def test_every_rule_says_where_it_comes_from_and_how_that_is_known():
    hazards = {caution.hazard for caution in SOUND.cautions.values()} | {"dry lye"}
    for rule in RULES.values():
        assert rule.basis and all(one.source.title and one.at for one in rule.basis), rule.key
        assert set(rule.hazards) <= hazards, rule.key
        assert rule.bands == tuple(sorted(rule.bands, key=lambda band: band.from_age)), rule.key


def test_gear_is_counted_for_everybody_in_the_room():
    worn = {one.item: one.people for one in lab(8, 3).preparation.worn}
    assert worn["chemical splash goggles"] == worn["lye-resistant gloves"] == 12
    assert "goggles" not in worn
    demo = reckon_class(EXAMPLE, EXAMPLE.classes["first-cold-process-bar"], ClassDate(datetime(2027, 3, 6, 10), 11))[0]
    # Those who watch lye wear goggles too; statutes on eye protection in schools name visitors. Gloves are for who handles it.
    worn = {one.item: one.people for one in demo.preparation.worn}
    assert (worn["chemical splash goggles"], worn["lye-resistant gloves"]) == (13, 2)
