"""Which hazards each part brings that is done at home, where the maker's own hands do all of it, whoever does it in class.

A part brings what its words say, and what an earlier part has left (`reckon/teaching/bench.py`).

Decided: the same rules as for watching people in class. Why: the step that names neither lye nor soap ("Blend for five seconds", "Wipe
the pot") is the one at which somebody alone takes the goggles off.
"""

from collections.abc import Sequence

from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part
from builder.model.teaching.timed_part import HomePart
from builder.reckon.teaching.bench import Bench
from builder.rules.hazard import cold_parts


def met_at_home(studio: Studio, parts: Sequence[Part], batch: WorkedBatch) -> tuple[HomePart, ...]:
    """Return each part that is done at home with the hazards of its words and of what earlier parts have left; those of the amounts in
    braces and of placed cautions stand at their own place. What is only read, or waited for, has none.
    """
    cold = {id(part) for part in cold_parts(parts)}
    bench = Bench(studio, batch)
    return tuple(HomePart(part, bench.work(part, is_cold=id(part) in cold)) for part in parts)
