"""What steams away while a phase is heated and held, and to which weight hot water brings it back.

The total to top up to needs no estimate: it is what the phase weighed before it was heated. How much that takes is known only where the
studio has weighed it.
"""

from collections.abc import Sequence

from builder.model.recipe.column import Column, TopUp
from builder.model.recipe.recipe import Phase, Recipe
from builder.model.studio import Scale
from builder.reckon.lye.equivalents import water_in
from builder.reckon.recipe.scales import Vessel, pick_scale


def reckon_top_ups(recipe: Recipe, column: Column, scales: Sequence[Scale], vessel: Vessel) -> tuple[TopUp, ...]:
    """Return the phases of a column that hold water and are heated; a soap made with lye is not topped up."""
    if recipe.lye is not None:
        return ()
    return tuple(_top_up(phase, column, scales, vessel) for phase in recipe.phases if _is_topped_up(phase, column))


def _is_topped_up(phase: Phase, column: Column) -> bool:
    heated = phase.heat_to is not None or phase.hold is not None
    return heated and any(water_in(w.line.ingredient) for w in column.weighed if w.line.phase == phase.name.text)


def _top_up(phase: Phase, column: Column, scales: Sequence[Scale], vessel: Vessel) -> TopUp:
    weight, lost = column.phase_totals[phase.name.text], phase.steams_away
    _, fits = pick_scale(weight, scales, vessel)
    return TopUp(phase.name.text, weight, weight * lost.share.fraction if lost else None, lost.measured if lost else "", fits)
