"""What the run by the clock says is weighed in a part: pots that take the same are counted together, and the teacher's own is named."""

from datetime import date

import pytest

from builder.compose.teaching.weighing_words import weighed_in
from tests.published import edition


def said(class_key: str, day: str, title: str) -> list[str]:
    (plan,) = (
        one for one in edition().plans if one.studio_class.key == class_key and one.date and one.date.on.date() == date.fromisoformat(day)
    )
    (part,) = (timed.part for timed in plan.timeline if timed.part.title == title)
    return [line.replace("\u00a0", " ") for line in weighed_in(plan, part)]


def test_a_teachers_pot_of_the_same_size_is_one_time_more() -> None:
    """Nine students and the teacher each mix one batch: ten weighings, and no amount is told twice."""
    assert said("salts-and-scrub-party", "2027-01-16", "Mix the salts") == [
        "10 times: Epsom salt 205.1 g, Sea salt 61.21 g, Sodium bicarbonate 30.61 g"
    ]


def test_a_teachers_pot_of_another_size_is_named() -> None:
    """Two groups of four fill three bags each, 40 g a bag; the teacher's pot is for two bags, a sixth of theirs."""
    groups, teachers = said("bath-tea-and-lip-balm", "2027-02-06", "Blend the tea")
    assert groups.startswith("2 times: Oat flour 144.0 g, ")
    assert teachers.startswith("For the teacher's pot: Oat flour 24.00 g, ")


@pytest.mark.parametrize("title", ["Make the lye", "Weigh and melt the oils"])
def test_one_pot_is_not_counted(title: str) -> None:
    (line,) = said("first-cold-process-bar", "2027-01-30", title)
    assert "times" not in line and "pot" not in line
