"""The weighing plan of a date in words: the only file that says who weighs what, for every document of the date alike."""

from collections.abc import Iterable, Iterator

from builder.compose.recipe.wording import NBSP, counted, grams, listed, sentence, shortest, within
from builder.compose.teaching.supervision_words import group_word, numbers
from builder.compose.views.running import CupRow
from builder.model.lye.lye_solution import Bottles, LyeSolution
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part
from builder.model.teaching.weighing_plan import FoundAs, Weigher, WeighingTask

OF_BATCH = {"class": "", "group": ", for each group", "student": ", for each student", "teacher": ", the teacher's own"}
FOR_PEOPLE = ("group", "student")
# What a vessel with lye has to say; its hazard statement is that of H314.
LYE_MARK = "Danger: causes severe skin burns and eye damage"
ONE_POT = "there is one pot"


def solution_name(lye: LyeSolution) -> str:
    """Name a solution by what is dissolved in it and its strength, as it stands on the bottle: `sodium hydroxide solution, 33 %`."""
    return f"{listed([within(name) for name, _ in lye.alkalis])} solution, {shortest(lye.strength * 100, 1)}{NBSP}%"


def weighing_rows(plan: ClassPlan) -> tuple[CupRow, ...]:
    """Say of every weighing who does it in which part, and how often."""
    rows: dict[tuple[str, str, str], list[str]] = {}
    for task in plan.weighing.tasks:
        often = "once" if task.pots == 1 else counted(task.pots, "time", "times")
        key = (f"{task.recipe}{OF_BATCH[task.purpose]}", who_weighs(plan, task), often)
        rows.setdefault(key, []).append(f"{task.ingredient} {grams(task.each)}")
    return tuple(CupRow(recipe, where, often, "; ".join(what)) for (recipe, where, often), what in rows.items())


def who_weighs(plan: ClassPlan, task: WeighingTask) -> str:
    """Say who does one weighing, and in which part."""
    dissolved = ", dissolved" if task.found_as is FoundAs.DISSOLVED else ""
    bottle = ", out of its marked bottle" if task.found_as is FoundAs.BOTTLE else ""
    if task.part is None:
        return f"ahead{dissolved}{bottle}: no part of the lesson names it"
    return f"{_weigher(plan, task)}{dissolved}{bottle}: {task.part.title}"


def _weigher(plan: ClassPlan, task: WeighingTask) -> str:
    match task.weigher:
        case Weigher.AHEAD:
            return "ahead"
        case Weigher.TEACHER:
            return "staff" if task.purpose == "teacher" and task.part and task.part.by_hand else "the teacher"
        case Weigher.AFTER:
            return "staff, after the class"
        case Weigher.ONE_GROUP:
            return f"{group_word(plan)} {task.group}, once for all"
        case Weigher.TOGETHER:
            return f"each {task.purpose}, with the teacher" if task.purpose in FOR_PEOPLE else "together, once for all"
    return f"each {task.purpose}"


def at_the_bench(task: WeighingTask) -> str:
    """Say on a bench card what is done there with a weighing: nothing more where the people weigh it themselves."""
    if task.found_as is FoundAs.BOTTLE:
        return ": out of its marked bottle"
    if task.found_as is FoundAs.CUP:
        return ": DANGER, dry lye in its lidded, marked cup" if task.caustic else ": ready in its marked cup"
    return {Weigher.TEACHER: ": the teacher weighs it", Weigher.AFTER: ": staff weigh it after the class"}.get(task.weigher, "")


def solution_at_the_bench(lye: LyeSolution) -> str:
    """Say the same of a solution that staff make of the solid: it is poured whole, and nobody at the bench weighs dry lye."""
    where = "all that is in its marked bottle" if lye.ahead else "the teacher makes it"
    return f"{sentence(solution_name(lye))}: {where}"


