"""Whether the parts of a lesson take as long as the class, and waits hold what is laid into them."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.studio import Studio
from builder.model.teaching.lesson import Who
from builder.rules.clock import ends_at, filled_minutes, on_the_clock


@rule_on(
    STUDIO,
    FindingKind("no-parts", STOP, "The lesson has no part that is done in class."),
    FindingKind("class-too-long", STOP, "The parts of the lesson take longer than the class."),
    FindingKind("class-too-short", CAUTION, "The parts of the lesson leave a part of the class unplanned."),
    FindingKind("wait-missing", CAUTION, "A part is laid into a wait, and no wait stands before it."),
    FindingKind("wait-too-short", CAUTION, "The parts that are laid into a wait take longer than the wait."),
)
def find_times_that_do_not_fit(studio: Studio) -> Iterator[Finding]:
    """Lay the parts that are done in class on the clock, and compare its end with the length of the class."""
    for studio_class in studio.classes.values():
        place = studio_class.at("length")
        timeline = on_the_clock(studio_class.lesson)
        minutes, length = ends_at(timeline), int(studio_class.length.minutes)
        yield from _waits(studio_class)
        if not timeline:
            yield stop(
                "no-parts",
                studio_class.lesson.place,
                "The lesson has no part that is done in class.",
                "Add headings such as `## Weigh the salts (students, 15 min)`.",
            )
        elif minutes > length:
            yield stop(
                "class-too-long",
                place,
                f"The parts take {_time(minutes)}, which is {_time(minutes - length)} more than the length of the class.",
                "Shorten parts, do some ahead, or lengthen the class.",
            )
        elif minutes < length:
            yield caution(
                "class-too-short",
                place,
                f"The parts take {_time(minutes)} and leave {_time(length - minutes)} of the class unplanned.",
                "Add the missing part (packing, cleaning, questions) or shorten the class.",
            )


def _waits(studio_class: StudioClass) -> Iterator[Finding]:
    timeline = on_the_clock(studio_class.lesson)
    waiting = False
    for timed in timeline:
        part = timed.part
        if part.in_the_wait and not waiting:
            yield caution(
                "wait-missing",
                part.place,
                f'"{part.title}" is laid into a wait, and no wait stands before it; it is done after the part before it.',
                "Put the wait before it, such as `## The soap cools (waiting, 20 min)`, or leave `in the wait` out.",
            )
        waiting = part.who is Who.WAITING or (waiting and part.in_the_wait)
        filled = filled_minutes(timeline, timed)
        if part.who is Who.WAITING and filled > part.minutes:
            yield caution(
                "wait-too-short",
                part.place,
                f'The parts laid into "{part.title}" take {_time(filled)}, which is {_time(filled - part.minutes)} more than the wait: '
                "what cools or sets meanwhile is left longer than is planned.",
                f"Write `waiting, {_time(filled)}` if that does no harm, or lay a part behind the wait.",
            )


def _time(minutes: int) -> str:
    """Return a time as a heading writes it."""
    hours, rest = divmod(minutes, 60)
    return " ".join(part for part in (f"{hours} h" if hours else "", f"{rest} min" if rest else "") if part)
