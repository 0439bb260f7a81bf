"""The plan of a class for a terminal: how it is taught, which format suits it, who can watch how many, and the run on the clock."""

from collections.abc import Iterator

from builder.compose.dates.time_words import STAFF_WORDS, clock_from, run_rows
from builder.compose.teaching.class_facts import staff
from builder.compose.teaching.running import view_format
from builder.compose.teaching.staff_words import after_rows, ahead_rows
from builder.compose.teaching.supervision_words import POLICY, ahead_lines, carried_words, rule_rows, watch_rows
from builder.compose.teaching.weighing_words import weighing_rows
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say


def plan_lines(studio: Studio, plan: ClassPlan) -> Iterator[str]:
    """Return the plan of one date, or of a full class where it has none, line by line; ordinary spaces, so that a terminal can wrap."""
    return (line.replace("\u00a0", " ") for line in _lines(studio, plan))


def _lines(studio: Studio, plan: ClassPlan) -> Iterator[str]:
    taught = view_format(studio, plan)
    yield f"{plan.studio_class.title}: {staff(*plan.staff)}"
    yield f"{taught.name}. {' '.join(taught.sentences)}"
    yield from _listed("For this format speaks", taught.speaks_for)
    yield from _listed("For another format speaks", taught.speaks_against)
    yield from ("", f"Supervision: {carried_words(plan)}", say(POLICY))
    yield from _listed("Who watches whom", tuple(f"{row.who}: {row.watches}" for row in watch_rows(plan)))
    yield from _listed("Rules that hold", tuple(f"{row.rule}: {row.asks} ({row.parts}; {row.basis})" for row in rule_rows(plan)))
    yield from _listed("Can be done ahead", ahead_lines(plan))
    yield from _listed("Who weighs what", tuple(f"{row.where} ({row.batch}, {row.often}): {row.what}" for row in weighing_rows(plan)))
    locale = studio.region.locale
    clock = clock_from(plan.date.on if plan.date else None, locale)
    yield from _listed("Before the class", tuple(f"{row.when}  {row.title} ({row.minutes})" for row in ahead_rows(plan, locale)))
    yield from _listed(
        "The run of the class", tuple(f"{r.clock}  {r.title} ({r.word}, {r.minutes})" for r in run_rows(plan, clock, STAFF_WORDS))
    )
    yield from _listed("After the class", tuple(f"{row.when}  {row.title} ({row.minutes})" for row in after_rows(plan, locale)))


def _listed(title: str, lines: tuple[str, ...]) -> Iterator[str]:
    if lines:
        yield ""
        yield f"{title}:"
        yield from (f"  {line}" for line in lines)
