"""The smallest batch that scales can weigh sensibly: nothing too small for its scale, and no lye that rounding moves too far."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from builder.model.recipe.figure import Figure
from builder.model.recipe.quantity import Mass
from builder.model.remembered import remembered
from builder.model.studio import Scale
from builder.reckon.lye.lye_check import can_be_checked, rounding_may_move
from builder.reckon.recipe.columns import reckon_lines, weigh_lines
from builder.reckon.recipe.formula import Formula
from builder.reckon.recipe.scales import pick_scale, vessel_by

# Round weights in grams, as a person would choose them.
CANDIDATES = tuple(Fraction(step * ten) for ten in (1, 10, 100, 1000, 10000) for step in (10, 15, 20, 25, 30, 40, 50, 60, 75))
MOST_MOVED = "most that rounding may move the superfat"


@remembered(256)
def smallest_batch(formula: Formula, columns: Sequence[Sequence[Scale]], constants: Mapping[str, Figure]) -> Mass | None:
    """Return the smallest round weight that serves on the scales of every column; None where no candidate does."""
    found = [_smallest(formula, scales, constants) for scales in columns]
    return max((mass for mass in found if mass), default=None) if all(found) else None


def _smallest(formula: Formula, scales: Sequence[Scale], constants: Mapping[str, Figure]) -> Mass | None:
    fewest = constants["fewest divisions of a weighing"].typical
    most = constants[MOST_MOVED].typical / 100
    vessel = vessel_by(constants)
    smallest, enough = min((line.share for line in formula.lines), default=Fraction(1)), min(scale.division for scale in scales) * fewest
    for candidate in CANDIDATES:
        whole = Mass(candidate)
        if whole * smallest < enough:
            continue  # Not even on the finest scale.
        # Most candidates fail at their first line, so that the others are not weighed.
        if any(exact < pick_scale(exact, scales, vessel)[0].division * fewest for exact in (whole * line.share for line in formula.lines)):
            continue
        weighed = weigh_lines(reckon_lines(formula, whole), scales, vessel)
        if formula.lye is None or (can_be_checked(weighed) and rounding_may_move(weighed, formula.lye) <= most):
            return whole
    return None
