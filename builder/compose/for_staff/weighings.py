"""All weighings of a date in one table, in the order of its batches: lye stands in a frame."""

from collections.abc import Iterator
from dataclasses import replace

from builder.compose.recipe.batch_words import batch_title
from builder.compose.recipe.ingredient_tables import IN_PARTS, PhaseRows, phases_of, row_name
from builder.compose.recipe.wording import amount, listed, reading, sentence, weighed, weighed_together
from builder.compose.teaching.weighing_words import solution_name, who_weighs
from builder.compose.views.for_staff import PotView, WeighGroup, WeighRow
from builder.model.recipe.column import Role, Weighed
from builder.model.teaching.class_plan import ClassPlan, MadeProduct, PlannedBatch
from builder.words.say import say


def pots_told_once(plan: ClassPlan, made: MadeProduct) -> Iterator[PotView]:
    """Yield the weighings of each planned batch of a product; where a later one weighs what the first does it is told with it.

    They differ in who weighs alone.
    """
    first, *others = (view_pot(plan, planned) for planned in made.batches)
    alike = [pot for pot in others if _amounts(pot) == _amounts(first)]
    titles = [first.title, *(say("{title}: the same", title=pot.title) for pot in alike)]
    yield replace(first, title=". ".join(titles))
    yield from (pot for pot in others if pot not in alike)


def _amounts(pot: PotView) -> list[tuple[str, str]]:
    return [(row.name, row.weight) for group in pot.groups for row in group.rows]


def view_mixed(plan: ClassPlan, made: MadeProduct) -> Iterator[PotView]:
    """Yield the weighings of each solution that is mixed for all pots, alkali first."""
    for lye in plan.weighing.solutions:
        if lye.mixed_on and lye.recipe == made.batch.recipe.name:
            mixed = [*((one, True) for one in lye.alkalis), *((one, False) for one in lye.liquids)]
            scale, scales = say(lye.mixed_on.name), (lye.mixed_on,)
            rows = tuple(WeighRow(say(name), amount(mass, scales, "g"), scale, "", is_lye=is_lye) for (name, mass), is_lye in mixed)
            title = say("Lye, mixed once for all batches")
            yield PotView(title, (WeighGroup(sentence(solution_name(lye)), "", "", rows, amount(lye.solution, scales, "g"), ""),), "")


def view_pot(plan: ClassPlan, planned: PlannedBatch) -> PotView:
    """Return the weighings of one planned batch."""
    batch = planned.batch
    who = {id(task.weighed.line): who_weighs(plan, task) for task in plan.weighing.of(batch.recipe.name, planned.purpose)}
    groups = tuple(_group(phase, who) for phase in phases_of(batch))
    return PotView(batch_title(planned), groups, weighed_together(batch.grams.weighed, "g"))


def scales_used(plan: ClassPlan) -> str:
    """Return in words how each scale of a date reads, the coarser first."""
    scales = {w.scale for made in plan.made for planned in made.batches for row in planned.batch.rows for w in row[:1]}
    scales |= {lye.mixed_on for lye in plan.weighing.solutions if lye.mixed_on}
    named = (f"{say(scale.name)} {reading(scale)}" for scale in sorted(scales, key=lambda one: (-one.division.grams, one.name)))
    return listed(list(dict.fromkeys(named)))


def _group(phase: PhaseRows, who: dict[int, str]) -> WeighGroup:
    mine = [row[0] for row in phase.rows]
    whose = [who.get(id(w.line), "") for w in mine]
    common = max(whose, key=whose.count) if all(whose) else ""  # Of the first that is named most often.
    told = {line: "" if one == common else one for line, one in who.items()}
    rows = tuple(
        WeighRow(row_name(w), weighed(w, "g"), _scale(w), told.get(id(w.line), ""), is_lye=w.line.role is Role.ALKALI) for w in mine
    )
    together = weighed_together(mine, "g") if len(rows) > 1 else ""
    return WeighGroup(phase.title, phase.treatment, common, rows, together, phase.note, phase.apart)


def _scale(w: Weighed) -> str:
    return say(w.scale.name if w.fits else IN_PARTS)
