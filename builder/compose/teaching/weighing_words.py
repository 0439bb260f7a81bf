"""The weighing plan of a date in words: the only file that says who weighs what, for every document of the date alike."""

from collections.abc import Iterable, Iterator

from builder.compose.punctuation import labelled
from builder.compose.recipe.wording import NBSP, grams, listed, sentence, shortest, weighed, within
from builder.compose.teaching.supervision_words import group_word, numbers, place_kind
from builder.compose.views.running import CupRow
from builder.model.lye.lye_solution import Bottles, LyeSolution
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part
from builder.model.teaching.pot_for import PotFor
from builder.model.teaching.weighing_plan import FoundAs, Weigher, WeighingTask
from builder.rules.pot_words import POT_WORDS
from builder.words.say import message, say, say_count

AT_THE_BENCH = {
    Weigher.TEACHER: message("{ingredient}: the teacher weighs it"),
    Weigher.AFTER: message("{ingredient}: staff weigh it after the class"),
}
FOR_PEOPLE = (PotFor.GROUP, PotFor.STUDENT)
# What a vessel with lye has to say; its hazard statement is that of H314.
LYE_MARK = message("Danger: causes severe skin burns and eye damage")


def solution_name(lye: LyeSolution) -> str:
    """Name a solution by what is dissolved in it and its strength, as it stands on the bottle: `sodium hydroxide solution, 33 %`."""
    alkalis, strength = listed([within(name) for name, _ in lye.alkalis]), f"{shortest(lye.strength * 100, 1)}{NBSP}%"
    return say("{alkalis} solution, {strength}", alkalis=alkalis, strength=strength)


def weighing_rows(plan: ClassPlan) -> tuple[CupRow, ...]:
    """Return for every weighing who does it in which part, and how often."""
    rows: dict[tuple[str, str, str], list[str]] = {}
    for task in plan.weighing.tasks:
        often = say("once") if task.pots == 1 else say_count("{count}\u00a0time", "{count}\u00a0times", task.pots)
        key = (say(POT_WORDS[task.purpose].beside_recipe, recipe=task.recipe), who_weighs(plan, task), often)
        rows.setdefault(key, []).append(f"{say(task.ingredient)} {weighed(task.weighed, 'g')}")
    return tuple(CupRow(recipe, where, often, "; ".join(what)) for (recipe, where, often), what in rows.items())


def who_weighs(plan: ClassPlan, task: WeighingTask) -> str:
    """Return in words who does one weighing, and in which part."""
    who = say("ahead") if task.part is None else _weigher(plan, task)
    if task.found_as is FoundAs.DISSOLVED:
        who = say("{who}, dissolved", who=who)
    if task.found_as is FoundAs.BOTTLE:
        who = say("{who}, out of its marked bottle", who=who)
    if task.part is None:
        return say("{who}: no part of the lesson names it", who=who)
    return labelled(who, task.part.title)


def _weigher(plan: ClassPlan, task: WeighingTask) -> str:
    match task.weigher:
        case Weigher.AHEAD:
            return say("ahead")
        case Weigher.TEACHER:
            staff = task.purpose is PotFor.TEACHER and task.part and task.part.by_hand
            return say("staff") if staff else say("the teacher")
        case Weigher.AFTER:
            return say("staff, after the class")
        case Weigher.ONE_GROUP:
            return say("{group}, once for all", group=numbers((task.group,), place_kind(plan)) if task.group else group_word(plan))
        case Weigher.TOGETHER:
            return say(POT_WORDS[task.purpose].together)
    return say(POT_WORDS[task.purpose].who)


def at_the_bench(task: WeighingTask, ingredient: str) -> str:
    """Return for a bench card what is done there with an ingredient: its name alone where the people weigh it themselves."""
    if task.found_as is FoundAs.BOTTLE:
        return say("{ingredient}: out of its marked bottle", ingredient=ingredient)
    if task.found_as is FoundAs.CUP:
        if task.caustic:
            return say("{ingredient}: DANGER, dry lye in its lidded, marked cup", ingredient=ingredient)
        return say("{ingredient}: ready in a marked cup", ingredient=ingredient)
    by_staff = AT_THE_BENCH.get(task.weigher)
    return say(by_staff, ingredient=ingredient) if by_staff else ingredient


