"""Which label each container gets: by the roster what its student chose; what is open as evenly as the amounts expect it."""

from collections import Counter

from hypothesis import given
from hypothesis import strategies as st

from builder.compose.label.batch_codes import jars_of
from builder.compose.label.label_counts import MIXED, label_counts, label_order
from builder.words.fold import fold
from tests.reckon.test_guests import LOTION, PARTY, QUICK, STUDIO, at, no_spare, people

SCENTS = {"lavender oil": "Lavender essential oil", "cedarwood essential oil": "Cedarwood essential oil", "no scent": None}
COLOURS = {"mica": "Mica", "no colour": None}


def chosen(finish):
    return {what: fold(option) if option else None for what, option in finish.variant.chosen}


ROWS = st.lists(st.tuples(st.sampled_from(["", *SCENTS]), st.sampled_from(["", *COLOURS])), max_size=9)


@given(ROWS, st.integers(9, 12))
def test_each_student_gets_labels_of_what_they_chose_and_the_rest_is_spread_as_the_amounts_expect(rows, students):
    sheet = at(QUICK, students, people(["scent", "meadow-lotion colour"], rows))
    (lotion,) = sheet.made
    finishes = lotion.containers[0].finishes
    assert len(finishes) == len(jars_of(sheet, lotion, 0)) == students + 2
    for (scent, colour), finish in zip(rows, finishes, strict=False):
        for what, cell, names in (("scent", scent, SCENTS), ("colour", colour, COLOURS)):
            if cell:
                assert chosen(finish)[what] == (fold(names[cell]) if names[cell] else None)
        assert finish.is_open == (not scent or not colour)
    assert all(finish.is_open for finish in finishes[len(rows) :])
    for number, total in enumerate(lotion.choices):
        offered = lotion.batch.own.doses[number].offered
        labels = Counter(dict(finish.variant.chosen)[total.what] for finish in finishes)
        known = {option.option: option.chosen for option in total.options} | {None: total.left_out}
        for option in offered:
            extra = labels[option] - known[option]
            # Even to one: no option has more labels than its expected amount serves, and none is forgotten.
            assert total.open // len(offered) <= extra <= -(-total.open // len(offered))


def test_without_a_roster_every_finish_comes_as_often_as_any_other():
    (finishes, _) = (made.containers[0].finishes for made in at(no_spare(LOTION), 12).made)
    assert set(Counter(finish.variant.chosen for finish in finishes).values()) == {2}


def test_all_containers_of_one_student_lie_together_with_their_pot():
    makes = tuple(type(make)(make.recipe, make.batch_for, each_student=2, spare=1) for make in PARTY.makes)
    rows = [("lavender essential oil", "no colour", "no scent"), ("no scent", "no colour", "lavender essential oil")]
    columns = ["still-water-bath-salts scent", "colour", "orchard-sugar-scrub scent"]
    sheet = at(type(PARTY)(**{**vars(PARTY), "makes": makes}), 3, people(columns, rows))
    salts = sheet.made[0]
    assert jars_of(sheet, salts, 0) == ("1", "1", "2", "2", "3", "3", "T")
    names = [dict(finish.variant.chosen)["scent"] for finish in salts.containers[0].finishes]
    assert names[:4] == ["Lavender essential oil", "Lavender essential oil", None, None]


def test_the_teacher_reads_how_many_of_which():
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
