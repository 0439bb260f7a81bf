"""The sound twin of each finding on what a lesson says of heat, volumes and counts is silent."""

from pathlib import Path

import pytest

from tests.test_findings import FINDINGS, check, lay_out

TWINS = {
    # By hand: lye a little over 0.42 of the oils by weight; at least (0.426 * 2.7 * 60 + 2.24 * 45) / (0.426 * 2.7 + 2.24) = 50.1 °C, with
    # 3 K for two thermometers. The worked value with 3.5 and 2.0 J/(g K) is 51.4 °C.
    "mixed-too-warm--lye-hotter": [("at 46 °C.", "at 48 °C."), ("at 46 °C.", "at 51 °C.")],
    "mixed-too-warm": [
        ("The pot is now at 30 °C.", "The pot is now at about 40 °C."),
        ("The pot is now at 30 °C.", "The pot is now at 50 °C."),  # The soap may have warmed itself.
        ("The pot is now at 30 °C.", "Let it cool to 30 °C."),
        ("The pot is now at 30 °C.", "Wait. The pot is then at 30 °C."),
        ("both at 40 °C / 104 °F", "both below 40 °C"),
        ("both at 40 °C / 104 °F", "both at 31 °C"),
    ],
    "flame-near-vapour": [
        ("over the gas ring", "on the hot plate"),
        ("over the gas ring", "on the hot plate, away from any open flame,"),
        ("over the gas ring until the last piece of wax has gone", "on the hot plate until all is lighter and clear"),
        ("over the gas ring", "on the hot plate, never over a gas ring,"),
        ("Let it cool to 55 °C.", "Turn off the gas ring. Let it cool to 55 °C."),
        ("Stir in {scent} of the scent.", "Turn off the gas ring, and stir in {scent} of the scent."),
        ("Let it cool to 55 °C.", "Let it cool to 40 °C."),
        ("Stir in {scent} of the scent.", "Stir in {coconut oil} of the oil."),
    ],
    "flame-near-vapour--alcohol-in-words": [
        ("over the gas ring", "on the hot plate"),
        ("Wipe the jars with rubbing alcohol.", "Turn off the gas ring. Wipe the jars with rubbing alcohol."),
        ("Wipe the jars with rubbing alcohol.", "Wipe the jars with hot water."),
        ("Wipe the jars with rubbing alcohol.", "Never wipe the jars with rubbing alcohol."),
        ("3. Wipe the jars with rubbing alcohol.\n", "\n## Wipe (together, 5 min)\n\n1. Wipe the jars with rubbing alcohol.\n"),
    ],
    "hotter-than-boiling": [
        ("at 165 °C.", "at 165 °F."),
        ("at 165 °C.", "at 75 °C."),
        ("at 165 °C.", "at 100 °C."),
        ("Melt the wax in the oil at 165 °C.", "Never heat the oil to 165 °C."),
        ("Melt the wax in the oil at 165 °C.", "Warm the jug in the oven at 110 °C."),
        ("Melt the wax in the oil at 165 °C.", "The oil smokes at 165 °C."),
    ],
    "mixed-too-cool": [
        ("The pot is now at 40 °C.", "Warm the pot to 40 °C."),
        ("The pot is now at 40 °C.", "The pot is now at about 25 °C."),
        ("and melt it.", "and heat it to 85 °C."),
    ],
    "cooled-too-soon": [
        ("Let it cool to 35 °C.", "Stand the jug in cold water, and let it cool to 35 °C."),
        ("Let it cool to 35 °C.", "Stand the jug in cold water.\n3. Let it cool to 35 °C."),
        ("Let it cool to 35 °C.", "Let it cool in the sink to 35 °C."),
        ("Let it cool to 35 °C.", "Let it cool."),
        ("(teacher, 5 min)", "(teacher, 45 min)"),
    ],
    "cooled-too-soon--emulsion": [
        ("Pour one into the other and blend.", "Pour one into the other and blend, with the jug in a basin of cold water."),
        ("Mix and fill (together, 30 min)", "Mix and fill (together, 120 min)"),
    ],
    "lye-named-dry": [
        ("and {sodium hydroxide} of sodium hydroxide.", "and the sodium hydroxide by the check list."),
        ("and {sodium hydroxide} of sodium hydroxide.", "and the sodium hydroxide. Fill {lye} of the lye solution into a bottle."),
    ],
    "lye-named-dry--by-its-words": [
        ("{lye} of dry sodium hydroxide.", "the sodium hydroxide. Fill {lye} of sodium hydroxide solution into a bottle."),
        ("{lye} of dry sodium hydroxide.", "the sodium hydroxide. Fill {lye} of the lye into a bottle."),
    ],
    "lye-not-made-at-home": [
        ("2. Pour the lye into the oils.", "2. Dissolve the sodium hydroxide, and pour the lye into the oils."),
        ("2. Pour the lye into the oils.", "2. Add the lye to the water.\n3. Pour it into the oils."),
        ("60 min)\n\n1. Weigh {olive oil}", "60 min, class only)\n\n1. Weigh {olive oil}"),
        ("(ahead, 40 min, class only)\n\n1. Weigh the water", "(ahead, 40 min)\n\n1. Weigh the water"),
    ],
    "choice-in-no-step": [
        ("when it is cool.", "when it is cool, and at most {scent} of your scent."),
        ("when it is cool.", "when it is cool, and {lavender essential oil} of it."),
        ("when it is cool.", "when it is cool, and a few drops of lavender."),
        ("when it is cool.", "when it is cool, and everything else."),
    ],
    "typed-fact-differs": [
        ("Fill 12 bottles in all.", "Fill {each student} bottles in all."),
        ("(together, 30 min)\n\n1. Pour", "(together, 30 min, class only)\n\n1. Pour"),
    ],
}