def pots_note(plan: ClassPlan, part: Part, *, for_staff: bool) -> str:
    """Say of a part, where it is needed, how often its amounts are weighed, and by whom; empty where its heading says enough."""
    tasks = plan.weighing.in_part(part)
    group = plan.group_that_does(part)
    if group is not None:
        who = f"{sentence(group_word(plan))} {group}"
        return f"{who} does this once, for all: {ONE_POT}."
    if any(task.purpose == "class" and task.weigher in (Weigher.TOGETHER, Weigher.ONE_GROUP) for task in tasks):
        return f"This is weighed once, for all: {ONE_POT}."
    pots = max((task.pots for task in tasks if task.purpose in FOR_PEOPLE), default=0)
    if not for_staff or pots < 2:
        return ""
    return f"For {pots} pots: the amounts are for one of them."


def mixing_lines(plan: ClassPlan) -> Iterator[str]:
    """Say for the check list which lye is mixed ahead, and into which marked bottles it goes."""
    for lye in (one for one in plan.weighing.solutions if one.ahead):
        yield mixing_line(lye)
        for bottles in lye.bottles:
            yield _bottles(plan, lye, bottles)


def mixing_line(lye: LyeSolution) -> str:
    """Say how one solution is mixed: ready-mixed lye in one vessel for all, other lye in one for each pot; what is bought is got ready."""
    if lye.bought:
        return f"Have {grams(lye.solution)} of {solution_name(lye)} ready as it was bought, with its certificate and safety data sheet"
    alkalis = listed([f"{grams(mass)} {within(name)}" for name, mass in lye.alkalis])
    liquids = listed([f"{grams(mass)} cold {within(name)}" for name, mass in lye.liquids])
    often = "" if lye.times == 1 else f", {lye.times}{NBSP}times, each for one pot"
    return f"Mix {grams(lye.solution)} of {solution_name(lye)}{often}: {alkalis}, stirred slowly into {liquids}"


def _bottles(plan: ClassPlan, lye: LyeSolution, bottles: Bottles) -> str:
    each = f"{'at least ' if lye.ready_mixed else ''}{grams(bottles.each)} in {'it' if bottles.number == 1 else 'each'}"
    made_up = "" if lye.ready_mixed else ", made up to that weight with cold water when cool"
    whose = whose_bottles(plan, bottles)
    marks = [solution_name(lye), *([f"for {within(lye.recipe)}"] if len(plan.made) > 1 else []), LYE_MARK, whose, "the date"]
    return f"{counted(bottles.number, 'bottle', 'bottles')} of {solution_name(lye)}, {each}{made_up}, marked: {', '.join(marks)}"


def whose_bottles(plan: ClassPlan, bottles: Bottles) -> str:
    """Say for which pots some bottles are."""
    match bottles.purpose:
        case "group":
            return numbers(range(1, bottles.number + 1), group_word(plan))
        case "student":
            return numbers(range(1, bottles.number + 1), "student")
        case "teacher":
            return "the teacher's pot"
    return "the pot of the class"


def cup_lines(plan: ClassPlan) -> Iterator[str]:
    """Say for the check list which cups are weighed ahead.

    One batch that staff make whole is weighed as its part says; cups are for what others find at their place.
    """
    for task in _in_cups(plan.weighing.tasks):
        each = f"{grams(task.each)} in {'it' if task.pots == 1 else 'each'}"
        if task.caustic:
            cups = counted(task.pots, "lidded cup", "lidded cups")
            yield f"{cups} of dry {within(task.ingredient)}, {each}, marked: its name, {LYE_MARK}, its weight"
        else:
            yield f"{counted(task.pots, 'cup', 'cups')} of {within(task.ingredient)}, {each}, marked with name and weight"


def _in_cups(tasks: Iterable[WeighingTask]) -> Iterator[WeighingTask]:
    return (task for task in tasks if task.found_as is FoundAs.CUP and (task.part is None or task.purpose in FOR_PEOPLE))
