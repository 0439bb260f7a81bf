"""What hands do in a step, and what a step only tells of: sentences of lessons, each judged before it was tried (ordinary English)."""

import pytest

from builder.model.place import Name, Place
from builder.model.teaching.lesson import Mention, Part, Prose, Step, Steps, Who
from builder.model.teaching.prose import sentences_of, value_as_text
from builder.rules.hands.done import is_done
from builder.rules.hands.gear import is_gear, kind_of, strongest, tools_with_gear
from builder.rules.hands.told import handled_mentions
from builder.rules.hands.written import writes_down
from builder.rules.pouring import pours_in

FILE = Place("lesson.md", 1, 1)


def step(text: str) -> Step:
    """Return a step whose amounts in braces stand where they are written."""
    sentences = sentences_of(value_as_text(text, FILE))
    named = [(at, part.partition("}")[0]) for at, part in _holes(text)]
    return Step(tuple(Mention(Name(name, Place(FILE.file, 1, at + 1, len(name)))) for at, name in named), FILE, sentences)


def _holes(text: str) -> list[tuple[int, str]]:
    return [(at + 1, text[at + 1 :]) for at, sign in enumerate(text) if sign == "{"]


# Told of the beginning is what both a word of the past and one of the beginning say; an order is none, whatever it says besides.
@pytest.mark.parametrize(
    ("text", "in_hand"),
    [
        ("The pot held {oils} of oils at the start.", ()),
        ("To begin with it weighed {oils}.", ()),
        ("The pot held {oils} of oils.", ("oils",)),
        ("At the start there is {oils} of oils in the pot.", ("oils",)),
        ("Pour in {lye} of lye, which had {lye water} of water at the start.", ("lye", "lye water")),
        ("The pot held {oils} of oils at the start. Add {lye} of lye.", ("lye",)),
        ("Add {lye} of lye. The pot held {oils} of oils at the start.", ("lye",)),
    ],
)
def test_what_is_only_told_of_the_beginning_is_in_nobodys_hand(text: str, in_hand: tuple[str, ...]) -> None:
    assert tuple(one.name.text for one in handled_mentions(step(text))) == in_hand


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("Write the weight of the full pot down.", True),
        ("Note down what it shows.", True),
        ("Stir it. Write down the time.", True),
        ("Do not write the weight down.", False),
        ("If it is warm, write the time down.", True),
        ("Did you write the weight down?", False),
        ("Write the date on the label.", False),
    ],
)
def test_a_step_has_a_number_written_down(text: str, *, written: bool) -> None:
    assert writes_down(step(text)) is written


def part(text: str, who: Who = Who.TEACHER, *, in_steps: bool = False, title: str = "") -> Part:
    said = sentences_of(value_as_text(text, FILE))
    block = Steps((step(text),)) if in_steps else Prose((), FILE, said)
    return Part(title, who, 5, (block,), title_says=sentences_of(value_as_text(title, FILE)))


@pytest.mark.parametrize(
    ("one", "done"),
    [
        (part("Look at the pot.", in_steps=True), True),
        (part("Look at the pot.", Who.WAITING, in_steps=True), False),
        (part("Cut a bar of one day."), True),
        (part("Cut a bar of one day.", Who.WAITING), False),
        (part("Look at a bar of one day."), False),
        (part("The teacher has cut a bar."), False),
        (part("Put on goggles."), False),
        (part("Put the pot on the stove."), True),
        # A heading orders nothing.
        (part("Soap is old.", title="Cut a bar of one day."), False),
    ],
)
def test_steps_are_done_and_text_where_it_orders_hands_to_something(one: Part, *, done: bool) -> None:
    assert is_done(one) is done


# Splash goggles do all that goggles do, and gloves that resist lye all that thin ones do (common practice, no source).
def test_the_stronger_piece_alone_is_worn_and_a_tool_that_is_one_is_not_named_twice() -> None:
    assert kind_of("chemical splash goggles") == "goggles" and is_gear("oven mitts", ["mitts"]) and not is_gear("oven", ["mitts"])
    assert strongest(["goggles", "apron", "goggles"]) == ("goggles", "apron")
    assert strongest(["goggles", "chemical splash goggles", "apron"]) == ("chemical splash goggles", "apron")
    assert tools_with_gear(["scale", "goggles"], ["goggles"]) == ("scale", "goggles")
    assert tools_with_gear(["scale", "goggles"], ["chemical splash goggles"]) == ("chemical splash goggles", "scale")
    assert tools_with_gear(["scale", "our own goggles"], ["goggles", "apron"]) == ("apron", "scale", "our own goggles")


# What is poured cold, by an adult, or not at all, is nothing that children pour hot.
@pytest.mark.parametrize(
    ("text", "column"),
    [
        ("Pour the soap into the mould.", 1),
        ("Stir it; then pour the soap into the mould.", 15),
        ("Ladle it into the cups.", 1),
        ("Fill the cups.", 1),
        ("Stir it. Fill the cups.", 10),
        ("Stir it.", None),
        ("Do not pour the soap.", None),
        ("Have an adult pour the soap.", None),
        ("Pour in the cold milk.", None),
        ("Pour in your scent.", None),
    ],
)
def test_a_step_has_something_hot_poured(text: str, column: int | None) -> None:
    found = pours_in(part(text, in_steps=True))
    assert (found.column if found else None) == column
    assert pours_in(part(text)) is None  # text that is no step
