"""What the report on sheets says of steps that order much at once, of the longest step, and of parts with many cautions."""

from pathlib import Path

from builder.compose.for_staff.sheet_text import said_on
from builder.compose.for_staff.steps_report import step_lines, steps_by_name
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.compose.test_plain_language import sheet
from tests.composing import composed

MUCH = "4. Fill {portion} into the jar, wipe its rim, close it and put the jar on the tray.\n"
LESSON = FILES["classes/first/lesson.md"].replace("4. Fill {portion} into the jar.\n", MUCH)
SAID = '<p class="in-full">It burns. Wait.</p><p class="in-few-words">It burns.</p>'
CAUTION = f'<div class="caution is-warning"><p class="signal">WARNING Hot</p>{SAID}</div>'


def part(cautions: int, letter: str) -> str:
    step = f'<ol class="steps"><li><b class="step">{letter}1</b> Wait.</li></ol>'
    return f'<section class="part">{CAUTION * cautions}{step}</section>'


def test_a_step_of_many_orders_is_named_with_its_letter_and_its_line(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path, classes__first__lesson_md=LESSON))
    steps = steps_by_name(edition.studio.classes["first"])
    (name,) = (name for name, step in steps.items() if len(step.sentences) == 1 and "rim" in step.sentences[0].words)
    line = 1 + LESSON[: LESSON.index(MUCH)].count("\n")
    for kind in ("teacher's sheet", "steps at the bench", "take-home page"):
        said = [list(step_lines(said_on(made.html), steps, in_english=True)) for made in composed(kind, edition)]
        told = {one for lines in said for one in lines if "orders" in one}
        assert told == {f"over 2 orders in a step: 4 in {name} (classes/first/lesson.md:{line}): fill, wipe, close, put"}
        assert f"longest step: 16 words, in {name} (classes/first/lesson.md:{line})" in {lines[0] for lines in said}


def test_a_step_of_two_orders_is_not_named() -> None:
    assert list(step_lines(said_on(sheet("Stir it, and pour it.")), {}, in_english=True)) == ["longest step: 5 words, in A1"]


def test_a_part_with_more_than_three_cautions_is_named_and_one_with_three_is_not() -> None:
    html = CAUTION * 4 + part(3, "A") + part(4, "B") + part(0, "C")
    assert list(step_lines(said_on(html), {}, in_english=True))[1:] == ["over 3 cautions in a part: 4 in B"]


def test_a_caution_that_is_there_in_full_and_in_few_words_is_read_once() -> None:
    assert [one.text for one in said_on(CAUTION)] == ["It burns.", "Wait."]


def test_orders_are_counted_in_english_alone(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path, classes__first__lesson_md=LESSON))
    steps = steps_by_name(edition.studio.classes["first"])
    (made, *_) = composed("steps at the bench", edition)
    assert not any("orders" in line for line in step_lines(said_on(made.html), steps, in_english=False))
