"""Acids and carbonates that meet water together: what fizzes, and the acid that is left when it is over.

Source: molar masses; one mol of bicarbonate takes up one mol of acid groups, one of carbonate two.
"""

from collections.abc import Iterable
from fractions import Fraction

from builder.model.dose.limit import names_of
from builder.model.recipe.column import Line
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind

_TAKES_UP = {"sodium bicarbonate": 1, "potassium bicarbonate": 1, "sodium carbonate": 2}


def carbonate(card: Ingredient) -> int:
    """Return the acid groups that one molecule of a carbonate takes up; 0 of anything else."""
    return max((_TAKES_UP.get(name, 0) for name in names_of(card)), default=0)


def acid_left(lines: Iterable[Line]) -> Fraction | None:
    """Return the part of the acid of a batch that its carbonates leave, 0 where they take all; None without both, or without figures."""
    acid = base = Fraction(0)
    for line in lines:
        card = line.ingredient
        groups, molar, purity, protons = carbonate(card), *(card.figure(name) for name in ("molar mass", "purity", "protons"))
        sour = protons.typical if protons and card.kind is IngredientKind.ACID and not groups else 0
        if not groups and not sour:
            continue
        if molar is None:
            return None
        mols = line.share * (purity.typical / 100 if purity else 1) / molar.typical
        base += mols * groups
        acid += mols * sour
    return max(1 - base / acid, Fraction(0)) if acid and base else None
