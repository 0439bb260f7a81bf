"""A home batch to the table beside the scale: in the order in which steps weigh, each sum before things are poured together."""

from collections import Counter
from collections.abc import Sequence

from builder.compose.recipe.ingredient_tables import Row, phases_of, row_name
from builder.compose.recipe.wording import sentence, weighed, weighed_together, within
from builder.compose.views.take_home import HomeGroup, HomeTable, HomeWeighing
from builder.model.recipe.column import Weighed
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part
from builder.rules.hands.named_amounts import weighed_as
from builder.words.say import message, say

COLUMN_NAMES = {"g": message("grams"), "oz": message("ounces")}


def home_table(studio: Studio, batch: WorkedBatch, parts: Sequence[Part], *, in_large_print: bool = False) -> HomeTable:
    """Return the table of a batch, its groups and rows in the order in which the steps of some parts name them.

    In large print it has no column of scales: there what is not weighed on the scale of most weighings says so behind its name.
    """
    usual = Counter(map(_scale, batch.grams.weighed)).most_common(1)[0][0]
    units, order = [column.unit for column in batch.columns], _order(studio, batch, parts)

    def together(rows: Sequence[Row]) -> tuple[str, ...]:
        return tuple(weighed_together(column, unit) for column, unit in zip(zip(*rows, strict=True), units, strict=True))

    def row_of(row: Row) -> HomeWeighing:
        name, scale = row_name(row[0]), _scale(row[0])
        shown = f"{name} ({scale})" if in_large_print and scale != usual else name
        return HomeWeighing(shown, sentence(scale), tuple(weighed(w, unit) for w, unit in zip(row, units, strict=True)))

    groups: list[tuple[int, HomeGroup]] = []
    for phase in phases_of(batch):
        rows = sorted(phase.rows, key=lambda row: order[id(row[0])])
        total = together(rows) if len(rows) > 1 else ()
        group = HomeGroup(phase.title, phase.treatment, tuple(map(row_of, rows)), total, phase.note, phase.apart)
        groups.append((order[id(rows[0][0])], group))
    groups.sort(key=lambda one: one[0])
    return HomeTable(tuple(say(COLUMN_NAMES[unit]) for unit in units), tuple(group for _, group in groups), together(batch.rows))


def _order(studio: Studio, batch: WorkedBatch, parts: Sequence[Part]) -> dict[int, int]:
    """Return when the steps come to each weighing of a batch, by its identity; what none names keeps its place, after all of these."""
    mentions = (mention for part in parts for step in part.steps for mention in step.mentions)
    named = [weighed_as(studio, batch, [mention]) for mention in mentions]
    order: dict[int, int] = {}
    for when, these in enumerate((*named, *((w,) for w in batch.grams.weighed))):
        for w in these:
            order.setdefault(id(w), when)
    return order


def _scale(weighing: Weighed) -> str:
    return within(weighing.scale.name) if weighing.fits else say("in parts")
