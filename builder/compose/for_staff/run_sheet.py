"""Page 1 of what staff have in hand, beside the run by the clock: who comes, the numbers to call, who watches whom."""

from builder.compose.dates.time_words import FORMAT_NAMES
from builder.compose.edition import Edition
from builder.compose.for_staff.ready import ready_lines
from builder.compose.ornament.portrait import portrait_of
from builder.compose.ornament.svg import TEACHER_MARK, Look, mark
from builder.compose.recipe.wording import duration, whole_minutes
from builder.compose.teaching.class_facts import staff
from builder.compose.teaching.class_plans import when
from builder.compose.teaching.running import view_running
from builder.compose.views.caution import Call
from builder.compose.views.for_staff import RunSheet
from builder.compose.views.teacher import Fact
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say, say_count


def run_sheet(edition: Edition, plan: ClassPlan, title: str, calls: tuple[Call, ...]) -> RunSheet:
    """Return page 1 of a date."""
    running = view_running(edition.studio, plan)
    return RunSheet(
        title=title,
        when=when(edition, plan),
        facts=_facts(plan),
        calls=calls,
        ready=ready_lines(plan, edition.locale),
        watch=running.watch,
        carried=running.carried,
        policy=running.policy,
        allergies=say("Allergies and choices of each person stand on the roster.") if plan.has_roster else "",
        marks=tuple(mark(portrait_of(edition.studio, made.batch), TEACHER_MARK, Look.TINTED) for made in plan.made),
    )


def _facts(plan: ClassPlan) -> tuple[Fact, ...]:
    studio_class = plan.studio_class
    waiting = [Fact(say("On the waiting list"), str(plan.date.waiting))] if plan.date and plan.date.waiting else []
    facts = [
        Fact(say("Format"), say(FORMAT_NAMES[plan.format])),
        Fact(say("Students"), str(plan.students)),
        *waiting,
        Fact(say("Staff"), staff(*plan.staff)),
    ]
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