def solution_at_the_bench(lye: LyeSolution) -> str:
    """Return the same for a solution that staff make of the solid: it is poured whole, and nobody at the bench weighs dry lye."""
    name = sentence(solution_name(lye))
    if lye.ahead:
        return say("{solution}: all that is in its marked bottle", solution=name)
    return say("{solution}: the teacher makes it", solution=name)


def pots_note(plan: ClassPlan, part: Part, *, for_staff: bool) -> str:
    """Return in words how often the amounts of a part are weighed, and by whom; empty where its heading says enough."""
    tasks = plan.weighing.in_part(part)
    group = plan.group_that_does(part)
    if group is not None:
        who = sentence(numbers((group,), place_kind(plan)))
        return say("{group} does this once, for all: there is one pot.", group=who)
    if any(task.purpose is PotFor.CLASS and task.weigher in (Weigher.TOGETHER, Weigher.ONE_GROUP) for task in tasks):
        return say("This is weighed once, for all: there is one pot.")
    pots = max((task.pots for task in tasks if task.purpose in FOR_PEOPLE), default=0)
    if not for_staff or pots < 2:
        return ""
    return say_count("For {count} pot: the amounts are for one of them.", "For {count} pots: the amounts are for one of them.", pots)


def weighed_in(plan: ClassPlan, part: Part) -> Iterator[str]:
    """Yield in words what is weighed in a part: once for all pots that take the same, and apart from them for the teacher's own pot."""
    whose: dict[tuple[PotFor, int], list[str]] = {}
    for task in plan.weighing.in_part(part):
        whose.setdefault((task.purpose, task.pots), []).append(f"{say(task.ingredient)} {weighed(task.weighed, 'g')}")
    pots_of: dict[str, list[tuple[PotFor, int]]] = {}
    for pots, amounts in whose.items():
        pots_of.setdefault(", ".join(amounts), []).append(pots)
    for what, taking in pots_of.items():
        count = sum(pots for _, pots in taking)
        if count > 1:
            yield say_count("{count}\u00a0time: {what}", "{count}\u00a0times: {what}", count, what=what)
        elif taking[0][0] is PotFor.TEACHER and len(pots_of) > 1:
            yield say("For the teacher's pot: {what}", what=what)
        else:
            yield what


def mixing_lines(plan: ClassPlan) -> Iterator[str]:
    """Yield for the check list which lye is mixed ahead, and into which marked bottles it goes."""
    for lye in (one for one in plan.weighing.solutions if one.ahead):
        yield mixing_line(lye)
        for bottles in lye.bottles:
            yield _bottles(plan, lye, bottles)


def mixing_line(lye: LyeSolution) -> str:
    """Return how one solution is mixed: ready-mixed lye in one vessel for all, other lye in one for each pot; bought lye is got ready."""
    if lye.bought:
        return say(
            "Have {weight} of {solution} ready as it was bought, with its certificate and safety data sheet",
            weight=grams(lye.solution),
            solution=solution_name(lye),
        )
    alkalis = listed([f"{grams(mass)} {within(name)}" for name, mass in lye.alkalis])
    liquids = listed([say("{weight} cold {liquid}", weight=grams(mass), liquid=within(name)) for name, mass in lye.liquids])
    said = {"weight": grams(lye.solution), "solution": solution_name(lye), "alkalis": alkalis, "liquids": liquids}
    if lye.times == 1:
        return say("Mix {weight} of {solution}: {alkalis}, stirred slowly into {liquids}", **said)
    return say_count(
        "Mix {weight} of {solution}, {count}\u00a0time, for one pot: {alkalis}, stirred slowly into {liquids}",
        "Mix {weight} of {solution}, {count}\u00a0times, each for one pot: {alkalis}, stirred slowly into {liquids}",
        lye.times,
        **said,
    )


