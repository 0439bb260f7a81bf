"""As what each text of a class is said: a title, a text, or a thing to have at hand."""

from dataclasses import replace

import pytest

from builder.check.teaching.statements import Said, statements_of
from builder.model.place import Name, Place
from builder.model.recipe.product import Condition
from builder.model.teaching.lesson import Mention, Part, Prose, Who
from builder.model.teaching.prose import sentences_of, value_as_text
from tests.check.test_at_the_edge import mixed
from tests.making import lye, soap
from tests.reckon.test_guests import LOTION, STUDIO


def test_each_text_of_a_class_is_said_as_what_it_is() -> None:
    texts = replace(LOTION, title="First words", summary="Second words", for_whom="Third words", take_home="Fourth words")
    one = replace(
        texts, wear=("Fifth words",), on_each_bench=("Sixth words",), at_the_sink=("Seventh words",), on_the_demo_table=("Last words",)
    )
    here = replace(STUDIO, classes={"one": one}, recipes={}, pages={})
    said = {statement.sentence.words: statement.said for statement in statements_of(here)}
    assert said["First words"] is Said.TITLE
    assert {said[text] for text in ("Second words", "Third words", "Fourth words")} == {Said.TEXT}
    assert {said[text] for text in ("Fifth words", "Sixth words", "Seventh words", "Last words")} == {Said.TOOL}


# A part that names its recipe, or an amount, is judged by that recipe alone; any other by all that the class makes: words may be of each.
@pytest.mark.parametrize(
    ("named", "mentions", "holds"),
    [
        ("soap", (), {"lye"}),
        ("balm", (), {"no lye"}),
        (None, ("water",), {"no lye"}),
        ("soap", ("water",), {"lye"}),
        (None, (), {"lye", "no lye"}),
    ],
)
def test_a_part_is_judged_by_the_recipe_that_it_is_about(named: str | None, mentions: tuple[str, ...], holds: set[str]) -> None:
    words = sentences_of(value_as_text("Stir it well.", Place("lesson.md", 1, 1)))
    block = Prose(tuple(Mention(Name(one)) for one in mentions), sentences=words)
    part = Part("Stir", Who.TOGETHER, 5, (block,), recipe=Name(named) if named else None)
    make = LOTION.makes[0]
    one = replace(
        LOTION,
        makes=tuple(replace(make, recipe=Name(key)) for key in ("balm", "soap", "lost")),
        lesson=replace(LOTION.lesson, parts=(part,), introduction=(), title_says=()),
    )
    known = {"balm": replace(mixed(), product="balm"), "soap": replace(soap({"olive oil": 100}, lye()), product="cold-process soap")}
    here = replace(STUDIO, classes={"one": one}, recipes=known, pages={})
    (said,) = (one for one in statements_of(here) if one.sentence.words == "Stir it well.")
    assert said.holds & {Condition.LYE, Condition.NO_LYE} == holds
