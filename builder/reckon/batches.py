"""One recipe at one size to a batch sheet."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from builder.model.batch_sheet import BatchSheet, Column, Dose, Given, Line, Portions, Size, Variant, Working
from builder.model.figure import Figure
from builder.model.ingredient import Ingredient
from builder.model.product import Product
from builder.model.quantity import NO_MASS, Mass
from builder.model.recipe import Recipe
from builder.model.studio import Scale
from builder.reckon.columns import CUP, reckon_column, reckon_lines
from builder.reckon.doses import reckon_doses
from builder.reckon.formula import Formula, reckon_formula
from builder.reckon.hlb import reckon_emulsion
from builder.reckon.ingredient_list import list_ingredients
from builder.reckon.lye import LyeBasis
from builder.reckon.lye_workings import check_workings, need_workings
from builder.reckon.portions import reckon_portions
from builder.reckon.scaling import asked_for, reckon_total
from builder.reckon.smallest import smallest_batch
from builder.reckon.soap import reckon_soap

Cards = Mapping[str, Ingredient]


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
    recipe: Recipe, product_kind: Product, size: Size, cards: Cards, scales: Weighings, constants: Mapping[str, Figure]
) -> BatchSheet:
    """Work out one batch: exact lines, a column of weighings per unit, portions, doses, ingredient lists, what a soap becomes, workings."""
    formula = reckon_formula(recipe, cards, from_solid=scales.from_solid)
    total, sizing = reckon_total(recipe, formula, size)
    wanted, kept_back = asked_for(size)
    needed = total if wanted is not None else NO_MASS
    lines, columns, raised = _weigh(formula, total, needed, scales, Mass(constants[CUP].typical))
    portions = reckon_portions(columns[0].total, recipe.fill.weight, wanted, kept_back)
    doses = reckon_doses(recipe, cards, scales.grams)
    workings = [*formula.workings, sizing]
    if raised:
        given = (Given("asked for", total.grams, "g"), Given("raised by", raised.grams, "g"))
        workings.append(Working("raised for rounding", recipe.name, given, (total + raised).grams, "g"))
    if formula.lye:
        workings += need_workings(lines, formula.lye)
    workings += _column_workings(columns, portions, formula.lye)
    emulsion = reckon_emulsion(lines)
    workings += emulsion.workings if emulsion else ()
    variants = _variants(columns[0], doses, cards)
    return BatchSheet(
        recipe=recipe,
        product=product_kind,
        size=size,
        lines=lines,
        columns=columns,
        portions=portions,
        doses=doses,
        variants=variants,
        workings=tuple(workings),
        soap=reckon_soap(recipe, columns[0], formula.lye, constants) if formula.lye and columns[0].lye else None,
        smallest=smallest_batch(formula, scales.grams, constants),
        emulsion=emulsion,
    )


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


def _variants(column: Column, doses: tuple[Dose, ...], cards: Cards) -> tuple[Variant, ...]:
    """Give one variant for each combination of what students may choose; a dose can be anything up to its most.

    A batch in which everything rounds to nothing has none: a finding stops it.
    """
    if not column.total:
        return ()
    base = []
    for w in column.weighed:
        share = w.mass / column.total
        if w.line.strength is None:
            base.append((w.line.ingredient, share, share))
        else:
            base.append((w.line.ingredient, share * w.line.strength, share * w.line.strength))
            base.append((cards["water"], share * (1 - w.line.strength), share * (1 - w.line.strength)))
    found = []
    for chosen in product(*(dose.options for dose in doses)):
        added = [(cards[name.casefold()], Fraction(0), dose.share) for dose, name in zip(doses, chosen, strict=True) if name is not None]
        whats = tuple((dose.what, name) for dose, name in zip(doses, chosen, strict=True))
        found.append(Variant(whats, list_ingredients([*base, *added])))
    return tuple(found)
