"""More oil, liquid or powder in a ready-made base than it takes up, with what students may add.

A base of the studio's own whose card says nothing of that is judged by what such bases usually take.

Decided: a base in a scrub is not looked at. Why: it only binds the grains and makes them rinse off, and nobody lathers with it.
"""

from collections.abc import Callable, Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.figure_words import DEFER, range_of
from builder.check.places import place_of_choice
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.hazard import Hazard
from builder.model.place import Place
from builder.model.recipe.column import Weighed
from builder.model.recipe.ingredient import Ingredient, MixesWith
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.rules.basis import basis_of
from builder.words.fold import fold
from builder.words.percent import percent

_POWDERS = (
    IngredientKind.CLAY,
    IngredientKind.STARCH,
    IngredientKind.GRAIN,
    IngredientKind.EXFOLIANT,
    IngredientKind.HERB,
    IngredientKind.MILK,
)
_BASES = (IngredientKind.SOAP_BASE, IngredientKind.LOTION_BASE)
_SCRUB = "scrub"
Counts = Callable[[Ingredient], bool]


@rule_on(BATCH, FindingKind("base-overloaded", CAUTION, "A ready-made base is given more oil, liquid or powder than it takes up."))
def find_overloaded_bases(batch: Batch) -> Iterator[BatchFinding]:
    """Compare the oils, liquids and powders of a batch, and the most that students may add of them, with what its base takes."""
    if batch.worked.product.is_any_of((_SCRUB,)):
        return
    for base in batch.worked.grams.weighed:
        if base.line.ingredient.kind in _BASES and base.mass:
            soap = base.line.ingredient.kind is IngredientKind.SOAP_BASE
            oil = "it turns soft, sweats and loses its lather" if soap else "its emulsifier does not hold it, and it parts"
            liquid = "it stays soft and sweats, and" if soap else "it thins, and"
            yield from _judge(batch, base, _is_oil, "takes oil", "oil and butter", oil)
            yield from _judge(batch, base, _is_liquid, "takes liquid", "liquid", f"{liquid} its preservative is no longer enough")
            yield from _judge(batch, base, _is_powder, "takes powder", "powder", "it sinks to the bottom, clumps and scratches")


def _is_oil(card: Ingredient) -> bool:
    return card.is_oily


def _is_liquid(card: Ingredient) -> bool:
    return card.counts_as.is_watery


def _is_powder(card: Ingredient) -> bool:
    return (card.kind in _POWDERS or (Hazard.DUST in card.hazards and card.mixes_with is MixesWith.NEITHER)) and not _is_liquid(card)


def _judge(batch: Batch, base: Weighed, counts: Counts, figure: str, what: str, then: str) -> Iterator[BatchFinding]:
    card = base.line.ingredient
    takes = card.figure(figure) or batch.constants.get(f"{card.kind} {figure}")
    added = list(_added(batch, base, counts))
    share = sum((one for _, one in added), Fraction(0))
    if takes and share * 100 > takes.highest:
        yield batch.caution(
            "base-overloaded",
            added[0][0],
            f"{card.name} takes up {range_of(takes, '%')} of its weight in {what} ({basis_of(takes)}); beyond that {then}.",
            f"Use less, or choose a base that is made with it. {DEFER}",
            f"{batch.name} ({percent(share)})",
        )


def _added(batch: Batch, base: Weighed, counts: Counts) -> Iterator[tuple[Place, Fraction]]:
    """Return what counts with its place, in parts of the base: what is weighed for the batch, and of each choice its greatest option."""
    worked = batch.worked
    for weighed in worked.grams.weighed:
        if counts(weighed.line.ingredient):
            yield weighed.line.place, weighed.mass / base.mass
    for dose in batch.filling.doses:
        most = max(
            (one.mass / batch.filling.portions.fill for one in dose.each if counts(batch.cards[fold(one.option)])), default=Fraction(0)
        )
        if most:
            yield place_of_choice(dose.what, worked.recipe), most * (worked.grams.total / base.mass)
