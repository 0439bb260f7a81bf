"""class-too-long, class-too-short, no-parts: the minutes of the parts against the length of the class."""

from collections.abc import Iterator

from builder.model.finding import Finding, caution, stop
from builder.model.studio import Studio


def find_times_that_do_not_fit(studio: Studio) -> Iterator[Finding]:
    """Add up the minutes of the parts that are done in class."""
    for studio_class in studio.classes.values():
        place = studio_class.at("length")
        parts = [part for part in studio_class.lesson.parts if part.in_class_time]
        minutes, length = sum(part.minutes for part in parts), int(studio_class.length.minutes)
        if not parts:
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


def _time(minutes: int) -> str:
    """Give a time as a heading writes it."""
    hours, rest = divmod(minutes, 60)
    return " ".join(part for part in (f"{hours} h" if hours else "", f"{rest} min" if rest else "") if part)
