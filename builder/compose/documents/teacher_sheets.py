"""The teacher's sheet of one date: what to do ahead, the run of the class, every batch, what stands or was accepted, and the sums."""

from collections.abc import Iterator
from dataclasses import replace

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.time_words import STAFF_WORDS, Clock, clock_from, run_rows
from builder.compose.document_kind import Composed
from builder.compose.dose.choice_totals import view_guests
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.home.letters import letter_of
from builder.compose.ornament.portrait import portrait_of
from builder.compose.ornament.svg import TEACHER_MARK, Look, mark
from builder.compose.recipe.batch_words import sums_of, view_batches
from builder.compose.recipe.portion_words import emergency_lines
from builder.compose.recipe.wording import duration, whole_minutes
from builder.compose.roster.allergy_words import allergy_note, stands_with_the_people, view_allergies
from builder.compose.supplies.supply_words import view_supplies
from builder.compose.teaching.class_facts import staff
from builder.compose.teaching.class_plans import part_sheet, when
from builder.compose.teaching.lesson_flow import FlowSource, compose_flow
from builder.compose.teaching.pieces import TextWriter, writer_of
from builder.compose.teaching.running import view_running
from builder.compose.teaching.staff_words import after_rows, ahead_rows, when_done
from builder.compose.teaching.weighing_words import pots_note
from builder.compose.views.lesson import LessonFlow
from builder.compose.views.teacher import Fact, FindingView, TeacherView
from builder.model.finding import Finding
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part, Where, Who
from builder.rules.reach import concerns_plan
from builder.words.say import say, say_count


def copies_of_teacher_sheet(_: Edition, plan: ClassPlan) -> Iterator[str]:
    """Say how many to print: one for each of the staff."""
    yield say_count("Teacher's sheet: {count}\u00a0copy", "Teacher's sheet: {count}\u00a0copies", sum(plan.staff))


def compose_teacher_sheet(edition: Edition, plan: ClassPlan, here: Address) -> Composed:
    """Make the teacher's sheet of one date."""
    studio_class = plan.studio_class
    read_clock = clock_from(plan.date.on if plan.date else None, edition.locale)
    ahead, lesson, after = _flows(edition, plan, read_clock, writer_of(edition, here, addresses.class_folder(studio_class.key)))
    title = say("Teacher's sheet: {class_title}", class_title=studio_class.title)
    view = TeacherView(
        frame=frame(edition, here, title, f"{title}, {when(edition, plan)}"),
        title=title,
        when=when(edition, plan),
        facts=_facts(plan),
        emergency=emergency_lines(edition.studio.profile.emergency),
        running=view_running(edition.studio, plan),
        ahead_run=ahead_rows(plan, edition.locale),
        run=run_rows(plan, read_clock, STAFF_WORDS),
        after_run=after_rows(plan, edition.locale),
        ahead_minutes=duration(sum(one.part.minutes for one in plan.ahead)) if plan.ahead else "",
        ahead=ahead,
        products=tuple(view_batches(edition, plan, made) for made in plan.made),
        lesson=lesson,
        after=after,
        supplies=view_supplies(edition.studio, plan),
        findings=tuple(FindingView(f.wrong, f.remedy, f.accepted or "") for f in edition.findings if _is_listed(f, plan, edition.studio)),
        sums=tuple(sums for made in plan.made for sums in sums_of(made)),
        guests=view_guests(plan),
        allergies=view_allergies(plan),
        allergy_note=allergy_note(edition.studio, plan),
        marks=tuple(mark(portrait_of(edition.studio, made.batch), TEACHER_MARK, Look.TINTED) for made in plan.made),
    )
    return Composed(title, view)


def _flows(edition: Edition, plan: ClassPlan, read_clock: Clock, writer: TextWriter) -> tuple[LessonFlow, LessonFlow, LessonFlow]:
    """Lay out what is done ahead, in class and after it as one run."""
    lesson = plan.studio_class.lesson
    ahead = [part for part in lesson.parts if part.who is Who.AHEAD and part.where is not Where.HOME_ONLY]

    def source(part: Part, time: str = "") -> FlowSource:
        note, letter = pots_note(plan, part, for_staff=True), letter_of(plan.studio_class, part)
        return FlowSource(part, part_sheet(plan, part), time, note, letter)

    sources = [source(part) for part in ahead]
    sources += [source(timed.part, read_clock(timed.begins)) for timed in plan.timeline]
    sources += [source(one.part, when_done(plan, one, edition.locale)) for one in plan.after]
    whole = compose_flow(edition.studio, sources, writer, [made.batch for made in plan.made])
    begins, ends = len(ahead), len(ahead) + len(plan.timeline)
    return replace(whole, parts=whole.parts[:begins]), LessonFlow((), whole.parts[begins:ends]), LessonFlow((), whole.parts[ends:])


def _facts(plan: ClassPlan) -> tuple[Fact, ...]:
    studio_class = plan.studio_class
    waiting = [Fact(say("On the waiting list"), str(plan.date.waiting))] if plan.date and plan.date.waiting else []
    facts = [Fact(say("Students"), str(plan.students)), *waiting, Fact(say("Staff"), staff(*plan.staff))]
    if studio_class.group_size > 1:
        facts.append(Fact(say("Groups"), _groups(plan)))
    facts.append(Fact(say("Length"), duration(whole_minutes(studio_class.length))))
    return (*facts, Fact(say("Youngest"), say_count("{count}\u00a0year", "{count}\u00a0years", studio_class.youngest)))


def _groups(plan: ClassPlan) -> str:
    size = plan.studio_class.group_size
    if plan.last_group == size:
        return say_count("{count}\u00a0group of {size}", "{count}\u00a0groups of {size}", plan.groups, size=size)
    if plan.groups == 1:
        return say("1 group of {size}", size=plan.last_group)
    return say_count(
        "{count}\u00a0group of {size} and one of {last}",
        "{count}\u00a0groups of {size} and one of {last}",
        plan.groups - 1,
        size=size,
        last=plan.last_group,
    )


def _is_listed(finding: Finding, plan: ClassPlan, studio: Studio) -> bool:
    """Say whether a finding stands on the sheet. Of the stops only those about labels are left: all else would not have been made."""
    return not stands_with_the_people(finding) and concerns_plan(finding, plan, studio)
