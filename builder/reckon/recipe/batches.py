"""One recipe at one size to a worked batch: what goes into the pot and what becomes of it, then what fills each kind of container.

Decided: a batch for people is raised by what rounding would leave short. Why: no last cup is short by a tenth of a gram.
"""

from dataclasses import replace
from fractions import Fraction

from builder.model.recipe.column import Column, Line
from builder.model.recipe.filling import Filling, Portions
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.recipe.recipe import Fill, Recipe
from builder.model.recipe.size import ContainersSize, MouldSize, OilsSize, PeopleSize, Size, ToFill, TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.recipe.working import Given, SumRule, Working
from builder.model.remembered import remembered
from builder.reckon.dose.counting import reckon_asked, reckon_towards, scents_without_limit
from builder.reckon.dose.doses import reckon_doses
from builder.reckon.formula.emulsions import reckon_emulsion
from builder.reckon.formula.heat import dissolving, reckon_cooling
from builder.reckon.label.true_soap import is_true_soap
from builder.reckon.label.variants import reckon_variants
from builder.reckon.lye.lye import LyeBasis
from builder.reckon.lye.lye_workings import check_workings, need_workings
from builder.reckon.lye.soap import reckon_soap
from builder.reckon.recipe.columns import reckon_column, reckon_lines
from builder.reckon.recipe.formula import Formula, reckon_formula
from builder.reckon.recipe.portions import reckon_portions
from builder.reckon.recipe.scaling import asks_for_containers, reckon_total
from builder.reckon.recipe.smallest import smallest_batch
from builder.reckon.recipe.top_ups import reckon_top_ups
from builder.reckon.recipe.volume import reckon_volume
from builder.reckon.recipe.weighable import readings_of, weighable_recipe, weighable_size
from builder.reckon.recipe.workplace import Workplace


def reckon_batch(recipe: Recipe, kind: Product, size: Size, place: Workplace) -> WorkedBatch:
    """Work out one batch: exact lines, a column of weighings for each unit, what a soap becomes, its fillings, workings."""
    fills = tuple(one.fill for one in size.to_fill) if isinstance(size, PeopleSize) else ()
    return _reckon(recipe, kind, _same(size, *fills), place)


@remembered(512, TotalSize, OilsSize, ContainersSize, MouldSize, PeopleSize)
def _same(size: Size, *fills: Fill) -> Size:  # noqa: ARG001  fills with other places in the file are others
    """Return one value for all sizes that are equal and fill the very same containers."""
    return size


@remembered(256)
def _reckon(recipe: Recipe, kind: Product, size: Size, place: Workplace) -> WorkedBatch:
    here = place.making(recipe, kind)
    recipe, size = weighable_recipe(recipe, place), weighable_size(size, place)
    constants = here.constants
    formula = reckon_formula(recipe, here.cards, from_solid=here.from_solid, cooked=kind.cooked)
    total, sizing = reckon_total(recipe, formula, size)
    needed = total if asks_for_containers(size) else NO_MASS
    lines, columns, raised = _weigh(formula, total, needed, here)
    columns = tuple(
        replace(column, top_ups=reckon_top_ups(recipe, column, group, here.vessel))
        for column, group in zip(columns, here.columns, strict=True)
    )
    divided = reckon_portions(columns[0].total, recipe.fill, size)
    workings = [*formula.workings, sizing]
    if raised:
        given = (Given("asked for", total.grams, "g"), Given("raised by", raised.grams, "g"))
        workings.append(Working(SumRule.RAISED_FOR_ROUNDING, recipe.name, given, (total + raised).grams, "g"))
    if formula.lye:
        workings += need_workings(lines, formula.lye)
    emulsion = reckon_emulsion(lines)
    workings += [*_column_workings(columns, divided[0][1], formula.lye), *(emulsion.workings if emulsion else ())]
    soap = reckon_soap(columns[0], formula.lye, constants) if formula.lye and columns[0].lye else None
    pot = WorkedBatch(
        recipe=recipe,
        product=kind,
        size=size,
        lines=lines,
        columns=columns,
        workings=tuple(workings),
        soap=soap,
        smallest=smallest_batch(formula, here.columns, constants),
        emulsion=emulsion,
        is_true_soap=is_true_soap(kind, columns[0], soap, here.cards),
        volume=reckon_volume(recipe, columns[0].total, constants),
        dissolving=dissolving(columns[0], constants),
        cools=reckon_cooling(recipe, columns[0], constants),
    )
    fillings = tuple(_filling(pot, to_fill, portions, here) for to_fill, portions in divided)
    return replace(pot, fillings=fillings, unlimited=scents_without_limit(pot, here.cards, here.rules))


def _filling(pot: WorkedBatch, to_fill: ToFill, portions: Portions, here: Workplace) -> Filling:
    """Work out what goes into one kind of container: doses and ingredient lists, and what limits have to say of a portion."""
    fill = to_fill.fill
    doses, workings = reckon_doses(pot, fill, here)
    cure = pot.recipe.cure if pot.soap else None
    filling = Filling(
        fill=fill,
        portions=portions,
        each_student=to_fill.each_student,
        spare=to_fill.spare,
        doses=doses,
        variants=reckon_variants(pot, fill, doses, here),
        cured=fill.weight * (1 - cure.loses.fraction) if cure else None,
        readings=readings_of(portions, pot.grams.total, here),
        workings=workings,
    )
    return replace(
        filling,
        towards=reckon_towards(pot, filling, here.cards, here.rules),
        asked=reckon_asked(pot, filling, here.cards, here.rules),
    )


def _weigh(formula: Formula, total: Mass, needed: Mass, here: Workplace) -> tuple[tuple[Line, ...], tuple[Column, ...], Mass]:
    """Weigh out in every unit; where rounding leaves less than the containers need, begin again from a little more."""
    raised = NO_MASS
    while True:
        lines = reckon_lines(formula, total + raised)
        columns = tuple(reckon_column(lines, formula, group, here.vessel) for group in here.columns)
        short = max((needed - column.total for column in columns), default=NO_MASS)
        if short <= NO_MASS:
            return lines, columns, raised
        raised += max(short, min(scale.division for group in here.columns for scale in group))


def _column_workings(columns: tuple[Column, ...], portions: Portions, lye: LyeBasis | None) -> list[Working]:
    found = []
    for column in columns:
        for w in column.weighed:
            given = (Given("exact", w.line.exact.grams, "g"), Given("division", w.scale.division.grams, "g"))
            found.append(Working(SumRule.ROUNDED_TO_THE_SCALE, w.line.name, given, w.mass.grams, "g"))
        if lye and column.lye:
            found += check_workings(column, lye)
    given = (Given("batch", columns[0].total.grams, "g"), Given("fill", portions.fill.grams, "g"))
    found.append(Working(SumRule.PORTIONS, "containers", given, Fraction(portions.yields), ""))
    return found
