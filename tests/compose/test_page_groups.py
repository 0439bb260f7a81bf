"""Cautions of one place in one frame, and parts of one danger on one page."""

from dataclasses import replace

from builder.compose.home.divided import divided
from builder.compose.home.heights import PAGE, lines
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
    long = part(RAW, steps=13, words="Stir the soap with the spatula until it looks like thin cream. " * 2)
    groups = page_groups((part(RAW), long))
    assert len(groups) == 2
    assert not any(block.when_apart for block in groups[1][0].blocks if isinstance(block, CautionView))


def test_a_part_can_run_on_where_something_stands_before_its_first_caution_or_where_it_has_none() -> None:
    steps = StepRun(1, ("Weigh.", "Stir."))
    assert not can_run_on(part(RAW, SCENT)) and not can_run_on(FlowPart("A part", "students", "you", "5 min", "", (SCENT,)))
    assert can_run_on(FlowPart("A part", "students", "you", "5 min", "", (steps, SCENT, StepRun(3, ("Pour.",)))))
    assert can_run_on(FlowPart("A part", "students", "you", "5 min", "", (steps,)))


BRIEF = CautionView("danger", "DANGER", "Fresh soap burns", "It burns.", (), ("On skin: water.",))
RAW_IN_FULL = replace(RAW, shorter=BRIEF)
LINE = "Stir the soap with the spatula until it looks like thin cream, and go on."


def names(piece: FlowPart) -> list[str]:
    return [name for block in piece.blocks if isinstance(block, CautionView) for name in block.names]


def steps(piece: FlowPart) -> list[int]:
    return [number for block in piece.blocks if isinstance(block, StepRun) for number in range(block.start, block.start + len(block.html))]


def test_what_no_page_holds_is_divided_and_each_piece_says_the_cautions_that_it_goes_on_under() -> None:
    whole = FlowPart("A part", "students", "you", "5 min", "", (RAW_IN_FULL, StepRun(1, (LINE,) * 14), SCENT, StepRun(15, (LINE,) * 16)))
    first, second = divided(whole)
    assert (first.continues, second.continues) == (False, True)
    assert names(first) == ["Fresh soap burns"] and steps(first) == list(range(1, 15))
    assert second.blocks[0] == BRIEF and names(second) == ["Fresh soap burns", "Scent poisons"] and steps(second) == list(range(15, 31))


def test_a_run_of_steps_under_one_caution_is_divided_between_steps_and_nothing_is_lost() -> None:
    pieces = divided(FlowPart("A part", "students", "you", "5 min", "", (RAW_IN_FULL, StepRun(1, (LINE,) * 70))))
    assert len(pieces) > 2 and [number for piece in pieces for number in steps(piece)] == list(range(1, 71))
    assert all(names(piece) == ["Fresh soap burns"] and steps(piece) for piece in pieces)
    assert all(lines(piece) <= PAGE for piece in pieces)


def test_what_a_page_holds_stays_whole() -> None:
    whole = part(RAW_IN_FULL, SCENT)
    assert divided(whole) == (whole,)


def test_a_part_that_is_hardly_too_long_is_tried_whole_with_its_cautions_said_once() -> None:
    whole = FlowPart("A part", "students", "you", "5 min", "", (RAW_IN_FULL, StepRun(1, (LINE,) * 12), SCENT, StepRun(13, (LINE,) * 8)))
    assert PAGE < lines(whole) < PAGE + 5
    ((_, second),) = page_groups([whole])
    assert second.continues and [block.when_apart for block in second.blocks if isinstance(block, CautionView)] == [True, False]
