"""What the words of a part say of lye and raw soap in the hands of those who do it; sentences as usual lessons have them."""

from collections.abc import Set as AbstractSet

import pytest

from builder.read.teaching.lessons import read_lesson
from builder.rules.lye_words import hazards_said
from tests.making import sure
from tests.studios import sound_studio

STUDIO, _ = sound_studio()
DRY, CAUSTIC, RAW = "dry lye", "caustic", "raw soap"


def said(title: str, step: str, who: str = "students") -> set[str]:
    lesson = sure(read_lesson(f"# Soap\n\n## {title} ({who}, 20 min)\n\n1. {step}\n", "lesson.md", {}, []))
    return set(hazards_said(lesson.parts[0], STUDIO.lye_words))


@pytest.mark.parametrize(
    ("title", "step", "hazards"),
    [
        ("Mix the lye", "Follow the sheet.", {DRY, CAUSTIC}),
        ("Step two", "Sprinkle the caustic soda into the cold water.", {DRY}),
        ("Step two", "Add the drain cleaner to the water.", {DRY, CAUSTIC}),
        ("Step two", "Weigh your sodium hydroxide into a cup.", {DRY, CAUSTIC}),
        ("Step two", "Dissolve the hydroxide.", {DRY}),
        ("Step two", "Pour the lye into the oils.", {CAUSTIC}),
        ("Step two", "Take your bottle of lye solution.", {CAUSTIC}),
        ("Lye and oils together", "Stir well.", {CAUSTIC}),
        ("Step two", "Not only watch, pour the lye.", {CAUSTIC}),
        ("Step two", "Blend until you see trace.", {RAW}),
        ("Step two", "Pour the batter into your mould.", {RAW}),
        ("Step two", "Don't be afraid to pour the raw soap.", {RAW}),
    ],
)
def test_what_is_in_their_hands(title: str, step: str, hazards: AbstractSet[str]) -> None:
    assert hazards <= said(title, step)


@pytest.mark.parametrize(
    ("title", "step"),
    [
        ("Questions", "Read the lye page together."),
        ("Talk about lye", "Ask what you like."),
        ("Watch", "Watch the teacher mix the lye."),
        ("Watch", "The teacher pours the lye into the oils."),
        ("Wrap a bar", "Wrap a cured bar, which holds no lye any more."),
        ("Melt the base", "Melt the base, which is made without lye, and pour it."),
        ("Weigh the oils", "Weigh the olive oil and do not touch the lye."),
        ("Stay back", "Never touch the lye jug."),
        ("Quiz", "Why must water not go onto the lye?"),
        ("Weigh the oils", "An assistant brings the oils. The teacher has weighed the lye."),
        ("Make a scrub", "Mix the sugar with the oil and fill your jar."),
    ],
)
def test_what_is_not(title: str, step: str) -> None:
    assert said(title, step) == set()


def test_in_a_part_of_the_teacher_the_teacher_handles_it() -> None:
    assert CAUSTIC in said("Make the lye", "The teacher pours the lye into the water.", "teacher")
