"""Columns of a roster that are meant for ours by their heads, and what a label tells in English of a recipe in another language."""

from dataclasses import replace

import pytest

from builder.check.roster.roster_columns import meant_for_ours
from builder.check.teaching.statements import statements_of
from builder.model.label.language import Translation
from builder.model.place import Name
from builder.model.roster.roster import About, Roster, RosterRow
from tests.check.test_at_the_edge import mixed
from tests.reckon.test_guests import STUDIO


@pytest.mark.parametrize(
    ("head", "about_people", "meant"),
    [
        ("wait list", ("name",), ("waiting",)),
        ("waitlisted", ("name",), ("waiting",)),
        ("wait list", ("name", "waiting"), ()),  # under its own head it is there already
        ("born", ("name",), ("age",)),
        ("born", ("name", "age"), ()),
        ("allergic to", ("name", "allergies"), ("allergies",)),  # of health everything is asked for
        ("favourite song", ("name",), ()),
    ],
)
def test_a_head_is_meant_for_what_it_says(head: str, about_people: tuple[str, ...], meant: tuple[str, ...]) -> None:
    column = Name(head)
    row = RosterRow(Name("A"), None, None, "", {column.key: Name("yes")})
    assert meant_for_ours(column, Roster((column,), (row,), about_people=tuple(map(About, about_people))), [], STUDIO.ingredients) == meant


def test_what_a_label_tells_in_english_is_judged_in_whatever_language_a_recipe_is_written() -> None:
    english = Translation("Soap", "Leave it on overnight.", "Keep it dry.", "6 months", ("Not for children.",))
    of = replace(mixed(), language="French", directions="Rincer.", translations={"English": english})
    words = {one.sentence.words for one in statements_of(replace(STUDIO, recipes={"one": of}, classes={}, pages={}))}
    assert {"Rincer.", "Leave it on overnight.", "Keep it dry.", "Not for children."} <= words
    own = {
        one.sentence.words for one in statements_of(replace(STUDIO, recipes={"one": replace(of, language="English")}, classes={}, pages={}))
    }
    assert "Leave it on overnight." not in own
