"""One recipe at one size to a batch sheet."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.model.dose.limit import Rules
from builder.model.label.labelling import ANY_REGION, Labelling
from builder.model.recipe.column import Column, Line
from builder.model.recipe.figure import Figure
from builder.model.recipe.filling import Portions
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.recipe.recipe import Recipe
from builder.model.recipe.size import PeopleSize, Size
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.recipe.working import Given, Working
from builder.model.remembered import remembered
from builder.model.studio import Scale
from builder.reckon.dose.counting import reckon_asked, reckon_towards, scents_without_limit
from builder.reckon.dose.doses import reckon_doses
from builder.reckon.formula.emulsions import reckon_emulsion
from builder.reckon.formula.heat import dissolving, reckon_cooling
from builder.reckon.label.true_soap import is_true_soap
from builder.reckon.label.variants import reckon_variants
from builder.reckon.lye.lye import LyeBasis
from builder.reckon.lye.lye_workings import check_workings, need_workings
from builder.reckon.lye.soap import bar_of, reckon_soap
from builder.reckon.recipe.columns import CUP, reckon_column, reckon_lines
from builder.reckon.recipe.formula import Formula, reckon_formula
from builder.reckon.recipe.portions import reckon_portions
from builder.reckon.recipe.scaling import asks_for_containers, reckon_total
from builder.reckon.recipe.smallest import smallest_batch
from builder.reckon.recipe.top_ups import reckon_top_ups
from builder.reckon.recipe.volume import reckon_volume

Cards = Mapping[str, Ingredient]
NO_RULES = Rules()


@dataclass(frozen=True)
class Weighings:
    """The scales of one place, by the unit in which they read, grams first. `from_solid`: lye is mixed from the solid there."""

    columns: tuple[tuple[Scale, ...], ...]
    from_solid: bool = False

    @property
    def grams(self) -> tuple[Scale, ...]:
        """Give the scales that read in grams."""
        return self.columns[0]


def weighings(scales: Sequence[Scale], *, from_solid: bool = False) -> Weighings:
    """Sort scales by the unit in which they read, grams first."""
    units = sorted({scale.unit for scale in scales}, key=lambda unit: (unit != "g", unit))
    return Weighings(tuple(tuple(scale for scale in scales if scale.unit == unit) for unit in units), from_solid)


def reckon_batch(
    recipe: Recipe,
    product_kind: Product,
    size: Size,
    cards: Cards,
    scales: Weighings,
    constants: Mapping[str, Figure],
    rules: Rules = NO_RULES,
    labelling: Labelling = ANY_REGION,
) -> WorkedBatch:
    """Work out one batch: exact lines, a column of weighings per unit, portions, doses, ingredient lists, what a soap becomes, workings."""
    rules = rules.for_use(recipe.goes_on(product_kind.used_on), recipe.youngest_user)
    cards = _as_used(recipe, cards)
    formula = reckon_formula(recipe, cards, from_solid=scales.from_solid, cooked=product_kind.cooked)
    total, sizing = reckon_total(recipe, formula, size)
    needed = total if asks_for_containers(size) else NO_MASS
    lines, columns, raised = _weigh(formula, total, needed, scales, Mass(constants[CUP].typical))
    columns = tuple(replace(column, top_ups=reckon_top_ups(recipe, column)) for column in columns)
    portions = reckon_portions(columns[0].total, recipe.fill, size)[0]
    doses, dosing = reckon_doses(recipe, product_kind, columns, cards, scales.grams, constants, rules)
    workings = [*formula.workings, sizing]
    if raised:
        given = (Given("asked for", total.grams, "g"), Given("raised by", raised.grams, "g"))
        workings.append(Working("raised for rounding", recipe.name, given, (total + raised).grams, "g"))
    if formula.lye:
        workings += need_workings(lines, formula.lye)
    emulsion = reckon_emulsion(lines)
    workings += [*_column_workings(columns, portions, formula.lye), *(emulsion.workings if emulsion else ()), *dosing]
    soap = reckon_soap(recipe, columns[0], formula.lye, constants) if formula.lye and columns[0].lye else None
    variants = reckon_variants(recipe, product_kind, columns[0], soap, doses, cards, labelling)
    sheet = WorkedBatch(
        recipe=recipe,
        product=product_kind,
        size=size,
        lines=lines,
        columns=columns,
        portions=portions,
        doses=doses,
        variants=variants,
        workings=tuple(workings),
        soap=soap,
        smallest=smallest_batch(formula, scales.columns, constants),
        emulsion=emulsion,
        is_true_soap=is_true_soap(product_kind, columns[0], soap, cards),
        volume=reckon_volume(recipe, columns[0].total, constants),
        dissolving=dissolving(columns[0], constants),
        cools=reckon_cooling(recipe, columns[0], constants),
    )
    return _judged(sheet, cards, rules)


@remembered(256)
def _as_used(recipe: Recipe, cards: Cards) -> Cards:
    """Give the cards as the recipe uses them: a colour that is there for something else is declared as what it is."""
    others = {cards[name.key].key for name in recipe.not_for_colour if name.key in cards}
    if not others:
        return cards
    return {key: replace(card, declared_as=DeclaredAs.INGREDIENT) if card.key in others else card for key, card in cards.items()}


def _judged(batch: WorkedBatch, cards: Cards, rules: Rules) -> WorkedBatch:
    """Give a batch with what limits have to say of it."""
    return replace(
        batch,
        towards=reckon_towards(batch, cards, rules),
        asked=reckon_asked(batch, cards, rules),
        unlimited=scents_without_limit(batch, cards, rules),
    )


def fill_others(
    batch: WorkedBatch,
    cards: Cards,
    scales: Weighings,
    constants: Mapping[str, Figure],
    rules: Rules = NO_RULES,
    labelling: Labelling = ANY_REGION,
) -> tuple[WorkedBatch, ...]:
    """Give a batch once more for each other container that it fills, with the portions and the doses of that one."""
    if not isinstance(batch.size, PeopleSize):
        return ()
    rules = rules.for_use(batch.recipe.goes_on(batch.product.used_on), batch.recipe.youngest_user)
    cards = _as_used(batch.recipe, cards)
    portions = reckon_portions(batch.grams.total, batch.recipe.fill, batch.size)
    found = []
    for (fill, _), portion in zip(batch.size.also, portions[1:], strict=True):
        recipe = replace(batch.recipe, fill=fill)
        doses, dosing = reckon_doses(recipe, batch.product, batch.columns, cards, scales.grams, constants, rules)
        filled = replace(
            batch,
            recipe=recipe,
            portions=portion,
            doses=doses,
            variants=reckon_variants(recipe, batch.product, batch.grams, batch.soap, doses, cards, labelling),
            workings=dosing,
            soap=bar_of(batch.soap, recipe) if batch.soap else None,
        )
        found.append(_judged(filled, cards, rules))
    return tuple(found)


def _weigh(formula: Formula, total: Mass, needed: Mass, scales: Weighings, cup: Mass) -> tuple[tuple[Line, ...], tuple[Column, ...], Mass]:
    """Weigh out in every unit; where rounding leaves less than the containers need, begin again from a little more."""
    raised = NO_MASS
    while True:
        lines = reckon_lines(formula, total + raised)
        columns = tuple(reckon_column(lines, formula, group, cup) for group in scales.columns)
        short = max((needed - column.total for column in columns), default=NO_MASS)
        if short <= NO_MASS:
            return lines, columns, raised
        raised += max(short, min(scale.division for group in scales.columns for scale in group))


def _column_workings(columns: tuple[Column, ...], portions: Portions, lye: LyeBasis | None) -> list[Working]:
    found = []
    for column in columns:
        for w in column.weighed:
            given = (Given("exact", w.line.exact.grams, "g"), Given("division", w.scale.division.grams, "g"))
            found.append(Working("rounded to the scale", w.line.name, given, w.mass.grams, "g"))
        if lye and column.lye:
            found += check_workings(column, lye)
    given = (Given("batch", columns[0].total.grams, "g"), Given("fill", portions.fill.grams, "g"))
    found.append(Working("portions", "containers", given, Fraction(portions.yields), ""))
    return found
