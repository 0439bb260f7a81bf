"""Whether a batch is proven to be soap and nothing else, as US law has it: most of what does not dry off is an alkali salt of fatty acids,
and the cleaning comes from that (21 CFR 701.20(a)(1), read).

Soap that is made with lye in the pot is, as far as what the soap becomes says so. A melted base is only where its declared list proves it:
every name of the list is that of a soap, of water or alcohol, or of an ingredient known here to be no detergent, and by its supplier's
shares the soaps are at least half of all that is not water or alcohol. That is one weighted sum: a half for each part of soap, minus a half
for each part of what else stays, and it must not fall below nothing whatever the list leaves open.

Decided: a melted base is nothing but soap only where its list proves it by one weighted sum; lye soap as far as what it becomes says so.
Why: 21 CFR 701.20(a); a guess would let colours and claims pass.
"""

from collections.abc import Mapping
from fractions import Fraction

from builder.model.lye.soap_made import SoapMade
from builder.model.recipe.column import Column
from builder.model.recipe.ingredient import Cards, CountsAs, Ingredient, without_brackets
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import NO_MASS
from builder.model.remembered import remembered
from builder.reckon.label.shares import least_of
from builder.words.fold import fold

_METALS = ("sodium", "potassium")
_DRIES_OFF = ("aqua", "water", "alcohol", "alcohol denat.", "isopropyl alcohol")
_IN_EVERYTHING = ("sodium chloride",)
_HALF, _NOTHING = Fraction(1, 2), Fraction(0)


def is_true_soap(product: Product, column: Column, soap: SoapMade | None, cards: Cards) -> bool:
    """Tell whether a batch as weighed is proven to be nothing but soap."""
    used = [weighed for weighed in column.weighed if weighed.mass]
    if any(weighed.line.ingredient.kind is IngredientKind.SURFACTANT for weighed in used):
        return False
    if product.made_with_lye and soap:
        made = sum((one.soap for one in soap.soaps), NO_MASS)
        return made.grams * 2 >= (soap.total - soap.water).grams
    if not any(weighed.line.ingredient.kind is IngredientKind.SOAP_BASE for weighed in used):
        return False
    known = _worths(cards)
    worths = [(weighed.mass.grams, _least_worth(weighed.line.ingredient, known)) for weighed in used]
    return all(worth is not None for _, worth in worths) and sum(grams * (worth or _NOTHING) for grams, worth in worths) >= 0


@remembered(2)
def _worths(cards: Cards) -> dict[str, Fraction]:
    """Return what one part of each known name is worth for the proof; no detergent is among them."""
    named = [(card, [fold(without_brackets(name)) for name in card.label_name.inci]) for card in cards.values() if card.label_name]
    detergents = {name for card, names in named if card.kind is IngredientKind.SURFACTANT for name in names} - set(_IN_EVERYTHING)
    others = {name for card, names in named if card.counts_as is not CountsAs.BASE for name in names} - detergents
    soaps = {
        fold(f"{metal} {card.saponified_as}") for card, _ in named if card.saponified_as and card.counts_as.is_oil for metal in _METALS
    }
    return dict.fromkeys(others, -_HALF) | dict.fromkeys(soaps, _HALF) | dict.fromkeys(_DRIES_OFF, _NOTHING)


def _least_worth(card: Ingredient, known: Mapping[str, Fraction]) -> Fraction | None:
    """Return the least that one part of a card is worth; None where its list has a name that is not known to be no detergent."""
    names = [fold(without_brackets(name)) for name in card.label_name.inci] if card.label_name else []
    if card.label_name is None or any(name not in known for name in names):
        return None
    return least_of(card.label_name.polytopes, [known[name] for name in names])
