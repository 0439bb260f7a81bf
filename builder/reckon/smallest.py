"""The smallest batch that a set of scales can weigh sensibly: nothing too small for its scale, and the lye safe from the scales alone."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from builder.model.figure import Figure
from builder.model.quantity import Mass
from builder.model.studio import Scale
from builder.reckon.columns import CUP, reckon_column, reckon_lines
from builder.reckon.formula import Formula

# Round weights in grams, as a person would choose them.
CANDIDATES = tuple(Fraction(step * ten) for ten in (1, 10, 100, 1000, 10000) for step in (10, 15, 20, 25, 30, 40, 50, 60, 75))


def smallest_batch(formula: Formula, scales: Sequence[Scale], constants: Mapping[str, Figure]) -> Mass | None:
    """Give the smallest round weight that serves; None where no candidate does."""
    fewest = constants["fewest divisions of a weighing"].typical
    most = constants["most that scales may take from the superfat"].typical / 100
    cup = Mass(constants[CUP].typical)
    for candidate in CANDIDATES:
        column = reckon_column(reckon_lines(formula, Mass(candidate)), formula, scales, cup)
        if any(w.line.exact < w.scale.division * fewest for w in column.weighed):
            continue
        if column.lye is None or column.lye.by_scales <= most:
            return Mass(candidate)
    return None
