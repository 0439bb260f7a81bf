"""What a caution orders to be done now is found in a studio's own, and how to avoid a danger, or what to do after an accident, is not.

A safety message holds hazard, consequence and how to avoid it, and no work to carry out (ANSI Z535.6, from memory).
"""

import pytest

from builder.check.supplies.caution_hides_step import hides_a_step
from tests.studios import example_studio, sound_studio

HIDDEN = (
    "First warm the tins on the tray, then pour the balm to the line.",
    "1. Weigh the lye. 2. Pour it into the water.",
    "Step 1: Fill the jug. Step 2: Pour it out.",
    "First add the acid. Then stir in the salt.",
    "Add 5 g of citric acid.",
    "Put 20 drops of the oil into the cup.",
    "Stir it for ten minutes.",
    "Stir for 2 minutes.",
    "Heat the water for about half an hour, and pour it off for 5 minutes.",
    "Melt the wax for 20 minutes.",
    "Pour in 100 ml of water, slowly.",
    "Firstly weigh the oils, next melt them.",
    "Weigh 30 g of soda into the bucket.",
    "Blend the batter for a minute.",
    "Measure two spoons, then add 3 oz of water to them.",
    "Boil the jars for 10 minutes.",
    "Mix 50 g of soda with the spilled acid.",
    "Put the pot on the plate and cook it for an hour.",
    "Dissolve 10 grams of salt in the water.",
    "(1) Scoop the acid low. (2) Tip it in.",
    "1. Open the tub. 2. Weigh the lye.",
)
FINE = (
    "Pour slowly, away from yourself.",
    "Unplug before you touch, scrape or wash it.",
    "Switch on only under the surface. Before you lift it, switch off and wait until the blade stands still.",
    "Wear goggles first, then gloves.",
    "Put on goggles first, then open the tub.",
    "Keep the jug at arm's length.",
    "Air the room for ten minutes.",
    "Never heat it above 70 °C.",
    "Never add more than 5 g of acid.",
    "Use at most 2 drops of it.",
    "Do not stir for more than 10 minutes.",
    "Water at 60 °C (140 °F) burns deep in about five seconds, hotter water in about one.",
    "Wait with the door shut, then stir, before the next.",
    "Soak cloths in water, then dry them flat outdoors.",
    "Melt in a water bath, or on low in a slow cooker; never over direct heat.",
    "Add scent off the heat, below its flash point.",
    "Leave it alone for ten minutes before you lift the lid.",
    "Weigh it into a small cup, over a tray.",
    "It holds 5 g of lye.",
    "Rinse under running water for 20 minutes.",
    "Lye comes first, then the oils: never the other way round.",
    "If you add 5 g too much, throw it away.",
    "1. Wear goggles. 2. Wear gloves.",
    "Air the room first, then open the tub.",
)


@pytest.mark.parametrize("text", HIDDEN)
def test_work_is_found(text: str) -> None:
    assert hides_a_step(text)


@pytest.mark.parametrize("text", FINE)
def test_how_to_avoid_a_danger_is_no_work(text: str) -> None:
    assert not hides_a_step(text)


def test_no_caution_that_ships_hides_a_step() -> None:
    said = [line for studio, _ in (sound_studio(), example_studio()) for one in studio.cautions.values() for line in (one.what, *one.avoid)]
    assert len(said) > 100
    assert [line for line in said if hides_a_step(line)] == []
