"""HLB arithmetic: the figure of a mixture, and how two emulsifiers make the one that is wanted.

After Griffin (Journal of the Society of Cosmetic Chemists, 1949 and 1954, from memory): required HLB = sum of (share of the oil phase times
the required HLB of the oil); the HLB of a mixture is the sum of (share by weight times HLB). It holds for non-ionic emulsifiers alone.
"""

from collections.abc import Sequence
from fractions import Fraction

from builder.model.recipe.figure import Figure

Proportion = tuple[Fraction, Figure | None]


def mixture_of(parts: Sequence[Proportion]) -> Fraction | None:
    """Return the weighted middle of some figures; None where one of them is not known, for a guess would stand in for it."""
    whole = sum((share for share, _ in parts), Fraction(0))
    if not whole or any(figure is None for _, figure in parts):
        return None
    return sum((share / whole * figure.typical for share, figure in parts if figure), Fraction(0))


def share_of_high(wanted: Fraction, high: Fraction, low: Fraction) -> Fraction | None:
    """Return the share of the emulsifier of high HLB in a pair that comes to what is wanted; None where no share does."""
    return (wanted - low) / (high - low) if low <= wanted <= high and low < high else None
