"""The teacher's sheet of one date: page 1 the run by the clock, then all weighings, what stands or was accepted, and the steps. The
assistants' sheet is its first page and the weighings.

What is looked up and not carried to the table lies in documents of its own (`compose/for_staff/documents.py`).
"""

from collections.abc import Iterator
from itertools import islice

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.time_words import clock_from
from builder.compose.document_kind import Composed, ToPrint
from builder.compose.edition import Edition
from builder.compose.for_staff.run_sheet import run_sheet
from builder.compose.for_staff.weighings import pots_told_once, scales_used, view_mixed
from builder.compose.frames import frame
from builder.compose.recipe.batch_words import view_batches
from builder.compose.recipe.wording import duration
from builder.compose.roster.allergy_words import stands_with_the_people
from builder.compose.teaching.class_plans import flow_source, when
from builder.compose.teaching.lesson_flow import FlowSource, Foot, compose_flow
from builder.compose.teaching.pieces import writer_of
from builder.compose.teaching.staff_words import when_done
from builder.compose.views.for_staff import StaffProduct, StepsGroup, TeacherView
from builder.compose.views.teacher import FindingView
from builder.model.finding import Finding
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.reach import concerns_plan
from builder.words.say import say, say_count, spoken


def copies_of_teacher_sheet(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield how many to print: one for each teacher."""
    teachers = plan.staff[0]
    line = say_count("Teacher's sheet: {count}\u00a0copy", "Teacher's sheet: {count}\u00a0copies", teachers)
    yield ToPrint(line, say("Teacher's sheet"), (teachers,))


def copies_of_assistants_sheet(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield how many to print: one for each assistant."""
    assistants = plan.staff[1]
    if assistants:
        line = say_count("Assistants' sheet: {count}\u00a0copy", "Assistants' sheet: {count}\u00a0copies", assistants)
        yield ToPrint(line, say("Assistants' sheet"), (assistants,))


def compose_teacher_sheet(edition: Edition, plan: ClassPlan, here: Address) -> Composed:
    """Make the teacher's sheet of one date."""
    return Composed(_view(edition, plan, here, say("Teacher's sheet: {class_title}", class_title=plan.studio_class.title)))


def compose_assistants_sheet(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Make the sheet of the assistants of one date, the run by the clock and all weighings; none where nobody assists."""
    if not plan.staff[1]:
        return None
    return Composed(_view(edition, plan, here, say("Assistants' sheet: {class_title}", class_title=plan.studio_class.title)))


def _view(edition: Edition, plan: ClassPlan, here: Address, title: str) -> TeacherView:
    studio_class = plan.studio_class
    stretches = [(title, sources) for title, sources in _stretches(edition, plan) if sources]
    whole = compose_flow(
        edition.studio,
        [source for _, sources in stretches for source in sources],
        writer_of(edition, here, addresses.class_folder(studio_class.key)),
        [made.batch for made in plan.made],
        short_again=True,
        foot=Foot.DANGERS,
    )
    parts = iter(whole.parts)
    return TeacherView(
        frame=frame(edition, here, title, f"{title}, {when(edition, plan)}"),
        run=run_sheet(edition, plan, title, whole.calls),
        scales=scales_used(plan),
        products=tuple(
            StaffProduct(view_batches(edition, plan, made), (*view_mixed(plan, made), *pots_told_once(plan, made))) for made in plan.made
        ),
        findings=tuple(
            FindingView(spoken().gettext(f.wrong), spoken().gettext(f.remedy), f.accepted or "")
            for f in edition.findings
            if _is_listed(f, plan, edition.studio)
        ),
        before=whole,
        steps=tuple(StepsGroup(title, tuple(islice(parts, len(sources)))) for title, sources in stretches),
    )


def _stretches(edition: Edition, plan: ClassPlan) -> Iterator[tuple[str, tuple[FlowSource, ...]]]:
    """Yield what is done ahead, in class and after it, each with its title; its parts in order, with their times."""
    minutes, locale = sum(one.part.minutes for one in plan.ahead), edition.locale
    read_clock = clock_from(plan.date.on if plan.date else None, locale)
    ahead, in_class, after = (
        tuple(flow_source(plan, one, time, for_staff=True) for one, time in timed)
        for timed in (
            [(one, when_done(plan, one, locale)) for one in plan.ahead],
            [(one, read_clock(one.begins)) for one in plan.timeline],
            [(one, when_done(plan, one, locale)) for one in plan.after],
        )
    )
    yield say("Before the class: {time}", time=duration(minutes)) if minutes else say("Before the class"), ahead
    yield say("The class"), in_class
    yield say("After the class"), after


def _is_listed(finding: Finding, plan: ClassPlan, studio: Studio) -> bool:
    """Tell whether a finding stands on the sheet. Of the stops only those about labels are left: all else would not have been made."""
    return not stands_with_the_people(finding) and concerns_plan(finding, plan, studio)
