"""Words by which hands spray, pour or wipe with alcohol, so that its vapour can be lit, and others that do not.

Vapour of isopropyl alcohol and of ethanol burns at room temperature (section 9 of suppliers' safety data sheets, from memory).
"""

import pytest

from builder.model.hazard import Hazard
from builder.rules.hands.alcohol import vapour_said
from tests.model.test_lye_words import STUDIO
from tests.model.test_over_heat import part_of

IN_HAND = (
    "Spray the bars with isopropyl alcohol.",
    "Spray the top of the soap once with rubbing alcohol, so that its bubbles burst.",
    "Spritz each layer with alcohol before you pour the next.",
    "Mist the molds with isopropanol.",
    "Wipe the bench with surgical spirit.",
    "Wipe the neck of the jug with isopropyl alcohol.",
    "Rinse the pump, spray it with isopropyl alcohol, and let it dry.",
    "Fill two small spray bottles with isopropyl alcohol.",
    "Have an adult spray the powder twice with isopropyl alcohol.",
    "Dip the stamp in rubbing alcohol.",
    "Disinfect the pots with 70 % alcohol.",
    "Use the alcohol spray on each layer.",
    "The bars are sprayed with alcohol by the teacher.",
    "Dampen a cloth with ethanol.",
    "Everybody sprays the cavity with alcohol.",
    "Swab the jars with denatured alcohol.",
    "Mix the mica with a little isopropyl alcohol.",
    "Open the bottle of isopropyl alcohol at the window.",
    "Moisten the mix with alcohol from a spray bottle.",
    "You spray the bombs with alcohol until they hold.",
    "Pour some rubbing alcohol into the cup.",
)
NOT_IN_HAND = (
    "Never spray alcohol in this room.",
    "Melt the cetyl alcohol in the oils.",
    "Stir in the cetearyl alcohol.",
    "Use the alcohol-free hand gel.",
    "Spray the bars with water.",
    "Spray the bombs with witch hazel water that is free of alcohol.",
    "Alcohol is kept with the teacher.",
    "Do not wipe the label with alcohol.",
    "The sugar alcohols in the base draw water.",
    "Put the bottle of alcohol away before the candles are lit.",
    "Add the preservative, which is dissolved in benzyl alcohol.",
    "Is the alcohol sprayed on or wiped on?",
    "Wipe the scale with an alcohol wipe.",
    "Dissolve the wool alcohols in the paraffin.",
    "Read the alcohol thermometer.",
    "If you spray alcohol at home, open a window.",
    "Instead of alcohol, spray plain water.",
    "Wipe the rim with a dry cloth.",
    "Rub the balm into your hands.",
    "Set the alcohol on the high shelf.",
)


@pytest.mark.parametrize("words", IN_HAND)
def test_alcohol_in_hand_gives_off_vapour(words: str) -> None:
    assert vapour_said(part_of(words).sentences, STUDIO.flame_words) == (Hazard.FLAMMABLE,)


@pytest.mark.parametrize("words", NOT_IN_HAND)
def test_alcohol_that_is_in_no_hands_gives_off_none(words: str) -> None:
    assert vapour_said(part_of(words).sentences, STUDIO.flame_words) == ()
