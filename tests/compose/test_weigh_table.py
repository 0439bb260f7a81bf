"""The table of the terminal: what stands under ounces is what a scale in ounces weighs, and the same amount as the grams beside it."""

import re
from fractions import Fraction

from builder.compose.home.home_table import home_table
from builder.compose.recipe.weigh_table import HEADINGS, batch_table
from builder.compose.recipe.wording import sentence
from builder.model.recipe.column import Role
from builder.model.studio import Scale
from tests.reckon.test_guests import LOTION, STUDIO, at

OUNCE = Fraction("28.349523125")  # NIST Handbook 44, appendix C


def number(cell: str, unit: str) -> Fraction:
    found = re.match(rf"([\d\u00a0]*\.?\d+)\u00a0{unit}", cell)
    assert found, cell
    return Fraction(found[1].replace("\u00a0", ""))


def test_ounces_are_those_of_the_scale_and_agree_with_the_grams() -> None:
    home = at(LOTION, 6).made[0].home[0].batch
    grams_scale, ounce_scale = home.columns
    assert (grams_scale.unit, ounce_scale.unit) == ("g", "oz")
    rows = batch_table(home, "").rows
    assert len(rows) == len(home.rows) > 3
    for row, (in_grams, in_ounces) in zip(rows, home.rows, strict=True):
        said = dict(zip(HEADINGS, row, strict=True))
        weighed, ounces = number(said["weigh"], "g"), number(said["in ounces"], "oz")
        # What both scales weigh differs by half a division of each at most.
        off = (in_grams.scale.division.grams + in_ounces.scale.division.grams) / 2
        assert abs(weighed - ounces * OUNCE) <= off
        assert ounces % (in_ounces.scale.division.grams / OUNCE) == 0


# The most that a scale holds is with the vessel. More than that at once is told of; half of it leaves room for one.
def test_what_is_too_much_for_a_scale_at_once_is_weighed_a_cup_each() -> None:
    told = set()
    for batch in (home.batch for made in at(STUDIO.classes["soap-lab-in-pairs"], 8).made for home in made.home):
        notes = batch_table(batch, "").notes
        for group in home_table(STUDIO, batch, ()).groups:
            (phase,) = (one for one in {line.phase for line in batch.lines} if sentence(one) == group.title)
            on_one: dict[Scale, Fraction] = {}
            for w in (w for column in batch.columns for w in column.weighed if w.line.phase == phase and w.line.role is not Role.ALKALI):
                on_one[w.scale] = on_one.get(w.scale, Fraction(0)) + w.mass.grams
            if any(mass > scale.up_to.grams for scale, mass in on_one.items()):
                assert group.apart == "a cup each"
            if all(mass < scale.up_to.grams / 2 for scale, mass in on_one.items()):
                assert group.apart == ""
            assert bool(group.apart) == any(note.startswith(f"{group.title}: weigh each in a cup of its own") for note in notes)
            told.add(group.apart)
    assert told == {"", "a cup each"}


def test_large_print_has_no_column_of_scales_and_names_the_other_one_behind_what_is_weighed_on_it() -> None:
    home = at(LOTION, 6).made[0].home[-1].batch
    rows, large = (
        [row for group in home_table(STUDIO, home, (), in_large_print=one).groups for row in group.rows] for one in (False, True)
    )
    assert {row.scale for row in rows} == {"Pocket scale", "Kitchen scale"}
    assert [row.scale for row in rows].count("Kitchen scale") < len(rows) / 2
    for row, in_large in zip(rows, large, strict=True):
        assert in_large.name == (f"{row.name} (kitchen scale)" if row.scale == "Kitchen scale" else row.name)
