"""The parts of a lesson on the clock: minutes from the start at which each begins and ends."""

from builder.model.class_sheet import TimedPart
from builder.model.lesson import Lesson, Who


def reckon_timeline(lesson: Lesson) -> tuple[TimedPart, ...]:
    """Lay the parts that are done in class one after the other."""
    timed: list[TimedPart] = []
    now = 0
    for part in lesson.parts:
        if part.in_class_time:
            timed.append(TimedPart(part, len(timed) + 1, now, now + part.minutes))
            now += part.minutes
    return tuple(timed)


def ahead_minutes(lesson: Lesson) -> int:
    """Give the minutes of work before the class."""
    return sum(part.minutes for part in lesson.parts if part.who is Who.AHEAD)