def _bottles(plan: ClassPlan, lye: LyeSolution, bottles: Bottles) -> str:
    name, whose = solution_name(lye), whose_bottles(plan, bottles)
    recipe = [say("for {recipe}", recipe=within(lye.recipe))] if len(plan.made) > 1 else []
    marks = [name, *recipe, say(LYE_MARK), whose, say("the date")]
    said = {"solution": name, "weight": grams(bottles.each), "marks": ", ".join(marks)}
    if lye.ready_mixed:
        return say_count(
            "{count}\u00a0bottle of {solution}, at least {weight} in it, marked: {marks}",
            "{count}\u00a0bottles of {solution}, at least {weight} in each, marked: {marks}",
            bottles.number,
            **said,
        )
    return say_count(
        "{count}\u00a0bottle of {solution}, {weight} in it, made up to that weight with cold water when cool, marked: {marks}",
        "{count}\u00a0bottles of {solution}, {weight} in each, made up to that weight with cold water when cool, marked: {marks}",
        bottles.number,
        **said,
    )


def whose_bottles(plan: ClassPlan, bottles: Bottles) -> str:
    """Return in words for which pots some bottles are."""
    match bottles.purpose:
        case "group":
            return numbers(range(1, bottles.number + 1), place_kind(plan))
        case "student":
            return numbers(range(1, bottles.number + 1), "student")
        case "teacher":
            return say("the teacher's pot")
    return say("the pot of the class")


def scale_lines(plan: ClassPlan) -> Iterator[str]:
    """Yield for the check list how many scales of each kind stand ready: one where staff or one group weigh, one a bench that weighs."""
    benches: dict[str, int] = {}
    for task in plan.weighing.tasks:
        at = plan.groups if task.weigher is Weigher.EACH_POT and task.purpose in FOR_PEOPLE else 1
        name = say(task.weighed.scale.name)
        benches[name] = max(at, benches.get(name, 1))
    for scale in (one.mixed_on for one in plan.weighing.solutions if one.mixed_on):
        benches.setdefault(say(scale.name), 1)
    if benches:
        counted = ", ".join(f"{number}\u00a0× {within(name)}" for name, number in benches.items())
        yield say("Scales for the batches, one at each bench that weighs: {scales}", scales=counted)


def cup_lines(plan: ClassPlan) -> Iterator[str]:
    """Yield for the check list which cups are weighed ahead: where a part of the lesson does, its steps say which of it share a cup.

    One batch that staff make whole is weighed as its part says; cups are for what others find at their place.
    """
    by_part: dict[tuple[str, int], list[str]] = {}
    for task in _in_cups(plan.weighing.tasks):
        if task.part is None or task.caustic:
            yield _cups(task)
        else:
            by_part.setdefault((task.part.title, task.pots), []).append(f"{within(task.ingredient)} {weighed(task.weighed, 'g')}")
    for (title, pots), amounts in by_part.items():
        yield say_count(
            "{part}, {count}\u00a0time: {amounts}. Mark each cup with what is in it, and how much",
            "{part}, {count}\u00a0times: {amounts}. Mark each cup with what is in it, and how much",
            pots,
            part=title,
            amounts=", ".join(amounts),
        )


def _cups(task: WeighingTask) -> str:
    """Return how many cups of one thing are weighed ahead, and how they are marked."""
    said = {"ingredient": within(task.ingredient), "weight": weighed(task.weighed, "g")}
    if task.caustic:
        return say_count(
            "{count}\u00a0lidded cup of dry {ingredient}, {weight} in it, marked: its name, {mark}, its weight",
            "{count}\u00a0lidded cups of dry {ingredient}, {weight} in each, marked: its name, {mark}, its weight",
            task.pots,
            mark=say(LYE_MARK),
            **said,
        )
    return say_count(
        "{count}\u00a0cup or jug of {ingredient}, {weight} in it, marked with name and weight",
        "{count}\u00a0cups or jugs of {ingredient}, {weight} in each, marked with name and weight",
        task.pots,
        **said,
    )


def _in_cups(tasks: Iterable[WeighingTask]) -> Iterator[WeighingTask]:
    return (task for task in tasks if task.found_as is FoundAs.CUP and (task.part is None or task.purpose in FOR_PEOPLE))
