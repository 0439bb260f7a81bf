"""Sentences that say what to do when something goes wrong with what is made, and others that do not."""

import pytest

from builder.model.place import Place
from builder.model.teaching.prose import sentences_of, value_as_text
from builder.rules.hands.mended import says_how_to_mend

SAYS = (
    "If it splits hot, blend it again.",
    "If the soap separates in the mold, blend it again in the pot.",
    "If it stays apart, it is caustic waste.",
    "Too soft: melt in a little more beeswax.",
    "Too hard on the plate: melt in a little more oil.",
    "Warm the base again if a skin forms.",
    "If it sticks, give it another day.",
    "If it turned thick within seconds, stir in both and pour at once.",
    "Should the lotion curdle, warm it and blend it.",
    "When it seizes, press it into the mold with a spoon.",
    "If you see streaks of oil, blend for five seconds.",
    "If it will not thicken, wait ten minutes and blend again.",
    "If it does not set, put it in the fridge.",
    "If it is still runny after an hour, melt it again.",
    "If white pockets weep, do not use it.",
    "If it puffs up, stir it down.",
    "If the butter turns grainy, melt it and cool it fast.",
    "In case it boils over, take the pot off the heat.",
    "If the bomb crumbles, spray it once more.",
    "If it goes wrong, write to us.",
)
SAYS_NOT = (
    "If the cup comes off the pan, tare it again.",
    "If fat burns: heat off, lid on, never water.",
    "If lye splashes into an eye, rinse for 20 minutes.",
    "If the spot itches, wash it off.",
    "If nothing shows, use it.",
    "Blend until it is thick.",
    "Pour when it is thick and warm.",
    "Wait until the bars are hard.",
    "Stir until no lumps are left.",
    "If you like it scented, add the oil.",
    "Water at 60 °C burns.",
    "Note: the oils are warm.",
    "When they have cooled, pour the lye into the oils.",
    "Let it stand until it is firm.",
    "Does it split?",
    "If you are allergic to nuts, tell us.",
    "Hot: pour it slowly.",
    "Tools: jug, spoon, cup.",
    "If children come, an adult pours.",
    "Keep it dry.",
)


@pytest.mark.parametrize("words", SAYS)
def test_what_is_said_for_when_it_goes_wrong(words: str) -> None:
    assert says_how_to_mend(sentences_of(value_as_text(words, Place("lesson.md", 1, 1))))


@pytest.mark.parametrize("words", SAYS_NOT)
def test_what_is_none(words: str) -> None:
    assert not says_how_to_mend(sentences_of(value_as_text(words, Place("lesson.md", 1, 1))))
