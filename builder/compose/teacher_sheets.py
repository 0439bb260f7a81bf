"""The teacher's sheet of one date: what to do ahead, the run of the class, every batch, what stands or was accepted, and the sums."""

from dataclasses import replace

from builder.compose import addresses
from builder.compose.allergy_words import allergy_note, stands_with_the_people, view_allergies
from builder.compose.batch_words import sums_of, view_batches
from builder.compose.choice_totals import view_guests
from builder.compose.class_facts import staff
from builder.compose.class_sheets import part_sheet, when
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES, sheet_frame
from builder.compose.lesson_flow import FlowSource, compose_flow
from builder.compose.pieces import paper_filling
from builder.compose.portion_words import emergency_lines
from builder.compose.running import view_running
from builder.compose.staff_words import after_rows, ahead_rows
from builder.compose.supply_words import view_supplies
from builder.compose.time_words import STAFF_WORDS, Clock, clock_from, run_rows
from builder.compose.views.lesson import LessonFlow
from builder.compose.views.teacher import Fact, FindingView, TeacherView
from builder.compose.weighing_words import pots_note
from builder.compose.wording import counted, duration, whole_minutes
from builder.model.class_sheet import ClassSheet
from builder.model.document import Document
from builder.model.finding import Finding
from builder.model.lesson import Part, Where, Who
from builder.model.subject import (
    HomeSheet,
    Labels,
    OneDate,
    ShoppingList,
    Subject,
    TextPage,
    UnusedCard,
    WholeClass,
    WholeRecipe,
    WholeStudio,
)

STYLES = (*PAPER_STYLES, "teacher.css")


def compose_teacher_sheet(edition: Edition, sheet: ClassSheet) -> Document:
    """Make the teacher's sheet of one date."""
    studio_class = sheet.studio_class
    read_clock = clock_from(sheet.date.on if sheet.date else None, edition.locale)
    ahead, lesson, after = _flows(edition, sheet, read_clock)
    title = f"Teacher's sheet: {studio_class.title}"
    view = TeacherView(
        frame=sheet_frame(edition, title, f"{title}, {when(edition, sheet)}"),
        title=title,
        when=when(edition, sheet),
        facts=_facts(sheet),
        emergency=emergency_lines(edition.studio.profile.emergency),
        running=view_running(edition.studio, sheet),
        ahead_run=ahead_rows(sheet, edition.locale),
        run=run_rows(sheet, read_clock, STAFF_WORDS),
        after_run=after_rows(sheet, edition.locale),
        ahead_minutes=duration(sum(one.part.minutes for one in sheet.ahead)) if sheet.ahead else "",
        ahead=ahead,
        products=tuple(view_batches(edition, sheet, made) for made in sheet.made),
        lesson=lesson,
        after=after,
        supplies=view_supplies(edition.studio, sheet),
        findings=tuple(FindingView(f.wrong, f.remedy, f.accepted or "") for f in edition.findings if _is_listed(f, sheet)),
        sums=tuple(sums for made in sheet.made for sums in sums_of(made)),
        guests=view_guests(sheet),
        allergies=view_allergies(sheet),
        allergy_note=allergy_note(edition.studio, sheet),
    )
    here = addresses.class_sheet(sheet, "teacher.pdf")
    return Document(here.folder, here.path, title, edition.templates.render("sheets/teacher.html", view), STYLES)


def _flows(edition: Edition, sheet: ClassSheet, read_clock: Clock) -> tuple[LessonFlow, LessonFlow, LessonFlow]:
    """Lay out what is done ahead, in class and after it as one run: steps count on, a caution comes whole once and then as one line."""
    lesson = sheet.studio_class.lesson
    ahead = [part for part in lesson.parts if part.who is Who.AHEAD and part.where is not Where.HOME_ONLY]

    def source(part: Part, time: str = "") -> FlowSource:
        return FlowSource(part, part_sheet(sheet, part), time, pots_note(sheet, part, for_staff=True))

    sources = [source(part) for part in ahead]
    sources += [source(timed.part, read_clock(timed.begins)) for timed in sheet.timeline]
    times = [row.when for row in after_rows(sheet, edition.locale)]
    sources += [source(one.part, time) for one, time in zip(sheet.after, times, strict=True)]
    filling = paper_filling(edition, addresses.class_folder(sheet.studio_class.key))
    whole = compose_flow(edition.studio, sources, filling, [made.batch for made in sheet.made], remind=True)
    begins, ends = len(ahead), len(ahead) + len(sheet.timeline)
    return replace(whole, parts=whole.parts[:begins]), LessonFlow((), whole.parts[begins:ends]), LessonFlow((), whole.parts[ends:])


def _facts(sheet: ClassSheet) -> tuple[Fact, ...]:
    studio_class = sheet.studio_class
    waiting = [Fact("On the waiting list", str(sheet.date.waiting))] if sheet.date and sheet.date.waiting else []
    facts = [Fact("Students", str(sheet.students)), *waiting, Fact("Staff", staff(*sheet.staff))]
    if studio_class.group_size > 1:
        facts.append(Fact("Groups", _groups(sheet)))
    facts.append(Fact("Length", duration(whole_minutes(studio_class.length))))
    return (*facts, Fact("Youngest", counted(studio_class.youngest, "year", "years")))


def _groups(sheet: ClassSheet) -> str:
    size = sheet.studio_class.group_size
    if sheet.last_group == size:
        return f"{counted(sheet.groups, 'group', 'groups')} of {size}"
    if sheet.groups == 1:
        return f"1 group of {sheet.last_group}"
    return f"{counted(sheet.groups - 1, 'group', 'groups')} of {size} and one of {sheet.last_group}"


def _is_listed(finding: Finding, sheet: ClassSheet) -> bool:
    """Say whether a finding stands on the sheet. Of the stops only those about labels are left: all else would not have been made."""
    return not stands_with_the_people(finding) and _concerns(finding, sheet)


def _concerns(finding: Finding, sheet: ClassSheet) -> bool:
    """Say whether a finding is about this class: by name, or by the file of the class, of a recipe, of an ingredient or of the studio."""
    key = sheet.studio_class.key
    if finding.about:
        return any(_is_of(subject, sheet) for subject in finding.about)
    file = finding.place.file
    files = {made.batch.recipe.place.file for made in sheet.made}
    files |= {line.ingredient.place.file for made in sheet.made for line in made.batch.lines}
    return file in files | {"studio.yaml", "shelf/supplies.yaml"} or file.startswith(f"classes/{key}/")


def _is_of(subject: Subject, sheet: ClassSheet) -> bool:
    """Say whether something is part of what a sheet is for."""
    key, recipes = sheet.studio_class.key, {make.recipe.text for make in sheet.studio_class.makes}
    match subject:
        case WholeStudio():
            return True
        case WholeClass(of) | HomeSheet(of):
            return of == key
        case OneDate():
            return subject == sheet.subject
        case WholeRecipe(recipe):
            return recipe in recipes
        case Labels(recipe, of):
            return recipe in recipes and of in ("", key)
        case UnusedCard() | TextPage() | ShoppingList():
            return False
