"""Whether a step puts in what students choose, by an amount in braces or by the words for it: lessons of one part, written for it."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime

import pytest

from builder.check.roster.choice_in_no_step import find_choices_in_no_step
from builder.check.teaching.ingredient_in_no_step import find_ingredients_in_no_step
from builder.model.dates.studio_class import ClassDate
from builder.model.place import Name, Place
from builder.model.recipe.recipe import Choice
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Mention, Part, Step, Steps, Where, Who
from builder.model.teaching.prose import sentences_of, value_as_text
from builder.reckon.teaching.classes import reckon_class
from tests.check.test_at_the_edge import levels
from tests.making import share, told
from tests.reckon.test_guests import LOTION, STUDIO

ONE = reckon_class(STUDIO, LOTION, ClassDate(datetime(2027, 3, 6, 10), 6, (1, 0)))[0]
BOTH = "Weigh {water} of water and {glycerin} of glycerin."
REST = "Weigh {sunflower oil}, {shea butter} and {emulsifying wax}. Blend. Add {vitamin E} of vitamin E."
LAST = "Add {phenoxyethanol and ethylhexylglycerin blend} of the preservative."


def steps(text: str) -> Iterator[Step]:
    """Yield the steps of lines, the amounts in braces where they are written."""
    for number, line in enumerate(text.splitlines(), 1):
        at = Place("lesson.md", number, 1)
        holes = [(begin + 1, line[begin + 1 : line.index("}", begin)]) for begin, sign in enumerate(line) if sign == "{"]
        mentions = tuple(Mention(Name(name, Place("lesson.md", number, begin + 1))) for begin, name in holes)
        yield Step(mentions, at, sentences_of(value_as_text(line, at)))


def teaching(text: str, where: Where = Where.EVERYWHERE) -> ClassPlan:
    """Return the lotion class with a lesson of these steps alone."""
    part = Part("Make it", Who.TOGETHER, 30, (Steps(tuple(steps(text))),), where=where, place=Place("lesson.md", 1))
    lesson = replace(ONE.studio_class.lesson, parts=(part,))
    return replace(ONE, studio_class=replace(ONE.studio_class, lesson=lesson), made=ONE.made[:1])


SCENT, COLOUR = "a scent is chosen", "a colour is chosen"


@pytest.mark.parametrize(
    ("says", "left"),
    [
        ("", [SCENT, COLOUR]),
        ("Stir in {scent} of your scent.", [COLOUR]),
        ("Stir in {lavender essential oil} of lavender.", [COLOUR]),
        ("Stir in your fragrance.", [COLOUR]),
        ("Stir in a few drops.", [COLOUR]),
        ("Stir in the lavender or the cedarwood.", [COLOUR]),
        ("Stir in {colour} of your colour.", [SCENT]),
        ("Stir in the mica.", [SCENT]),
        ("Stir in the pigments.", [SCENT]),
        ("Stir in your scent and your colour.", []),
        ("Stir in everything else.", []),
    ],
)
def test_what_is_chosen_goes_in_by_an_amount_or_by_a_word_for_it(says: str, left: list[str]) -> None:
    found = told(find_choices_in_no_step(teaching(f"{BOTH}\n{says}"), STUDIO))
    assert levels(found) == ["choice-in-no-step caution"] * len(left)
    assert all(what in one.wrong for what, one in zip(left, found, strict=True))


# Who names less than two ingredients in braces writes in words, and is not held against them.
@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Weigh {water} of water.", 0),
        ("Weigh {water} of water and {elbow grease} of grease.", 0),
        ("Weigh {water} of water and {glycerin} of glycerin.", 2),
    ],
)
def test_a_lesson_in_words_is_not_held_against_its_choices(text: str, found: int) -> None:
    assert levels(find_choices_in_no_step(teaching(text), STUDIO)) == ["choice-in-no-step caution"] * found


def test_a_choice_of_no_word_of_ours_is_known_by_its_own() -> None:
    made = ONE.made[0]
    choice = Choice("clay", (Name("kaolin clay"), None), share(1))
    batches = tuple(replace(one, batch=replace(one.batch, recipe=replace(one.batch.recipe, choices=(choice,)))) for one in made.batches)
    for says, found in (("Stir in your clay.", 0), ("Stir in the kaolin clay.", 0), ("Stir in your mud.", 1)):
        plan = replace(teaching(f"{BOTH}\n{says}"), made=(replace(made, batches=batches),))
        assert levels(find_choices_in_no_step(plan, STUDIO)) == ["choice-in-no-step caution"] * found


@pytest.mark.parametrize(
    ("text", "left"),
    [
        (f"{BOTH}\n{REST}\n{LAST}", ""),
        (f"{BOTH}\n{REST}", "phenoxyethanol and ethylhexylglycerin blend"),
        (f"{BOTH}\n{REST}\nAdd the preservative.", ""),
        (f"{BOTH}\n{REST}\nAdd everything else.", ""),
        ("Weigh {batch} in all.\nWeigh {water}, {glycerin}, {sunflower oil} and {shea butter}.", ""),
        # Of seven, four are more than half: then what is in no braces is missed.
        ("Weigh {water}, {glycerin}, {sunflower oil} and {shea butter}.", "emulsifying wax, "),
        ("Weigh {water}, {glycerin} and {sunflower oil}.", ""),
    ],
)
def test_what_no_step_puts_in_is_told_where_most_stand_in_braces(text: str, left: str) -> None:
    found = told(find_ingredients_in_no_step(teaching(text), STUDIO))
    assert levels(found) == ["ingredient-in-no-step caution"] * bool(left)
    assert all(left in one.wrong for one in found)


def test_whoever_forgets_the_preservative_is_told_what_comes_of_it_and_where() -> None:
    (one,) = told(find_ingredients_in_no_step(teaching(f"{BOTH}\n{REST}"), STUDIO))
    assert "no step in class or on the take-home sheet puts it in" in one.wrong
    assert one.wrong.endswith("leaves it out. Then bacteria and mould can grow in the product.") and one.place.line == 1
    (here,) = told(find_ingredients_in_no_step(teaching(f"{BOTH}\n{REST}", Where.CLASS_ONLY), STUDIO))
    assert "no step in class puts it in" in here.wrong
    (two,) = told(
        find_ingredients_in_no_step(teaching("Weigh {water}, {glycerin}, {sunflower oil}, {shea butter}, {emulsifying wax}."), STUDIO)
    )
    assert "puts them in" in two.wrong and "leaves them out" in two.wrong
