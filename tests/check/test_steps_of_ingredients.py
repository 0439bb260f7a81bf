"""What counts as a step that puts an ingredient in, and what does not.

The sentences are as teachers write them (common practice, no source), and were sorted before they were tried. Each of them is the only
thing that a lesson says of the last ingredient of its recipe; all others stand in braces.
"""

from pathlib import Path

import pytest

from tests.test_findings import FINDINGS, check, lay_out

NAME = "ingredient-in-no-step"
FORGOTTEN_PRESERVATIVE = "1. Pour one into the other and blend. An antioxidant does not take the place of a preservative."
FORGOTTEN_OIL = "3. Pour the lye into the oils, and stir until it thickens."

PUT_IN = [
    (NAME, FORGOTTEN_PRESERVATIVE, sentence)
    for sentence in (
        "1. Pour one into the other and blend. Stir in {phenoxyethanol and ethylhexylglycerin blend} of the preservative.",
        "1. Pour one into the other and blend. Stir in the preservative when it is below 40 °C.",
        "1. Pour one into the other, and add the phenoxyethanol blend last.",
        "1. Pour one into the other. Let it cool, and only then the phenoxyethanol blend.",
        "1. Pour one into the other and blend. The preservative goes in last.",
        "1. Pour one into the other and blend. Last comes the preservative.",
        "1. Pour one into the other, stir without stopping, and weigh the preservative into the pot.",
        "1. Do not hurry. Pour one into the other, and never forget to add the preservative.",
        "1. Pour one into the other and blend. Stir in everything else when it is cool.",
        "1. Pour one into the other and blend. Add the remaining ingredients.",
        "1. Pour one into the other and blend. Add the rest when it is cool.",
        "1. Pour one into the other and blend. Go on as the take-home sheet says.",
    )
] + [
    (f"{NAME}--oil-of-a-soap", FORGOTTEN_OIL, sentence)
    for sentence in (
        "3. Pour the lye into the oils, and stir until it thickens. Add {castor oil} of castor oil.",
        "3. Add the castor oil. Pour the lye into the oils, and stir until it thickens.",
        "3. Melt the remaining oil with them. Pour the lye in, and stir until it thickens.",
    )
]
LEFT_OUT = [
    (NAME, FORGOTTEN_PRESERVATIVE, sentence)
    for sentence in (
        "1. Pour one into the other and blend. Never leave out the preservative.",
        "1. Pour one into the other and blend. Why does a lotion need a preservative?",
        "1. Pour one into the other and blend. Do not add the preservative.",
        "1. Pour one into the other and blend. Rinse the rest out of the jug.",
        "1. Set out everything that you need. Pour one into the other and blend.",
        "1. Pour one into the other and blend. Take your take-home sheet with you.",
    )
] + [
    (f"{NAME}--oil-of-a-soap", FORGOTTEN_OIL, sentence)
    for sentence in (
        "3. Sprinkle in a spoonful of the lye, then add the rest, a spoonful at a time.",
        "3. Melt the fats, and stir the oils well. Pour the lye in, and stir until it thickens.",
        "3. Pour the lye into the oils, and add the essential oils. Stir until it thickens.",
        "3. Pour the lye into the oils, and stir until it thickens. Put everything away.",
    )
]


def found(name: str, old: str, new: str, folder: Path) -> bool:
    studio = folder / "studio"
    lay_out(FINDINGS / name, studio)
    (lesson,) = (path for path in studio.rglob("lesson.md") if old in path.read_text(encoding="utf-8"))
    lesson.write_text(lesson.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    said = check(studio)[2]
    assert "mention-unknown" not in said
    return NAME in said


@pytest.mark.parametrize(("name", "old", "new"), PUT_IN, ids=[new for *_, new in PUT_IN])
def test_a_step_that_puts_it_in_is_met_in_silence(name: str, old: str, new: str, tmp_path: Path) -> None:
    assert not found(name, old, new, tmp_path)


@pytest.mark.parametrize(("name", "old", "new"), LEFT_OUT, ids=[new for *_, new in LEFT_OUT])
def test_words_that_put_nothing_in_do_not_count(name: str, old: str, new: str, tmp_path: Path) -> None:
    assert found(name, old, new, tmp_path)


@pytest.mark.parametrize(
    "steps",
    [
        "1. Weigh what the sheet of amounts asks for.\n2. Melt and blend it.",
        "1. Weigh {water} of water.\n2. Melt, blend and finish the rest of it as you have learnt.",
        "1. Weigh {water phase} of the water phase.\n2. Weigh {oil phase} of the oil phase, and blend.",
        "1. Divide {batch} between the jugs.\n2. Weigh {water} of water, {glycerin} of glycerin and {sunflower oil} of sunflower oil.",
    ],
    ids=["no braces", "few braces", "phases in braces", "the batch in braces"],
)
def test_a_lesson_in_words_of_its_own_is_not_looked_at(steps: str, tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(None, studio)
    text = f"# One lotion\n\nWe make one lotion.\n\n## Make it (together, 60 min)\n\n{steps}\n"
    (studio / "classes" / "one-lotion" / "lesson.md").write_text(text, encoding="utf-8")
    assert NAME not in check(studio)[2]
