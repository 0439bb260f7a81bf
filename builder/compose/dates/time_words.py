"""The time of a class in words and as a bar: who is doing what, for how long, and when."""

from collections.abc import Callable, Iterable, Mapping
from datetime import datetime, timedelta
from fractions import Fraction

from builder.compose.dates.dates import clock
from builder.compose.punctuation import labelled
from builder.compose.recipe.wording import duration, listed, sentence, short_duration, shortest_digits, whole_minutes
from builder.compose.views.strip import StripRow, StripSegment, StripTotal, StripView
from builder.model.dates.studio_class import Format
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part, Who
from builder.model.teaching.timed_part import TimedPart
from builder.rules.clock import ends_at
from builder.words.say import message, say, say_count

FORMATS = {
    Format.DEMO: message("Demonstration: you watch, ask and compare"),
    Format.HANDS_ON: message("Hands-on: you make it yourself"),
    Format.DEMO_WITH_HANDS_ON_PARTS: message("Demonstration with hands-on parts: you watch some of it and do the rest"),
}
FORMAT_NAMES = {
    Format.DEMO: message("demo"),
    Format.HANDS_ON: message("hands-on"),
    Format.DEMO_WITH_HANDS_ON_PARTS: message("demo with hands-on parts"),
}
# As few words as a row has room for.
WAYS = {
    Format.DEMO: message("Watch"),
    Format.HANDS_ON: message("Make"),
    Format.DEMO_WITH_HANDS_ON_PARTS: message("Watch and make"),
}
# Who does a part, as the staff call it and as a page says it to those who may come.
STAFF_WORDS = {
    Who.AHEAD: message("ahead"),
    Who.TEACHER: message("teacher"),
    Who.STUDENTS: message("students"),
    Who.TOGETHER: message("together"),
    Who.WAITING: message("waiting"),
    Who.AFTER: message("after"),
}
WORDS = {
    Who.TEACHER: message("you watch"),
    Who.STUDENTS: message("you do it"),
    Who.TOGETHER: message("together"),
    Who.WAITING: message("waiting"),
}
WORDS_WITH_TIME = {
    Who.TEACHER: message("you watch for {time}"),
    Who.STUDENTS: message("you do it for {time}"),
    Who.TOGETHER: message("together for {time}"),
    Who.WAITING: message("waiting for {time}"),
}
SPENT = {
    Who.TEACHER: message("watch for {time}"),
    Who.STUDENTS: message("work with your own hands for {time}"),
    Who.TOGETHER: message("work together with the teacher for {time}"),
    Who.WAITING: message("wait for {time}"),
}
ROOM_FOR_MINUTES, ROOM_FOR_WORD = Fraction(8, 100), Fraction(30, 100)

Clock = Callable[[int], str]


def format_words(format: Format) -> str:
    """Return in words what a format is to those who come."""
    return say(FORMATS[format])


def minutes_by(plan: ClassPlan) -> dict[Who, int]:
    """Return the minutes of class time for each who."""
    return {who: sum(timed.alone for timed in plan.timeline if timed.part.who is who) for who in WORDS}


def format_sentence(plan: ClassPlan) -> str:
    """Return in words what the format means in minutes: `You watch for 35 minutes and work with your own hands for 55 of the 2 hours.`"""
    spent = minutes_by(plan)
    said = [say(phrase, time=duration(spent[who])) for who, phrase in SPENT.items() if spent[who]]
    if not said:
        return ""
    whole = whole_minutes(plan.studio_class.length)
    over = whole - ends_at(plan.timeline)
    spans = say("Of the {length} you {doing}.", length=duration(whole), doing=listed(said))
    return f"{spans} {_for_arriving(over)}" if over > 0 else spans


def time_left(plan: ClassPlan) -> str:
    """Return in words what the minutes are for that no part takes; empty where there are none."""
    over = whole_minutes(plan.studio_class.length) - ends_at(plan.timeline)
    return _for_arriving(over) if plan.timeline and over > 0 else ""


def _for_arriving(minutes: int) -> str:
    return say_count(
        "The other {count}\u00a0minute is for arriving and questions.",
        "The other {count}\u00a0minutes are for arriving and questions.",
        minutes,
    )


def clock_from(start: datetime | None, locale: str) -> Clock:
    """Return a clock: times of day from a start, or, without one, the time that has passed."""
    if start is None:
        return lambda minutes: f"{minutes // 60}:{minutes % 60:02d}"
    return lambda minutes: clock(start + timedelta(minutes=minutes), locale)


def common_start(plan: ClassPlan) -> datetime | None:
    """Return the start of the class if all its dates begin at the same time of day."""
    starts = [date.on for date in plan.studio_class.dates_held]
    return starts[0] if starts and len({start.time() for start in starts}) == 1 else None


def time_strip(plan: ClassPlan, read_clock: Clock) -> StripView | None:
    """Return the strip of a class; None where no part takes class time."""
    if not plan.timeline:
        return None
    whole = max(ends_at(plan.timeline), 1)
    rows = run_rows(plan, read_clock, WORDS)
    spent = minutes_by(plan)
    said = [say(WORDS_WITH_TIME[who], time=duration(minutes)) for who, minutes in spent.items() if minutes]
    title = say("How the time of {class_title} is spent", class_title=plan.studio_class.title)
    order = "; ".join(labelled(row.word, f"{row.title}, {row.minutes}") for row in rows)
    description = say("{spent}. In order: {order}.", spent=sentence(listed(said)), order=order)
    totals = tuple(StripTotal(str(who), say(WORDS[who]), short_duration(minutes)) for who, minutes in spent.items() if minutes)
    return StripView(plan.studio_class.key, title, description, tuple(_segments(plan.timeline, whole)), totals, rows)


def run_rows(plan: ClassPlan, read_clock: Clock, words: Mapping[Who, str]) -> tuple[StripRow, ...]:
    """Return the run of a class, each part with the time at which it begins."""
    return tuple(
        StripRow(
            str(timed.part.who), who_does(timed.part, words), timed.part.title, short_duration(timed.part.minutes), read_clock(timed.begins)
        )
        for timed in plan.timeline
    )


def who_does(part: Part, words: Mapping[Who, str]) -> str:
    """Return in words who does a part, and whether it fills the wait of another."""
    who = say(words[part.who])
    return say("{who}, in the wait", who=who) if part.in_the_wait else who


def _segments(timeline: Iterable[TimedPart], whole: int) -> Iterable[StripSegment]:
    for timed in timeline:
        part = timed.part
        if not timed.alone:
            continue
        left, width = Fraction(timed.ends - timed.alone, whole), Fraction(timed.alone, whole)
        word = say(WORDS[part.who]) if width >= ROOM_FOR_WORD else ""
        minutes = str(timed.alone) if width >= ROOM_FOR_MINUTES else ""
        yield StripSegment(str(part.who), _place(left), _place(width), _place(left + width / 2), word, minutes)


def _place(share: Fraction) -> str:
    return f"{shortest_digits(share * 100, 3)}%"
