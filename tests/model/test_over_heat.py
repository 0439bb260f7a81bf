"""Words that put something over heat or into scalding water (common practice, no source), and others that do not."""

import pytest

from builder.model.hazard import Hazard
from builder.model.teaching.lesson import Part
from builder.read.teaching.lessons import read_lesson
from builder.rules.over_heat import heat_said
from tests.making import sure
from tests.model.test_lye_words import STUDIO

HOT = (
    "Warm the pot in a water bath until both have melted.",
    "Stand both jugs in the water bath.",
    "Melt the butter in a double boiler.",
    "Heat the pan on the hot plate.",
    "Let it cool, then simmer the herbs for ten minutes.",
    "Pour boiling water over the tea.",
)
COLD = (
    "Put one hot plate and one saucepan on each bench.",
    "Set up two water baths on the table.",
    "Stand the lye jug in warm water, and never heat it on a stove.",
    "Do not put the jar in a water bath.",
    "Switch the hot plate off.",
    "Keep the kettle out of reach.",
    "Wash up in hot water.",
)


def part_of(words: str) -> Part:
    return sure(read_lesson(f"# A class\n\n## Make it (students, 20 min)\n\n1. {words}\n", "lesson.md", {}, [])).parts[0]


@pytest.mark.parametrize("words", HOT)
def test_what_is_put_over_heat_scalds(words: str) -> None:
    assert heat_said(part_of(words), STUDIO.flame_words, ()) == (Hazard.HOT,)


@pytest.mark.parametrize("words", COLD)
def test_what_only_stands_there_or_is_forbidden_scalds_nobody(words: str) -> None:
    assert heat_said(part_of(words), STUDIO.flame_words, ()) == ()


def test_heat_that_is_known_by_its_phase_is_not_said_twice() -> None:
    assert heat_said(part_of(HOT[0]), STUDIO.flame_words, (Hazard.HOT_FAT,)) == ()
