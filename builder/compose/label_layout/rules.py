"""What every layout of a label has to keep, whatever it looks like."""

from dataclasses import dataclass

from builder.model.label.typeface import POINT


@dataclass(frozen=True)
class LabelRules:
    """What a layout has to keep: the least sizes in points, the part of the height for the net contents (None: no rule), clear spaces.

    `ingredients` is the height of the ingredient list to that of other text: 1, or less on a small pack.
    """

    text: float
    net: float
    net_part: float | None
    clear_above: float
    clear_beside: float
    inset: float
    ingredients: float = 1.0


def clear_above(rules: LabelRules) -> float:
    """Return the clear space above the net contents, in millimetres: so many heights of a capital, which is under 0.7 of the size."""
    return rules.clear_above * 0.7 * rules.net * POINT
