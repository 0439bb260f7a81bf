"""The ways to finish a portion: one variant for each combination of what students may choose, with its ingredient list."""

from fractions import Fraction
from itertools import product

from builder.model.dose.dose import Dose
from builder.model.label.ingredient_list import Variant
from builder.model.recipe.column import Column
from builder.model.recipe.ingredient import Cards
from builder.model.recipe.recipe import Fill, ListedAs
from builder.model.recipe.worked_batch import WorkedBatch
from builder.reckon.label.ingredient_list import list_ingredients
from builder.reckon.label.scent_allergens import CardAmount
from builder.reckon.label.soap_as_made import soap_as_made
from builder.reckon.recipe.workplace import Workplace
from builder.words.fold import fold


def reckon_variants(batch: WorkedBatch, fill: Fill, doses: tuple[Dose, ...], here: Workplace) -> tuple[Variant, ...]:
    """Return the variants; a dose can be anything up to its most. A batch in which everything rounds to nothing has none."""
    recipe, column, cards = batch.recipe, batch.grams, here.cards
    if not column.total:
        return ()
    if recipe.listed is ListedAs.MADE and batch.soap:
        base = soap_as_made(batch.soap, column, batch.product, cards, recipe.cure.loses.fraction if recipe.cure else None)
    else:
        base = _as_weighed(column, cards)
    found = []
    most = {(dose.what, one.option): one.mass / fill.weight for dose in doses for one in dose.each}
    for chosen in product(*(dose.offered for dose in doses)):
        whats = tuple((dose.what, name) for dose, name in zip(doses, chosen, strict=True))
        added = [(cards[fold(name)], Fraction(0), most[what, name]) for what, name in whats if name is not None]
        found.append(Variant(whats, list_ingredients([*base, *added], here.labelling, batch.product.contact)))
    return tuple(found)


def _as_weighed(column: Column, cards: Cards) -> tuple[CardAmount, ...]:
    """Return what was put in as shares of the batch; a ready-mixed lye is alkali and water."""
    base = []
    for w in column.weighed:
        share = w.mass / column.total
        of_solid = w.line.strength if w.line.strength is not None else Fraction(1)
        base.append((w.line.ingredient, share * of_solid, share * of_solid))
        if of_solid < 1:
            base.append((cards["water"], share * (1 - of_solid), share * (1 - of_solid)))
    return tuple(base)
