"""The teacher's sheet of one date: page 1 the run by the clock, then all weighings, what stands or was accepted, and the steps.

What is looked up and not carried to the table lies in documents of its own (`compose/for_staff/documents.py`).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.time_words import STAFF_WORDS, Clock, clock_from, run_rows
from builder.compose.document_kind import Composed, ToPrint
from builder.compose.edition import Edition
from builder.compose.for_staff.clock import clock_group
from builder.compose.for_staff.met_in_class import met_after_class, met_in_class
from builder.compose.for_staff.run_sheet import run_sheet
from builder.compose.for_staff.weighings import scales_used, view_mixed, view_pots
from builder.compose.frames import frame
from builder.compose.home.letters import letter_of
from builder.compose.recipe.batch_words import view_batches
from builder.compose.recipe.wording import duration
from builder.compose.roster.allergy_words import stands_with_the_people
from builder.compose.teaching.class_plans import part_sheet, when
from builder.compose.teaching.lesson_flow import FlowSource, compose_flow
from builder.compose.teaching.pieces import writer_of
from builder.compose.teaching.staff_words import when_done
from builder.compose.teaching.weighing_words import pots_note
from builder.compose.views.for_staff import StaffProduct, StepsGroup, TeacherView
from builder.compose.views.teacher import FindingView
from builder.model.finding import Finding
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part
from builder.rules.reach import concerns_plan
from builder.words.say import say, say_count, spoken


def copies_of_teacher_sheet(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Say how many to print: all of it for each teacher, the first page and the weighings for each assistant."""
    teachers, assistants = plan.staff
    line = say_count("Teacher's sheet: {count}\u00a0copy", "Teacher's sheet: {count}\u00a0copies", teachers)
    yield ToPrint(line, say("Teacher's sheet"), (teachers,))
    if assistants:
        line = say_count(
            "Pages 1 and 2 of the teacher's sheet for the assistants: {count}\u00a0copy",
            "Pages 1 and 2 of the teacher's sheet for the assistants: {count}\u00a0copies",
            assistants,
        )
        yield ToPrint(line, say("Its pages 1 and 2, for the assistants"), (assistants,), only=2)


def compose_teacher_sheet(edition: Edition, plan: ClassPlan, here: Address) -> Composed:
    """Make the teacher's sheet of one date."""
    studio_class = plan.studio_class
    read_clock = clock_from(plan.date.on if plan.date else None, edition.locale)
    stretches = _stretches(edition, plan, read_clock)
    whole = compose_flow(
        edition.studio,
        [source for one in stretches for source in one.sources],
        writer_of(edition, here, addresses.class_folder(studio_class.key)),
        [made.batch for made in plan.made],
        short_again=True,
        aid_at_foot=True,
    )
    parts = iter(whole.parts)
    steps = tuple(StepsGroup(one.title, tuple(islice(parts, len(one.sources)))) for one in stretches if one.sources)
    words = {id(timed.part): row.word for timed, row in zip(plan.timeline, run_rows(plan, read_clock, STAFF_WORDS), strict=True)}
    clock = (
        clock_group(plan, shown.title, [source.part for source in one.sources], shown, words)
        for one, shown in zip([one for one in stretches if one.sources], steps, strict=True)
    )
    title = say("Teacher's sheet: {class_title}", class_title=studio_class.title)
    view = TeacherView(
        frame=frame(edition, here, title, f"{title}, {when(edition, plan)}"),
        run=run_sheet(edition, plan, title, tuple(clock), whole.calls),
        scales=scales_used(plan),
        products=tuple(
            StaffProduct(view_batches(edition, plan, made), (*view_mixed(plan, made), *view_pots(plan, made))) for made in plan.made
        ),
        findings=tuple(
            FindingView(spoken().gettext(f.wrong), spoken().gettext(f.remedy), f.accepted or "")
            for f in edition.findings
            if _is_listed(f, plan, edition.studio)
        ),
        before=whole,
        steps=steps,
    )
    return Composed(view)


@dataclass(frozen=True)
class _Stretch:
    """What is done before the class, in it, or after it."""

    title: str
    sources: tuple[FlowSource, ...]


def _stretches(edition: Edition, plan: ClassPlan, read_clock: Clock) -> tuple[_Stretch, ...]:
    """Return what is done ahead, in class and after it, in order, each part with its time."""

    def source(part: Part, time: str, met: tuple[str, ...] = ()) -> FlowSource:
        note, letter = pots_note(plan, part, for_staff=True), letter_of(plan.studio_class, part)
        return FlowSource(part, part_sheet(plan, part), time, note, letter, met)

    minutes = sum(one.part.minutes for one in plan.ahead)
    ahead = say("Before the class: {time}", time=duration(minutes)) if minutes else say("Before the class")
    return (
        _Stretch(ahead, tuple(source(one.part, when_done(plan, one, edition.locale), one.met) for one in plan.ahead)),
        _Stretch(
            say("The class"), tuple(source(timed.part, read_clock(timed.begins), met_in_class(plan, timed)) for timed in plan.timeline)
        ),
        _Stretch(
            say("After the class"),
            tuple(source(one.part, when_done(plan, one, edition.locale), met_after_class(plan, one)) for one in plan.after),
        ),
    )


def _is_listed(finding: Finding, plan: ClassPlan, studio: Studio) -> bool:
    """Tell whether a finding stands on the sheet. Of the stops only those about labels are left: all else would not have been made."""
    return not stands_with_the_people(finding) and concerns_plan(finding, plan, studio)
