"""Steps that stir a preservative into what is told to be hot are found, and usual ways to wait, to weigh and to cool stay silent.

Each was written before it was tried. That a broad preservative is added below 40 to 45 °C is common practice, no source; its card says so.
"""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from builder import pipeline
from builder.check.formula.stirred_in_hot import find_what_is_stirred_in_too_hot
from tests.check.test_at_the_edge import levels
from tests.making import figures, sure
from tests.test_findings import FINDINGS, check, lay_out

CASE = FINDINGS / "stirred-in-too-hot"
STEPS = "1. Pour one into the other at 75 °C and blend.\n2. Stir in the preservative and everything else.\n"
ELSE = "\n3. Stir in everything else.\n"
FOUND = [
    "1. Pour one into the other at 75 °C, blend, and stir in the preservative.",
    "1. Blend both at 70 °C.\n2. Add {phenoxyethanol and ethylhexylglycerin blend} of the preservative.",
    "1. Blend both.\n2. Add the preservative at 75 °C.",
    "1. Heat the water with the preservative to 75 °C.",
    "1. Heat both to 165 °F, and blend.\n2. The preservative goes in next.",
    "1. Blend both at 70 °C.\n2. You can add the preservative now.",
    "1. Blend both at 75 °C.\n2. Let it cool to 55 °C.\n3. Add the phenoxyethanol.",
    "1. Blend both at 75 °C.\n2. Don't wait, add the preservative.",
]
SILENT = [
    "1. Blend both at 75 °C.\n2. Let it cool below 40 °C.\n3. Stir in the preservative.",
    "1. Blend both at 75 °C, let it cool to 40 °C, and stir in the preservative.",
    "1. Blend both at 75 °C.\n2. Stir until it is cool, and add the preservative.",
    "1. Blend both at 75 °C.\n2. Wait until the jug is lukewarm.\n3. Add the preservative.",
    "1. Blend both at 75 °C.\n2. When it has cooled, add the preservative.",
    "1. Heat both to 75 °C, and weigh the preservative meanwhile.\n2. Blend and cool them.\n3. Stir it in.",
    "1. Blend both at 75 °C.\n2. Weigh {phenoxyethanol and ethylhexylglycerin blend} of the preservative into a small cup.",
    "1. Blend both at 75 °C.\n2. Add the preservative below 45 °C.",
    "1. Blend both at 75 °C.\n2. Never add the preservative so hot.",
    "1. Blend both at 75 °C.\n2. At 104 °F add the preservative.",
    "1. Blend both at 75 °C.\n2. Do not add the preservative above 45 °C.",
    "1. Blend both at 75 °C.\n2. Stir in the preservative once it is hand-warm.",
    "1. Blend both at 75 °C.\n2. Bring the cup with the preservative to the bench.",
    "1. Blend both at 75 °C.\n2. Read out what the preservative does.",
    "1. Blend both.\n2. Stir in the preservative.",
    "1. Blend both at 75 °C.\n\n## Preserve (together, 5 min, cooled)\n\n1. Stir in the preservative.",
    "1. Blend both at 75 °C.\n2. Put on gloves before the preservative is opened.",
    "1. Blend both at 75 °C.\n2. Chill the jug in ice until you can hold it.\n3. Add the preservative.",
    "1. Blend both at 75 °C.\n2. Wait for half an hour.\n3. Add the preservative.",
    "1. Blend both at 75 °C.\n2. Keep the preservative out until 40 °C.",
    "1. Set the water bath to 80 °C.\n2. Stir in the preservative at 40 °C.",
]


def _found(steps: str, folder: Path) -> bool:
    studio = folder / "studio"
    lay_out(CASE, studio)
    lesson = studio / "classes/one-lotion/lesson.md"
    text = lesson.read_text(encoding="utf-8")
    assert STEPS in text
    lesson.write_text(text.replace(STEPS, f"{steps}\n"), encoding="utf-8")
    return "stirred-in-too-hot" in check(studio)[2]


@pytest.mark.parametrize("steps", FOUND)
def test_a_preservative_in_what_is_told_to_be_hot_is_found(steps: str, tmp_path: Path) -> None:
    assert _found(steps, tmp_path)


@pytest.mark.parametrize("steps", SILENT)
def test_what_has_cooled_or_is_only_weighed_is_silent(steps: str, tmp_path: Path) -> None:
    assert not _found(steps, tmp_path)


# A scent is put in warm as a rule; above what any fat needs, and above its flash point (lavender oil 70 °C and more), it is told.
@pytest.mark.parametrize(("degrees", "found"), [("90", True), ("75", False)])
def test_scent_in_what_is_hotter_than_fat_needs_is_found(degrees: str, *, found: bool, tmp_path: Path) -> None:
    assert _found(f"1. Pour one into the other at {degrees} °C.\n2. Stir in {{scent}} of the scent.", tmp_path) is found


# The preservative of the case is added below 40 to 45 °C, and no fat needs more than 85 °C (its card, content/constants.yaml).
@pytest.mark.parametrize(
    ("step", "found"),
    [
        ("1. Blend both at 45 °C.\n2. Stir in the preservative.", False),
        ("1. Blend both at 46 °C.\n2. Stir in the preservative.", True),
        ("1. Pour one into the other at 85 °C.\n2. Stir in {scent} of the scent.", False),
        ("1. Pour one into the other at 86 °C.\n2. Stir in {scent} of the scent.", True),
    ],
)
def test_what_bears_so_much_and_no_more_is_told_of_above_it(step: str, *, found: bool, tmp_path: Path) -> None:
    assert _found(step, tmp_path) is found


# At its flash point the vapour burns (the definition of it).
@pytest.mark.parametrize(("flash_point", "found"), [("90", 1), ("90.1", 0)])
def test_a_scent_burns_at_its_flash_point(flash_point: str, found: int, tmp_path: Path) -> None:
    _found("1. Pour one into the other at 90 °C.\n2. Stir in {scent} of the scent.", tmp_path)
    studio = sure(pipeline.check(tmp_path / "studio", on=date(2027, 1, 1)).studio)
    shelf = {
        key: replace(one, figures={**one.figures, "flash point": figures(flash_point)}) if one.figure("flash point") else one
        for key, one in studio.ingredients.items()
    }
    assert levels(find_what_is_stirred_in_too_hot(replace(studio, ingredients=shelf))) == ["stirred-in-too-hot caution"] * found
