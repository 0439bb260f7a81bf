"""Packs, and what they hold or what is needed of them, in words."""

from fractions import Fraction

from builder.compose.punctuation import decimals_spoken
from builder.compose.recipe.wording import NBSP, keep_together, listed, number, shortest
from builder.model.recipe.quantity import Mass
from builder.model.supplies.cost import Bought, Purchase
from builder.model.supplies.supply import Supply, SupplyKind
from builder.words.say import message, say

SEARCH_ENDED = message("There are too many ways to combine the packs to try them all: cheaper ones may exist.")
TITLES = {
    SupplyKind.INGREDIENT: message("Ingredients"),
    SupplyKind.CONTAINER: message("Containers"),
    SupplyKind.ITEM: message("Used up in class"),
}


def packs_in_words(bought: Purchase) -> str:
    """Name the packs to buy: `1 × 10 lb and 2 × 2 lb`, `3 × pack of 24`; single pieces by their number."""
    return listed([_pack(pack) for pack in bought.packs])


def quantity(kind: SupplyKind, amount: Fraction) -> str:
    """Write grams of an ingredient, pieces of anything else."""
    return rough(Mass(amount)) if kind is SupplyKind.INGREDIENT else shortest(amount, 2)


def rough(mass: Mass) -> str:
    """Write grams as they matter for buying: whole ones from a hundred on."""
    places = 0 if mass.grams >= 100 else 1 if mass.grams >= 1 else 2
    return f"{number(mass.grams, 0) if not places else shortest(mass.grams, places)}{NBSP}g"


def _pack(pack: Bought) -> str:
    supply = pack.supply
    if supply.size == 1:
        return str(pack.number)
    of_each = keep_together(decimals_spoken(supply.written)) if supply.kind is SupplyKind.INGREDIENT else _of_pieces(supply)
    return f"{pack.number}{NBSP}×{NBSP}{of_each}"


def _of_pieces(supply: Supply) -> str:
    return say("pack of {number}", number=supply.size)
