"""The parts of a class on the clock: one after the other, and within a wait those that are laid into it."""

from collections.abc import Iterable

from builder.model.teaching.lesson import Lesson, Where, Who
from builder.model.teaching.timed_part import StaffPart, TimedPart


def on_the_clock(lesson: Lesson) -> tuple[TimedPart, ...]:
    """Lay the parts that are done in class on the clock. A part in the wait begins with the wait, or after the one before it there."""
    timed: list[TimedPart] = []
    now, inside = 0, None
    for part in (part for part in lesson.parts if part.in_class_time):
        if part.in_the_wait and inside is not None:
            begins, inside = inside, inside + part.minutes
            now = max(now, inside)
        else:
            begins, now = now, now + part.minutes
            inside = begins if part.who is Who.WAITING else None
        timed.append(TimedPart(part, len(timed) + 1, begins, begins + part.minutes, part.minutes))
    return tuple(_with_what_is_left(timed))


def ends_at(timeline: Iterable[TimedPart]) -> int:
    """Return the minutes from the start to the end of the last part."""
    return max((timed.ends for timed in timeline), default=0)


def filled_minutes(timeline: tuple[TimedPart, ...], wait: TimedPart) -> int:
    """Return the minutes of the parts that are laid into a wait."""
    minutes = 0
    for timed in timeline[wait.number :]:
        if not timed.part.in_the_wait:
            break
        minutes += timed.part.minutes
    return minutes


def _with_what_is_left(timed: list[TimedPart]) -> Iterable[TimedPart]:
    run = tuple(timed)
    for one in run:
        left = max(0, one.part.minutes - filled_minutes(run, one)) if one.part.who is Who.WAITING else 0
        yield TimedPart(one.part, one.number, one.begins, one.ends, left)


def ahead_of(lesson: Lesson) -> tuple[StaffPart, ...]:
    """Return what is done ahead, in the order of doing: days before first, then what ends when the class begins."""
    parts = [part for part in lesson.parts if part.who is Who.AHEAD]
    before = sorted((part for part in parts if part.days_before), key=lambda part: -part.days_before)
    same_day = [part for part in parts if not part.days_before]
    made = [StaffPart(part, None, None) for part in before]
    now = -sum(part.minutes for part in same_day)
    for part in same_day:
        made.append(StaffPart(part, now, now + part.minutes))
        now += part.minutes
    return tuple(made)


def after_of(lesson: Lesson, ends: int) -> tuple[StaffPart, ...]:
    """Return what staff do after a class that ends so many minutes from its start, in the order of doing: that day, then days later."""
    parts = [part for part in lesson.parts if part.who is Who.AFTER and part.where is not Where.HOME_ONLY]
    made, now = [], ends
    for part in (part for part in parts if not part.days_later):
        made.append(StaffPart(part, now, now + part.minutes))
        now += part.minutes
    later = sorted((part for part in parts if part.days_later), key=lambda part: part.days_later)
    return (*made, *(StaffPart(part, None, None) for part in later))
