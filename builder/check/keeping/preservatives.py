"""Which cards are preservatives: what is called so, and is known to preserve; and why another that is called so does not count.

Decided: a preservative counts where its card has `preserves:`, usual amount and pH window; extracts of seeds do not. Why: of what is not
known nothing can be relied on.
"""

from collections.abc import Iterable

from builder.model.recipe.ingredient import Ingredient, Microbe
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.words.fold import fold
from builder.words.listed import listed_once

# What is sold as a natural preservative, and is none by the criteria of a product of low risk (ISO 29621:2017).
_SEED = "seed extract"
_FIGURES = ("usual amount", "pH window")


def is_preservative(card: Ingredient) -> bool:
    """Tell whether it is known against what, in which amount and at which pH a card preserves; an extract of seeds does not."""
    return card.kind is IngredientKind.PRESERVATIVE and not why_not(card)


def why_not(card: Ingredient) -> str:
    """Return in words why what is called a preservative does not count as one; empty where it does."""
    names = (card.name, *(card.label_name.inci if card.label_name else ()))
    if card.preserves is None and any(_SEED in fold(name) for name in names):
        return "an extract of seeds does not preserve, or only by what its maker has added"
    missing = [] if card.preserves else ["`preserves:`"]
    missing += [f"`{name}`" for name in _FIGURES if card.figure(name) is None]
    return f"its card lacks {listed_once(missing)}" if missing else ""


def called_so(cards: Iterable[Ingredient]) -> Ingredient | None:
    """Return the first card that is called a preservative and does not count as one."""
    return next((card for card in cards if card.kind is IngredientKind.PRESERVATIVE and why_not(card)), None)


def uncovered(cards: Iterable[Ingredient]) -> tuple[str, ...]:
    """Return the microbes that none of some preservatives holds back."""
    covered = {microbe for card in cards if card.preserves for microbe in card.preserves.covers}
    return tuple(microbe for microbe in Microbe if microbe not in covered)


def is_enough(cards: Iterable[Ingredient]) -> bool:
    """Tell whether some preservatives hold everything back: each kind of microbe, and no part of a system alone."""
    found = {card.key: card for card in cards}
    alone = any(card.preserves and card.preserves.alone for card in found.values()) or len(found) > 1
    return alone and not uncovered(found.values())
