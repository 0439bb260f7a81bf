"""Which label each container gets: by the roster what its student chose; what is open as evenly as the amounts expect it."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.compose.label.label_counts import MIXED, label_counts, label_order
from builder.compose.label_layout.label_plans import plan_labels
from builder.fonts.typefaces import typefaces_of_labels
from builder.model.dates.studio_class import BatchFor
from builder.model.roster.roster import Guest
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.jar import Jar
from builder.words.fold import fold
from tests.making import sure
from tests.reckon.test_guests import LOTION, PARTY, QUICK, STUDIO, at, no_spare, people

# A studio with the typefaces by which labels are laid out.
LABELLED = replace(STUDIO, typefaces=typefaces_of_labels())
SCENTS = {"lavender oil": "Lavender essential oil", "cedarwood essential oil": "Cedarwood essential oil", "no scent": None}
COLOURS = {"mica": "Mica", "no colour": None}


def chosen(jar: Jar) -> dict[str, str | None]:
    return {what: fold(option) if option else None for what, option in jar.variant.chosen}


ROWS = st.lists(st.tuples(st.sampled_from(["", *SCENTS]), st.sampled_from(["", *COLOURS])), max_size=9)


def jars_of(plan: ClassPlan, guest: Guest) -> tuple[Jar, ...]:
    """Return everything that one guest takes home with a label."""
    return tuple(jar for made in plan.made for one in made.containers for jar in one.jars if jar.guest is guest)


@given(ROWS, st.integers(9, 12))
def test_each_student_gets_labels_of_what_they_chose_and_the_rest_is_spread_as_the_amounts_expect(
    rows: Sequence[tuple[str, str]], students: int
) -> None:
    sheet = at(QUICK, students, people(["scent", "meadow-lotion colour"], rows))
    (lotion,) = sheet.made
    jars = lotion.containers[0].jars
    assert [jar.student for jar in jars] == [*range(1, students + 1), None, None]
    for (scent, colour), guest in zip(rows, sheet.guests, strict=True):
        (finish,) = jars_of(sheet, guest)
        for what, cell, names in (("scent", scent, SCENTS), ("colour", colour, COLOURS)):
            if cell:
                assert chosen(finish)[what] == (fold(sure(names[cell])) if names[cell] else None)
        assert finish.is_open == (not scent or not colour)
    assert all(jar.is_open and jar.guest is None for jar in jars[len(rows) :])
    for number, total in enumerate(lotion.choices):
        offered = lotion.batch.own.doses[number].offered
        labels = Counter(dict(finish.variant.chosen)[total.what] for finish in jars)
        known = {option.option: option.chosen for option in total.options} | {None: total.left_out}
        for option in offered:
            extra = labels[option] - known[option]
            # Even to one: no option has more labels than its expected amount serves, and none is forgotten.
            assert total.open // len(offered) <= extra <= -(-total.open // len(offered))


def test_without_a_roster_every_finish_comes_as_often_as_any_other() -> None:
    (finishes, _) = (made.containers[0].jars for made in at(no_spare(LOTION), 12).made)
    assert set(Counter(finish.variant.chosen for finish in finishes).values()) == {2}


def test_all_containers_of_one_student_lie_together_with_their_pot() -> None:
    makes = tuple(type(make)(make.recipe, make.batch_for, each_student=2, spare=1) for make in PARTY.makes)
    rows = [("lavender essential oil", "no colour", "no scent"), ("no scent", "no colour", "lavender essential oil")]
    columns = ["still-water-bath-salts scent", "colour", "orchard-sugar-scrub scent"]
    sheet = at(type(PARTY)(**{**vars(PARTY), "makes": makes}), 3, people(columns, rows))
    salts = sheet.made[0]
    jars = salts.containers[0].jars
    assert [(jar.pot.purpose, jar.pot.number) for jar in jars] == [("student", number) for number in (1, 1, 2, 2, 3, 3)] + [("teacher", 0)]
    assert [jar.pot.code for jar in jars] == [f"SWBS-270605-{pot}" for pot in ("1", "1", "2", "2", "3", "3", "T")]
    names = [dict(jar.variant.chosen)["scent"] for jar in jars]
    assert names[:4] == ["Lavender essential oil", "Lavender essential oil", None, None]


def test_the_teacher_reads_how_many_of_which() -> None:
    rows = [("lavender oil", "mica")] * 3 + [("no scent", "no colour")] * 2 + [("", "mica")]
    sheet = at(no_spare(LOTION), 7, people(["scent", "meadow-lotion colour"], rows))
    line, mixed = label_counts(STUDIO, sheet.made[0])
    assert mixed == MIXED
    assert line == (
        "Labels: 3 lavender essential oil, mica; 2 no scent, no colour; 1 cedarwood essential oil, mica; "
        "1 lavender essential oil, no colour. "
        "2 of these stand for open choices and spare containers, spread evenly over what is offered"
    )
    assert "order of this list, then those of 1 student who is not listed," in label_order(sheet).replace("\u00a0", " ")
    nobody = at(no_spare(LOTION), 7)
    assert "No choice is known yet" in label_counts(STUDIO, nobody.made[0])[0]
    assert label_order(nobody) == ""


def test_everything_that_one_guest_takes_home_can_be_labelled_again_and_is_not_published_under_their_name() -> None:
    rows = [("lavender essential oil", "no colour", "no scent"), ("no scent", "no colour", "lavender essential oil")]
    sheet = at(PARTY, 3, people(["still-water-bath-salts scent", "colour", "orchard-sugar-scrub scent"], rows))
    salts, scrub = jars_of(sheet, sheet.guests[1])
    assert (salts.student, salts.pot.number, scrub.pot.number) == (2, 2, 2)
    assert [dict(jar.variant.chosen)["scent"] for jar in (salts, scrub)] == [None, "Lavender essential oil"]
    published = sheet.without_names()
    assert [jars_of(published, guest) for guest in sheet.guests] == [(), ()]
    assert all(jar.guest is None for made in published.made for one in made.containers for jar in one.jars)


@pytest.mark.parametrize(("students", "numbers"), [(5, (1, 1, 2, 2, 3)), (4, (1, 1, 2, 2)), (1, (1,))])
def test_each_group_fills_from_its_own_pot_and_the_last_may_be_smaller(students: int, numbers: tuple[int, ...]) -> None:
    lab = STUDIO.classes["soap-lab-in-pairs"]
    makes = (replace(lab.makes[0], each_student=2, spare=0, at_home=()),)
    sheet = at(replace(lab, makes=makes), students)
    (made,) = sheet.made
    assert [jar.pot.number for jar in made.containers[0].jars] == [number for number in numbers for _ in range(2)]
    assert sum(pot.people for pot in made.pots) == students
    assert len({pot.code for pot in made.pots}) == len(made.pots)


def test_each_label_bears_the_code_of_the_pot_its_jar_was_filled_from() -> None:
    salts, _ = plans = list(plan_labels(LABELLED, at(PARTY, 3)))
    assert len(plans) == 2
    codes = ["".join(run.text for run in text.lines[-1]) for text in salts.texts]
    assert [code.rpartition("-")[2] for code in codes] == ["1", "2", "3", "T"]


def test_the_one_pot_of_a_class_has_no_number() -> None:
    soap = STUDIO.classes["first-cold-process-bar"]
    (made,) = at(soap, 4).made
    assert made.make.batch_for is BatchFor.CLASS
    assert [(pot.number, pot.people) for pot in made.pots] == [(0, 4)]
