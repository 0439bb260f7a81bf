"""Exact lines to a column of weighings: each amount on the finest scale that holds it, lye always down.

Decided: `weigh` converts to ounces where the studio has no scale that reads in them. Why: only what is weighed in ounces is a second
weighing, and is checked as one.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from builder.model.recipe.column import Column, Line, Role, Weighed
from builder.model.recipe.quantity import Mass, sum_masses
from builder.model.studio import Scale
from builder.reckon.lye.lye_check import can_be_checked, check_lye
from builder.reckon.recipe.formula import Formula
from builder.reckon.recipe.rounding import round_down, round_near
from builder.reckon.recipe.scales import Vessel, one_at_a_time, pick_scale


def reckon_lines(formula: Formula, total: Mass) -> tuple[Line, ...]:
    """Return the exact lines of a batch of this weight."""
    return tuple(replace(line, exact=total * line.share) for line in formula.lines)


def reckon_column(lines: Sequence[Line], formula: Formula, scales: Sequence[Scale], vessel: Vessel) -> Column:
    """Weigh out exact lines on scales that all read in one unit, and check the lye as weighed.

    Each amount is weighed in a vessel of its own, which the scale has to hold as well. A batch so small that something rounds to nothing,
    or that its fats may be nothing by what the scales are off, has no lye to check: a finding stops it.
    """
    weighed = weigh_lines(lines, scales, vessel)
    phases: dict[str, Mass] = {}
    for w in weighed:
        phases[w.line.phase] = phases.get(w.line.phase, Mass(Fraction(0))) + w.mass
    return Column(
        unit=scales[0].unit,
        weighed=weighed,
        total=sum_masses(w.mass for w in weighed),
        oils=_sum_of(weighed, Role.OIL),
        alkali=_sum_of(weighed, Role.ALKALI),
        lye_water=_sum_of(weighed, Role.LYE_WATER),
        phase_totals=phases,
        lye=check_lye(weighed, formula.lye) if formula.lye and can_be_checked(weighed) else None,
        one_at_a_time=tuple(one_at_a_time(weighed, vessel)),
    )


def weigh_lines(lines: Sequence[Line], scales: Sequence[Scale], vessel: Vessel) -> tuple[Weighed, ...]:
    """Return each exact line as it will be weighed."""
    return tuple(_weigh(line, scales, vessel) for line in lines)


def _weigh(line: Line, scales: Sequence[Scale], vessel: Vessel) -> Weighed:
    scale, fits = pick_scale(line.exact, scales, vessel)
    rounded = round_down if line.role is Role.ALKALI else round_near
    return Weighed(line, rounded(line.exact, scale.division), scale, fits)


def _sum_of(weighed: Sequence[Weighed], role: Role) -> Mass:
    return sum_masses(w.mass for w in weighed if w.line.role is role)
