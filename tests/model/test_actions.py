"""How many things a step orders, one after the other: counted by hand in the sentences below."""

import pytest

from builder.model.place import Place
from builder.model.teaching.prose import sentences_of, value_as_text
from builder.rules.hands.actions import actions_in

STEPS = {
    "Put on goggles.": ["put"],
    "Set the cup on the scale, and set the scale to zero.": ["set", "set"],
    "Weigh {olive oil} of olive oil and {coconut oil} of coconut oil.": ["weigh"],
    "Rinse the pump with hot water, spray it with alcohol, and let it dry.": ["rinse", "spray", "let"],
    "Pour the cup into the soap, stir, and cover it.": ["pour", "stir", "cover"],
    "Sprinkle the lye into the water, a spoonful at a time, and stir until it is clear.": ["sprinkle", "stir"],
    "Stir slowly, without beating in air.": ["stir"],
    "When both have cooled, pour the lye into the oils.": ["pour"],
    "Lay out cup, funnel and cap.": ["lay"],
    "Put them on clean and dry paper.": ["put"],
    "Take the lid off and stir the pot. Put the lid on again.": ["take", "stir", "put"],
    "Never lift the blender while it runs.": [],
    "Do not open the window.": [],
    "If it sticks, give it another day.": [],
    "Lift the block out of the mold. If it sticks, give it another day.": ["lift"],
    "Is it clear, and do you see the print?": [],
    "Students put on gloves and weigh the oils.": ["put", "weigh"],
    "You fill the jars, then close them.": ["fill", "close"],
    "Shake or stir the bottle.": ["shake"],
    "The molds stand level in the freezer for half an hour.": [],
    "Write the name and date on the label and the box.": ["write"],
    "Have an adult spray the powder.": ["have"],
    "Let it cool to 40 °C.": ["let"],
    "Wipe the rim; then screw on the lid.": ["wipe", "screw"],
    "Put on gloves, carry the pot to the sink, fill it, wash it, dry it and put it away.": ["put", "carry", "fill", "wash", "dry", "put"],
}  # fmt: skip


@pytest.mark.parametrize(("step", "ordered"), STEPS.items())
def test_the_orders_of_a_step(step: str, ordered: list[str]) -> None:
    said = sentences_of(value_as_text(step, Place("lesson.md", 1, 1)))
    assert list(actions_in(said)) == ordered
