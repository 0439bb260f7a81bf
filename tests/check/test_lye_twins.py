"""Sound soaps that the rules on lye leave alone: the failing studios of `findings/`, mended, and usual recipes beside them."""

from pathlib import Path

import pytest

from tests.test_findings import FINDINGS, check, lay_out

TWINS = {
    "lye-left-by-wax": {"olive oil: 58 %": "olive oil: 68 %", "beeswax: 12 %": "beeswax: 2 %", "superfat: 4 %": "superfat: 8 %"},
    "lye-range-below-zero--wax": {
        "olive oil: 62 %": "olive oil: 68 %",
        "jojoba oil: 8 %": "jojoba oil: 2 %",
        "superfat: 6 %": "superfat: 8 %",
    },
    "wax-may-leave-lye": {"olive oil: 55 %": "olive oil: 67 %", "beeswax: 15 %": "beeswax: 3 %"},
    # All of the superfat is held back until after the cook, as is usual in hot process.
    "lye-left-during-the-cook": {
        "olive oil: 60 %": "olive oil: 63 %",
        "shea butter: 10 %": "shea butter: 7 %",
        "superfat: 6 %": "superfat: 8 %",
    },
    "fats-all-late": {"    after the cook: yes\n": ""},
    "fats-all-waxes": {"beeswax: 70 %": "beeswax: 3 %", "jojoba oil: 30 %": "olive oil: 97 %", "superfat: 8 %": "superfat: 10 %"},
    "alkali-unusual": {"alkali: potassium hydroxide": "alkali: {sodium hydroxide: 60 %, potassium hydroxide: 40 %}"},
    "alkali-assumed": {"lye: {": "lye: {alkali: sodium hydroxide, "},
    "lye-stated-twice": {"superfat: 5 %, ": ""},
    "lye-stated-twice--ready-mixed": {"ready-mixed: 50 %, ": ""},
    "lye-stated-twice--two-alkalis": {"alkali: sodium hydroxide, ": "", "4 oz": "3.8 oz"},
    "lye-weight-without-weights": {"percent of oils": "weights", "70 %": "350 g", "30 %": "150 g"},
    "lye-weight-without-weights--water": {"percent of oils": "weights", "70 %": "350 g", "30 %": "150 g"},
    "superfat-unusual": {"4.5 g": "4.5 oz", "9 g": "12 oz"},
    "superfat-unusual--asked": {"30 %\n  water": "20 %\n  water"},
    "lye-too-much--by-weight": {"5.5 oz": "4.5 oz"},
    "lye-range-below-zero--by-weight": {"5.1 oz": "4.7 oz"},
    "lye-water-unusual--soft-soap": {"12 %": "20 %"},
}


@pytest.mark.parametrize("case", TWINS)
def test_the_mended_twin_is_silent(case: str, tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(FINDINGS / case, studio)
    path = studio / "recipes" / "plain-bar.yaml"
    text = path.read_text(encoding="utf-8")
    for old, new in TWINS[case].items():
        assert old in text
        text = text.replace(old, new)
    path.write_text(text, encoding="utf-8")
    for lesson in studio.glob("classes/one-bar/lesson.md"):
        # The lesson names the fats of the first recipe; what is mended may hold others.
        lesson.write_text(
            lesson.read_text(encoding="utf-8").split("1. Weigh")[0] + "1. Weigh the fats.\n2. Stir the lye into the cold water.\n",
            encoding="utf-8",
        )
    assert check(studio)[2] == ""


@pytest.mark.parametrize(
    "old",
    [
        "{name: kitchen scale, reads to: 1 g, up to: 5 kg}",
        "{name: kitchen scale, reads to: 0.1 g, up to: 2 kg}",
        "{name: kitchen scale, reads to: 1 g, up to: 5 kg, accurate to: 2 g}",
    ],
)
def test_usual_scales_at_home_beside_a_fine_one_are_fine_enough(old: str, tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(None, studio)
    path = studio / "studio.yaml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("{name: kitchen scale, reads to: 1 g, up to: 5 kg}", old), encoding="utf-8")
    assert check(studio)[2] == ""
