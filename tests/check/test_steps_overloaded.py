"""A step that orders five different things is found, one that orders four is not, and none is in lessons of usual teachers."""

from pathlib import Path

import pytest

from builder.check.teaching.step_overloaded import find_overloaded_steps
from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.studio import Studio
from builder.model.teaching.prose import Sentence
from builder.read.studios import read_studio
from builder.rules.hands.actions import may_be_over
from tests.studios import example_studio
from tests.test_findings import lay_out

FIVE = "Take both jugs out of the bath, dry them, pour the oil into the water, blend for two minutes, and add everything else."
FOUR = FIVE.replace("dry them, ", "")


def found(studio: Studio) -> list[Finding]:
    return [one for one in find_overloaded_steps(studio) if isinstance(one, Finding)]


@pytest.mark.parametrize(
    ("step", "count"),
    [
        (FIVE, 1),
        (FOUR, 0),
        # The same thing done again is no other one, and what is forbidden or only supposed is none.
        ("Stir it, wait, stir it, wait, stir it, wait, and stir it.", 0),
        ("Pour it in, stir it, and cover it. If it splits, warm it, blend it, cool it and stir it again.", 0),
        ("Pour it in. Never lift the blender, open the window, touch the blade, fill the jar or shake the bottle.", 0),
        ("Pour it in, and lay out spoon, cup, funnel, cap and label.", 0),
    ],
)
def test_five_different_things_are_found_and_four_are_not(step: str, count: int, tmp_path: Path) -> None:
    folder = tmp_path / "studio"
    lay_out(None, folder)
    lesson = folder / "classes" / "one-lotion" / "lesson.md"
    before = "Pour one into the other, blend, and stir in everything else when it is cool."
    text = lesson.read_text(encoding="utf-8")
    assert before in text
    lesson.write_text(text.replace(before, step), encoding="utf-8")
    studio, _ = read_studio(folder, CONTENT)
    assert len(found(studio)) == count


@pytest.mark.parametrize("studio", [example_studio()[0], read_studio(Path(__file__).parents[1] / "usual" / "studio", CONTENT)[0]])
def test_usual_lessons_have_none(studio: Studio) -> None:
    assert found(studio) == []


def test_what_says_one_thing_is_soon_seen_to_say_no_more() -> None:
    assert not may_be_over([Sentence("Stir it")], 1) and not may_be_over([Sentence("Stir it"), Sentence("Pour it")], 2)
    assert may_be_over([Sentence("Stir it and pour it")], 1)
