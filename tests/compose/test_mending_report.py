"""What the report on sheets asks where a sheet for home does not say what to do when what is made goes wrong."""

from pathlib import Path

from builder.compose.for_staff.mending_report import mending_lines
from builder.library import CONTENT
from builder.model.studio import Studio
from builder.read.studios import read_studio
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.studios import example_studio


def asked_of(studio: Studio) -> dict[str, list[str]]:
    made = [(one, make.recipe.text) for one in studio.classes.values() for make in one.makes if make.at_home]
    return {key: list(mending_lines(studio, one, studio.recipes[key])) for one, key in made}


def test_lye_is_asked_about_until_the_steps_say_it(tmp_path: Path) -> None:
    lesson = FILES["classes/first/lesson.md"]
    silent = asked_of(read_edition(write_studio(tmp_path / "silent")).studio)
    assert silent["bar"] == ["nothing says what to do when it goes wrong: if the soap separates, stays thin, or turns thick at once"]
    pour = "5. Pour {portion} into each of {containers} moulds.\n"
    mended = lesson.replace(pour, f"{pour}\nIf it splits, blend it again.\n")
    assert mended != lesson
    said = asked_of(read_edition(write_studio(tmp_path / "said", classes__first__lesson_md=mended)).studio)
    assert said["bar"] == [] and said["salts"] == silent["salts"] == []


def test_of_the_usual_studio_those_with_lye_emulsion_or_melted_fat_are_asked_about_and_no_others() -> None:
    studio, _ = read_studio(Path(__file__).parents[1] / "usual" / "studio", CONTENT)
    asked = {key: lines[0].partition(": ")[2] for key, lines in asked_of(studio).items() if lines}
    lye, melted = "if the soap separates, stays thin, or turns thick at once", "if a skin forms, or it sets too soft or too hard"
    assert asked == {
        "plain-lip-balm": melted, "melt-bars": melted, "whipped-butter": melted, "first-lotion": "if it splits, hot or cold",
        "liquid-hand-soap": lye, "three-oil-bar": lye,
    }  # fmt: skip


def test_the_example_says_it_on_every_sheet() -> None:
    asked = asked_of(example_studio()[0])
    assert len(asked) > 8 and not any(asked.values())
