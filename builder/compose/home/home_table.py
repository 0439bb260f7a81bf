"""A home batch to the table beside the scale: in the order in which steps weigh, each sum before things are poured together."""

from collections.abc import Sequence

from builder.compose.recipe.ingredient_tables import weighing_table
from builder.compose.recipe.wording import sentence
from builder.compose.views.take_home import HomeGroup, HomeTable, HomeWeighing
from builder.model.recipe.column import Weighed
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part
from builder.rules.naming import meaning_of, weighings
from builder.words.say import say


def home_table(studio: Studio, batch: WorkedBatch, parts: Sequence[Part]) -> HomeTable:
    """Return the table of a batch, its groups and rows in the order in which the steps of some parts name them."""
    table = weighing_table(batch)
    order = _order(studio, batch, parts)
    phases = list(dict.fromkeys(w.line.phase for w in batch.grams.weighed))
    groups: list[tuple[int, HomeGroup]] = []
    for phase, printed in zip(phases, table.phases, strict=True):
        mine = [(place, w) for place, w in enumerate(batch.grams.weighed) if w.line.phase == phase]
        rows = [(order[place], HomeWeighing(row.name, _scale(w), row.cells)) for (place, w), row in zip(mine, printed.rows, strict=True)]
        rows.sort(key=lambda one: one[0])
        together = printed.total.cells if len(rows) > 1 else ()
        group = HomeGroup(printed.title, printed.treatment, tuple(row for _, row in rows), together, printed.note)
        groups.append((rows[0][0], group))
    groups.sort(key=lambda one: one[0])
    return HomeTable(table.columns, tuple(group for _, group in groups), table.total.cells)


def _order(studio: Studio, batch: WorkedBatch, parts: Sequence[Part]) -> list[int]:
    """Say for each weighing of a batch when the steps come to it; what none names keeps its place, after what they name."""
    named = [
        {id(w) for w in weighings(batch.grams, meaning_of(mention.name, batch.recipe, studio))}
        for part in parts
        for step in part.steps
        for mention in step.mentions
    ]
    late = len(named)
    return [next((when for when, these in enumerate(named) if id(w) in these), late + place) for place, w in enumerate(batch.grams.weighed)]


def _scale(weighing: Weighed) -> str:
    return sentence(say(weighing.scale.name)) if weighing.fits else say("in parts")
