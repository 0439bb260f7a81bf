"""Cautions of one place in one frame, steps beneath the cautions that hold for them, and parts under the same cautions together."""

from dataclasses import replace

from builder.compose.home.joined import joined
from builder.compose.home.under_one import MOST, under_one
from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowPart, LessonFlow, ProseView, StepRun, Under

RINSE, SWALLOWED = "On skin: running water at once.", "Swallowed: no vomiting."
LYE = CautionView("danger", "DANGER", "Lye burns", "It burns.", (), (f"Dry lye: brush it off. {RINSE} {SWALLOWED}",))
RAW = CautionView("danger", "DANGER", "Fresh soap burns", "It burns too.", ("Wear gloves.",), (f"{RINSE} {SWALLOWED}",))
SCENT = CautionView("warning", "WARNING", "Scent poisons", "It poisons.", (), (SWALLOWED, "On skin: soap and water."))
BLADE = CautionView("warning", "WARNING", "The blender cuts", "It cuts.", (), ("Cut: press.",))


def part(*cautions: CautionView, steps: int = 3, words: str = "Stir.", title: str = "A part") -> FlowPart:
    return FlowPart(title, "students", "you", "5 min", "", (*cautions, StepRun(1, (words,) * steps)))


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


def test_of_how_to_keep_clear_too_nothing_is_said_twice() -> None:
    _, scent = shown(RAW, replace(SCENT, avoid=("Wear gloves.", "Cap the bottle.")))
    assert scent.avoid == ("Cap the bottle.",)
    assert scent.leans


def test_what_leaves_first_aid_to_the_box_above_it_does_not_leave_that_box() -> None:
    long = replace(RAW, what="It burns. " * MOST)
    scent = replace(SCENT, if_it_happens=(SWALLOWED,))
    first, second = joined(LessonFlow((), (part(long, scent), part(scent)))).parts
    assert under_one((first, second)) == (first, second)
    both = joined(LessonFlow((), (part(RAW, scent), part(RAW, scent)))).parts
    (found,) = under_one(both)
    assert isinstance(found, Under) and [box.name for box in found.cautions] == ["Fresh soap burns", "Scent poisons"]


def test_a_frame_of_danger_takes_in_no_lesser_signal() -> None:
    milder = CautionView("warning", "WARNING", "It splashes", "It splashes.", (), (RINSE,))
    assert [caution.name for caution in shown(RAW, milder)] == ["Fresh soap burns", "It splashes"]


def test_a_caution_holds_to_the_last_step_of_its_part() -> None:
    cold, hot, after = StepRun(1, ("Weigh.",)), StepRun(2, ("Heat.",)), ProseView("<p>Let it cool.</p>")
    whole = FlowPart("A part", "students", "you", "5 min", "", (cold, LYE, RAW, hot, SCENT, StepRun(3, ("Drip.",)), after))
    assert whole.beneath == (cold, Under((LYE, RAW), (hot, Under((SCENT,), (StepRun(3, ("Drip.",)),)))), after)


def test_neighbours_under_the_same_cautions_stand_together_and_say_them_once() -> None:
    (found,) = under_one((part(RAW, title="First"), part(RAW, SCENT, title="Second")))
    assert isinstance(found, Under) and found.cautions == (RAW,)
    first, second = found.blocks
    assert isinstance(first, FlowPart) and isinstance(second, FlowPart)
    assert [block.is_said for block in first.blocks if isinstance(block, CautionView)] == [True]
    assert [block.is_said for block in second.blocks if isinstance(block, CautionView)] == [True, False]


def test_among_these_such_as_share_more_stand_together_again() -> None:
    (found,) = under_one((part(RAW, BLADE), part(RAW, BLADE, SCENT), part(RAW)))
    assert isinstance(found, Under) and found.cautions == (RAW,)
    inner, last = found.blocks
    assert isinstance(inner, Under) and inner.cautions == (BLADE,) and len(inner.blocks) == 2
    assert isinstance(last, FlowPart)


def test_parts_without_a_caution_in_common_stand_apart() -> None:
    parts = (part(RAW), part(SCENT), part(), part())
    assert under_one(parts) == parts


def test_what_stands_after_a_step_or_is_long_is_not_shared() -> None:
    late = FlowPart("A part", "students", "you", "5 min", "", (StepRun(1, ("Stir.",)), RAW, StepRun(2, ("Pour.",))))
    long = CautionView("danger", "DANGER", "Fresh soap burns", "It burns. " * MOST, (), ())
    assert under_one((late, part(RAW))) == (late, part(RAW))
    assert under_one((part(long), part(RAW))) == (part(long), part(RAW))
