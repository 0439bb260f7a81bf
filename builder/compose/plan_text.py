"""The plan of a class for a terminal: how it is taught, which format suits it, who can watch how many, and the run on the clock."""

from collections.abc import Iterator

from builder.compose.class_facts import staff
from builder.compose.dates import locale_of
from builder.compose.running import view_format
from builder.compose.staff_words import after_rows, ahead_rows
from builder.compose.supervision_words import POLICY, ahead_lines, carried_words, rule_rows, watch_rows
from builder.compose.time_words import STAFF_WORDS, clock_from, run_rows
from builder.compose.weighing_words import weighing_rows
from builder.model.class_sheet import ClassSheet
from builder.model.studio import Studio


def plan_lines(studio: Studio, sheet: ClassSheet) -> Iterator[str]:
    """Give the plan of one date, or of a full class where it has none, line by line; ordinary spaces, so that a terminal can wrap."""
    return (line.replace("\u00a0", " ") for line in _lines(studio, sheet))


def _lines(studio: Studio, sheet: ClassSheet) -> Iterator[str]:
    taught = view_format(studio, sheet)
    yield f"{sheet.studio_class.title}: {staff(*sheet.staff)}"
    yield f"{taught.name}. {' '.join(taught.sentences)}"
    yield from _listed("For this format speaks", taught.speaks_for)
    yield from _listed("For another format speaks", taught.speaks_against)
    yield from ("", f"Supervision: {carried_words(sheet)}", POLICY)
    yield from _listed("Who watches whom", tuple(f"{row.who}: {row.watches}" for row in watch_rows(sheet)))
    yield from _listed("Rules that hold", tuple(f"{row.rule}: {row.asks} ({row.parts}; {row.basis})" for row in rule_rows(sheet)))
    yield from _listed("Can be done ahead", ahead_lines(sheet))
    yield from _listed("Who weighs what", tuple(f"{row.where} ({row.batch}, {row.often}): {row.what}" for row in weighing_rows(sheet)))
    locale = locale_of(studio.profile.region)
    clock = clock_from(sheet.date.on if sheet.date else None, locale)
    yield from _listed("Before the class", tuple(f"{row.when}  {row.title} ({row.minutes})" for row in ahead_rows(sheet, locale)))
    yield from _listed(
        "The run of the class", tuple(f"{r.clock}  {r.title} ({r.word}, {r.minutes})" for r in run_rows(sheet, clock, STAFF_WORDS))
    )
    yield from _listed("After the class", tuple(f"{row.when}  {row.title} ({row.minutes})" for row in after_rows(sheet, locale)))


def _listed(title: str, lines: tuple[str, ...]) -> Iterator[str]:
    if lines:
        yield ""
        yield f"{title}:"
        yield from (f"  {line}" for line in lines)