@pytest.mark.parametrize(("name", "old", "new"), [(name, *pair) for name, pairs in TWINS.items() for pair in pairs])
def test_the_mended_lesson_is_silent(name: str, old: str, new: str, tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(FINDINGS / name, studio)
    (lesson,) = (path for path in studio.rglob("lesson.md") if old in path.read_text(encoding="utf-8"))
    lesson.write_text(lesson.read_text(encoding="utf-8").replace(old, new, 1), encoding="utf-8")
    for recipe in (studio / "recipes").iterdir():
        recipe.write_text(recipe.read_text(encoding="utf-8").replace("about 0.5 L", "{volume}"), encoding="utf-8")
    assert name.split("--")[0] not in check(studio)[2]


def test_what_only_words_can_say_stops_no_lesson_in_another_language(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(FINDINGS / "lye-not-made-at-home", studio)
    assert "lye-not-made-at-home" in check(studio)[2]
    (lesson,) = studio.rglob("one-bar/lesson.md")
    steps = lesson.read_text(encoding="utf-8").replace(
        "Pour the lye into the oils", "Dissoudre la soude dans l'eau, verser dans les huiles"
    )
    lesson.write_text(steps, encoding="utf-8")
    with (studio / "studio.yaml").open("a", encoding="utf-8") as settings:
        settings.write("language: French\n")
    assert "lye-not-made-at-home" not in check(studio)[2]


def test_cold_water_after_the_lye_has_been_used_has_cooled_nothing(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(FINDINGS / "cooled-too-soon", studio)
    (lesson,) = (path for path in studio.rglob("lesson.md") if "Let it cool to 35" in path.read_text(encoding="utf-8"))
    with lesson.open("a", encoding="utf-8") as file:
        file.write("\n## Wash up (teacher, 10 min)\n\n1. Stand the jugs in cold water.\n")
    assert "20 minutes. So much of it takes 27 minutes in the open at the very least" in check(studio)[2]


@pytest.mark.parametrize("tool", ["0.9 L steel pot", "steel pot of 0.9 L", "0.8 L mould", "two pots of 0.8 L", "0.8 L of water in a pot"])
def test_a_pot_that_holds_the_batch_of_the_class_is_silent(tool: str, tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(FINDINGS / "typed-fact-differs--pot-of-the-class", studio)
    assert "typed-fact-differs" in check(studio)[2]
    (recipe,) = (path for path in studio.rglob("plain-bar.yaml"))
    recipe.write_text(recipe.read_text(encoding="utf-8").replace("0.8 L steel pot", tool), encoding="utf-8")
    assert "typed-fact-differs" not in check(studio)[2]
