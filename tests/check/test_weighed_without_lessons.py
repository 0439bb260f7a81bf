"""What is found of a recipe and of the studio itself does not depend on what lessons and pages say: weighing judges neither."""

from datetime import date
from pathlib import Path

import pytest

from builder import pipeline
from builder.model.finding import Finding
from builder.model.subject import Subject, WholeRecipe, WholeStudio
from builder.rules.reach import subjects_of
from tests.test_findings import CASES, lay_out

TODAY = date(2027, 1, 1)
SPEAKING = [case for case in CASES if list(case.glob("classes/*/lesson.md")) or list(case.glob("pages/*.md"))]


def found(folder: Path, lessons: bool) -> tuple[list[Finding], pipeline.Examined]:
    examined = pipeline._examine(folder, TODAY, lessons=lessons)
    about: set[Subject] = {WholeStudio(), *map(WholeRecipe, examined.studio.recipes)}
    return [one for one in examined.findings if subjects_of(one, examined.studio) & about], examined


@pytest.mark.parametrize("case", SPEAKING[::12], ids=lambda case: case.name)
def test_what_lessons_say_is_about_no_recipe(case: Path, tmp_path: Path) -> None:
    lay_out(case, tmp_path / "studio")
    (narrow, without), (whole, with_lessons) = (found(tmp_path / "studio", lessons) for lessons in (False, True))
    assert [(one.name, one.place, one.wrong, one.remedy, one.accepted) for one in narrow] == [
        (one.name, one.place, one.wrong, one.remedy, one.accepted) for one in whole
    ]
    assert without.unsound.holds(WholeStudio()) == with_lessons.unsound.holds(WholeStudio())


def test_some_cases_differ_in_what_lessons_say(tmp_path: Path) -> None:
    lay_out(next(case for case in CASES if case.name == "flame-near-vapour"), tmp_path / "studio")
    names = [{one.name for one in found(tmp_path / "studio", lessons)[1].findings} for lessons in (False, True)]
    assert "flame-near-vapour" not in names[0]
    assert "flame-near-vapour" in names[1]
