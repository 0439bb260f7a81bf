"""A class that begins from a recipe of one's own has a lesson that can be done: what is hard is melted, each alkali goes into the water.

That cocoa butter and waxes are solid in a room and have to be melted before they can be stirred in is common practice, no source.
"""

from pathlib import Path

import pytest

from builder import cli

SHAVING = "ingredient;weight (g)\nstearic acid;500,0\ncoconut oil;250,0\ncastor oil;250,0\nKOH;150,0\nNaOH;45,0\nwater;450,0\n"
SCRUB = "ingredient,weight (oz)\ncocoa butter,6\ncoconut oil,3\nemulsifying wax,3\nwhite sugar,17.4\nvitamin E,0.3\n"


def begin(folder: Path, kind: str, table: str, product: str) -> str:
    (folder / "table.csv").write_text(table, encoding="utf-8")
    studio = folder / "studio"
    assert cli.main(["start", str(studio), "--plain", "--product", kind]) == 0
    cli.main(["add", "recipe", "Ours", "--from", str(folder / "table.csv"), "--product", product, "--studio", str(studio)])
    assert cli.main(["add", "class", "Made here", "--recipe", "ours", "--studio", str(studio)]) == 0
    return (studio / "classes" / "made-here" / "lesson.md").read_text(encoding="utf-8")


def test_both_alkalis_go_into_the_water(tmp_path: Path) -> None:
    lesson = begin(tmp_path, "balm", SHAVING, "hot-process soap")
    assert "Weigh {potassium hydroxide} of potassium hydroxide and {sodium hydroxide} of sodium hydroxide into a dry cup." in lesson
    assert "Pour the potassium hydroxide and sodium hydroxide into the water" in lesson


def test_hard_fats_are_melted_before_the_rest_where_the_usual_lesson_warms_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lesson = begin(tmp_path, "balm", SCRUB, "scrub")
    steps = [line.partition(". ")[2] for line in lesson.splitlines() if line[:1].isdigit()]
    assert steps[:6] == [
        "Weigh {cocoa butter} of cocoa butter, {coconut oil} of coconut oil and {emulsifying wax} of emulsifying wax into a heatproof jug.",
        "Stand the jug in hot water and stir until all is melted. Let it cool until you can hold the jug.",
        "Weigh {white sugar} of white sugar into the bowl.",
        "Pour what is melted to it, and stir until it is even.",
        "Weigh {vitamin E} of vitamin E into a cup, in gloves and goggles.",
        "Stir the cup until it is even.",
    ]
    assert "{caution: hot-fat}" in lesson
    told = capsys.readouterr()
    assert "recipes/first-balm.yaml" not in told.err  # What was there before is not told again.


def test_a_liquid_recipe_is_not_warmed(tmp_path: Path) -> None:
    lesson = begin(tmp_path, "balm", "ingredient,weight (g)\nwhite sugar,200\nsunflower oil,90\nvitamin E,3\n", "scrub")
    assert "melted" not in lesson and "hot-fat" not in lesson
