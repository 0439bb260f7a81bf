"""Sentences as teachers write them on heat: what is hotter than boiling water is found, a bound, a tool or an oven stays silent.

Each was written before it was tried. The boiling point is the one that ships (IAPWS-95, 101.325 kPa).
"""

import pytest

from builder.check.formula.heat import BOILS
from builder.check.teaching.lesson_heat import hotter_than
from builder.model.place import Place
from builder.model.teaching.prose import sentences_of, value_as_text
from tests.studios import sound_studio

STUDIO, _ = sound_studio()

FOUND = [
    "Heat the oils to 110 °C.",
    "Melt the wax in the oil at 165 °C.",
    "Warm the lye to 120 °C.",
    "The oils should be at 105 degrees C.",
    "Bring the batter to 115 °C and stir.",
    "Don't worry, heat the fat to 130 °C.",
    "Do not stir, heat the oils to 120 °C.",
    "Without stirring, heat the oils to 140 °C.",
    "You can warm the base to 110 °C in the microwave.",
    "If the wax stays solid, heat the oils to 120 °C.",
    "Heat the oils to 250 °F.",
    "The lye must not cool: bring it to 105 °C.",
    "Heat the oils to 120 °C on the hot plate.",
    "We heat the oil phase to between 110 - 120 °C.",
    "Heat the oils to 120 °C, by the thermometer that reads to 200 °C.",
    "Nobody likes lumps, so heat the wax to 130 °C.",
    "Cook the soap at 105 °C, not at 90 °C.",
    "Not too fast, heat the oils to 110 °C.",
]
SILENT = [
    "Heat the oils to 75 °C.",
    "Boil the water for the phase at 100 °C.",
    "Heat the oils to 160 °F.",
    "Never heat the oil to 165 °C.",
    "Do not let the oils reach 120 °C.",
    "Keep the oils below 105 °C.",
    "Keep the pot under 220 °F.",
    "Heat the oils to 75 °C, never to 120 °C.",
    "The oils must not get hotter than 110 °C.",
    "Let the fat get no hotter than 105 °C.",
    "The base burns at 130 °C.",
    "Fat flashes at 300 °C.",
    "The oil smokes at 165 °C.",
    "Warm the jug in the oven at 110 °C.",
    "Stop if the pot reaches 110 °C.",
    "If the oils are at 105 °C, take the pot off the heat.",
    "Before the oils reach 110 °C, take the pot off the plate.",
    "Is the oil at 120 °C?",
    "Nobody heats oils to 120 °C.",
    "Instead of heating the oils to 120 °C, melt them in a water bath.",
    "Avoid heating the wax above 110 °C.",
    "Hang a thermometer that reads to 200 °C into the pot.",
    "Use a thermometer for the lye from 0 to 110 °C.",
    "Pour the lye into a jug that is heat-proof to 120 °C.",
    "Use a jug for the oils that withstands 130 °C.",
    "Set the hot plate to 120 °C and stand the pot of oils on it.",
    "Put the pot on the hot plate at 150 °C.",
    "Take the pot off long before 120 °C.",
    "Switch the heat off before the oils come to 105 °C.",
    "Carry the pot with mitts that are good to 250 °C.",
    "Heat the wax between 70 - 75 °C.",
    "Keep the oils below 230 °F (110 °C).",
    "Heat the oils to 167 °F / 75 °C.",
    "Wear gloves that take 150 °C when you lift the pot.",
]


def _said(text: str) -> list[int]:
    sentences = sentences_of(value_as_text(text, Place("lesson.md", 1, 1)))
    return [round(found.low) for one in sentences for found in hotter_than(one, STUDIO.constants[BOILS])]


@pytest.mark.parametrize("text", FOUND)
def test_what_is_hotter_than_boiling_water_is_found(text: str) -> None:
    assert _said(text)


@pytest.mark.parametrize("text", SILENT)
def test_bounds_tools_and_ovens_stay_silent(text: str) -> None:
    assert _said(text) == []
