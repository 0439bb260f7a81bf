"""What is remembered within a process changes nothing: a studio that is changed again and again, and back, is what it is when met first."""

import shutil
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from random import Random

import pytest

from builder import pipeline
from builder.compose.label_layout.label_plans import LabelPlan, labels_planned
from builder.model.remembered import forget
from builder.words.say import speaking
from tests.fuzz.bases import SOUND, Files, choose, read
from tests.fuzz.spoiling import change_text, lay_out
from tests.making import sure

STUDIOS, CHANGES = 4, 6
Result = tuple[pipeline.Outcome, list[tuple[LabelPlan, ...]]]


def _states(seed: int) -> Iterator[Files]:
    """Yield a studio, then as it is after each of some changes, of which some are taken back."""
    chance = Random(seed)
    first = choose(chance)
    files = dict(first)
    yield dict(files)
    for _ in range(CHANGES):
        name = chance.choice(sorted(files))
        if files[name] != first[name] and chance.random() < 0.5:
            files[name] = first[name]
        else:
            change_text(files, name, chance)
        yield dict(files)


def _met(files: Files, folder: Path) -> Result:
    shutil.rmtree(folder, ignore_errors=True)
    lay_out(files, folder)
    outcome = pipeline.check(folder, on=date(2027, 1, 1))
    studio = sure(outcome.studio)
    with speaking(studio.speaks.messages):
        return outcome, [labels_planned(studio, sheet) for sheet in outcome.plans]


@pytest.mark.long
def test_a_studio_that_was_seen_before_is_as_one_that_is_new(tmp_path: Path) -> None:
    states = [files for seed in range(STUDIOS) for files in _states(seed)]
    known = [_met(files, tmp_path / "studio") for files in states]
    for files, (outcome, labels) in zip(states, known, strict=True):
        forget()
        anew, anew_labels = _met(files, tmp_path / "studio")
        # As text, since a place takes no part in equality.
        assert repr(outcome.findings) == repr(anew.findings)
        assert (outcome.plans, outcome.held, outcome.studio, labels) == (anew.plans, anew.held, anew.studio, anew_labels)


def test_what_a_change_does_not_touch_is_the_same_value_as_before(tmp_path: Path) -> None:
    files = dict(read(SOUND))
    before, _ = _met(files, tmp_path / "studio")
    lesson = sorted(name for name in files if name.endswith("lesson.md"))[0]
    after, _ = _met({**files, lesson: files[lesson] + b"\nOne more word.\n"}, tmp_path / "studio")
    changed = Path(lesson).parent.name
    for one, other in zip(before.plans, after.plans, strict=True):
        assert (one is other) == (one.studio_class.key != changed)
