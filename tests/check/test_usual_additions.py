"""What many bars of soap have in them is met in silence where it goes in as it is usually done (common practice, no source)."""

from pathlib import Path

import pytest

from tests.test_findings import FINDINGS, check, lay_out

MILK = FINDINGS / "milk-in-lye"
STEP = "1. Weigh, add {lye} of lye, mix, and fill {portion} into each cavity."
FROZEN = "Freeze the milk to slush. Stand the jug in a basin of ice. Sprinkle the lye onto it, a spoonful at a time."


def names(studio: Path) -> set[str]:
    return {
        line.split(": ")[1].split()[0]
        for line in check(studio)[2].splitlines()
        if line.count(": ") == 1 and line.endswith((" (caution)", " (stop)"))
    }


def changed(folder: Path, case: Path, file: str, old: str, new: str) -> Path:
    studio = folder / "studio"
    lay_out(case, studio)
    path = studio / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")
    return studio


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (FROZEN, set()),
        (FROZEN.replace("Freeze the milk to slush", "Take the frozen milk out"), set()),
        ("Stand the jug in a basin of ice.", {"milk-in-lye"}),
        ("Freeze the milk to slush.", {"milk-in-lye"}),
        (FROZEN.replace("Freeze the milk", "Do not freeze the milk"), {"milk-in-lye"}),
        ("Pour the milk in.", {"milk-in-lye"}),
        ("The milk is frozen, not liquid; the jug stands in ice.", set()),
        ("Never pour liquid milk: use frozen cubes. The jug stands in ice, never in warm water.", set()),
        ("Do not thaw the milk: it goes in frozen, with the jug in ice.", set()),
        ("So that the milk does not scorch, freeze it to slush and stand the jug in ice.", set()),
        ("After freezing the milk to cubes, sprinkle the lye over them. The jug stands in a bowl of ice.", set()),
        ("As the frozen milk thaws, sprinkle in more lye. Keep the jug in ice.", set()),
        ("Let the frozen milk thaw to slush. Stand the jug in ice.", set()),
        ("Stir until the frozen milk has thawed, with the jug in ice.", set()),
        ("Don't rush: the milk is slushy, and the jug stands in ice.", set()),
        ("The milk need not be frozen. Stand the jug in ice.", {"milk-in-lye"}),
        ("If the milk is frozen, let it thaw. Stand the jug in ice.", {"milk-in-lye"}),
        ("Thaw the frozen milk first, and stand the jug in ice.", {"milk-in-lye"}),
        ("Freeze the milk. Stir with no ice around the jug.", {"milk-in-lye"}),
        ("Is the milk frozen? Stand the jug in ice.", {"milk-in-lye"}),
        ("If the milk is not frozen yet, wait. Stand the jug in ice.", set()),
        ("Is the milk still soft? Put it back. Stand the jug in ice.", {"milk-in-lye"}),
        ("If the milk is still liquid, put it back into the freezer. Stand the jug in ice.", set()),
        ("Milk that is not frozen is not used. Stand the jug in ice.", set()),
        ("If the milk is not frozen yet, go on. Stand the jug in ice.", {"milk-in-lye"}),
        ("If the milk is not frozen yet, do not wait. Stand the jug in ice.", {"milk-in-lye"}),
        ("Use fresh milk instead of frozen milk. Stand the jug in ice.", {"milk-in-lye"}),
    ],
)
def test_milk_that_is_frozen_first_may_go_into_the_lye(said: str, found: set[str], tmp_path: Path) -> None:
    studio = changed(tmp_path, MILK, "classes/one-bar/lesson.md", STEP, f"{STEP}\n\n{said}")
    assert names(studio) & {"milk-in-lye"} == found


def test_the_sheet_to_take_home_has_to_say_so_too(tmp_path: Path) -> None:
    studio = changed(tmp_path, MILK, "classes/one-bar/lesson.md", STEP, f"{STEP}\n\n## Freeze (ahead, 10 min, class only)\n\n{FROZEN}")
    assert "milk-in-lye" in names(studio)


# Coffee grounds, cocoa, oats, or a smell of oranges: a bar of soap is known for one.
@pytest.mark.parametrize("what", ["ground coffee", "cocoa powder", "colloidal oatmeal", "honey", "sweet orange essential oil"])
def test_a_bar_of_soap_is_no_look_alike_of_food_by_what_goes_into_it(what: str, tmp_path: Path) -> None:
    phase = f"coconut oil: 30 %\n  - name: at trace\n    ingredients: {{{what}: 1 %}}"
    studio = changed(tmp_path, FINDINGS / "_sound", "recipes/plain-bar.yaml", "coconut oil: 30 %", phase)
    assert "food-look-alike" not in names(studio)


# The same in a scrub that is scooped out of a jar, or in soap that was melted and poured with children, is told of.
def test_a_scrub_with_coffee_is_one(tmp_path: Path) -> None:
    scrub = FINDINGS / "food-look-alike"
    recipe = next((scrub / "recipes").iterdir()).name
    studio = changed(tmp_path, scrub, f"recipes/{recipe}", "white sugar", "ground coffee")
    assert "food-look-alike" in names(studio)


def test_liquid_milk_in_the_lye_is_accepted_in_the_recipe(tmp_path: Path) -> None:
    reason = "accepts: {milk-in-lye: We have made this bar for years and watch the jug.}\nfills:"
    studio = changed(tmp_path, MILK, "recipes/plain-bar.yaml", "fills:", reason)
    assert "milk-in-lye (accepted)" in check(studio)[2]
