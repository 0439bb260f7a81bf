"""Cautions of one place in one frame, and parts of one danger on one page."""

from builder.compose.home.joined import joined
from builder.compose.home.page_groups import can_run_on, page_groups
from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowPart, LessonFlow, StepRun

RINSE, SWALLOWED = "On skin: running water at once.", "Swallowed: no vomiting."
LYE = CautionView("danger", "DANGER", "Lye burns", "It burns.", (), (f"Dry lye: brush it off. {RINSE} {SWALLOWED}",))
RAW = CautionView("danger", "DANGER", "Fresh soap burns", "It burns too.", ("Wear gloves.",), (f"{RINSE} {SWALLOWED}",))
SCENT = CautionView("warning", "WARNING", "Scent poisons", "It poisons.", (), (SWALLOWED, "On skin: soap and water."))


def part(*cautions: CautionView, steps: int = 3, words: str = "Stir.") -> FlowPart:
    return FlowPart("A part", "students", "you", "5 min", "", (*cautions, StepRun(1, (words,) * steps)))


def shown(*cautions: CautionView) -> list[CautionView]:
    (only,) = joined(LessonFlow((), (part(*cautions),))).parts
    return [block for block in only.blocks if isinstance(block, CautionView)]


def test_what_has_no_first_aid_of_its_own_shares_the_frame_above_it() -> None:
    (both,) = shown(LYE, RAW)
    assert both.names == ("Lye burns", "Fresh soap burns")
    assert both.also[0].avoid == ("Wear gloves.",)
    assert " ".join(both.if_it_happens) == f"Dry lye: brush it off. {RINSE} {SWALLOWED}"


def test_what_differs_is_said_and_what_stands_directly_above_is_not_said_twice() -> None:
    _, scent = shown(RAW, SCENT)
    assert scent.if_it_happens == ("On skin: soap and water.",)
    assert shown(SCENT)[0].if_it_happens == (SWALLOWED, "On skin: soap and water.")


def test_a_frame_of_danger_takes_in_no_lesser_signal() -> None:
    milder = CautionView("warning", "WARNING", "It splashes", "It splashes.", (), (RINSE,))
    assert [caution.name for caution in shown(RAW, milder)] == ["Fresh soap burns", "It splashes"]


def test_neighbours_of_one_danger_stand_together_and_say_it_once() -> None:
    ((first, second),) = page_groups((part(RAW), part(RAW, SCENT)))
    assert not any(block.when_apart for block in first.blocks if isinstance(block, CautionView))
    assert [block.when_apart for block in second.blocks if isinstance(block, CautionView)] == [True, False]


def test_parts_without_a_danger_in_common_or_too_long_for_a_page_stand_apart() -> None:
    assert len(page_groups((part(RAW), part(SCENT)))) == 2
    long = part(RAW, steps=30, words="Stir the soap with the spatula until it looks like thin cream. " * 2)
    groups = page_groups((part(RAW), long))
    assert len(groups) == 2
    assert not any(block.when_apart for block in groups[1][0].blocks if isinstance(block, CautionView))


def test_a_part_can_run_on_from_a_caution_that_stands_behind_steps() -> None:
    whole = part(RAW, SCENT)
    assert not can_run_on(whole)
    assert can_run_on(FlowPart("A part", "students", "you", "5 min", "", (*whole.blocks, SCENT, StepRun(4, ("Pour.",)))))
    assert not can_run_on(FlowPart("A part", "students", "you", "5 min", "", (SCENT,)))
