"""All weighings of a date in one table, in the order of its batches: lye stands in a frame."""

from builder.compose.recipe.batch_words import batch_title
from builder.compose.recipe.ingredient_tables import staff_table
from builder.compose.recipe.wording import weighed
from builder.compose.teaching.weighing_words import who_weighs
from builder.compose.views.for_staff import PotView, WeighGroup, WeighRow
from builder.compose.views.ingredient_table import PhaseTable
from builder.model.recipe.column import Role, Weighed
from builder.model.teaching.class_plan import ClassPlan, MadeProduct, PlannedBatch


def view_pots(plan: ClassPlan, made: MadeProduct) -> tuple[PotView, ...]:
    """Return the weighings of each planned batch of a product."""
    return tuple(_pot(plan, planned) for planned in made.batches)


def _pot(plan: ClassPlan, planned: PlannedBatch) -> PotView:
    sheet = planned.sheet
    table = staff_table(sheet)
    who = {id(task.weighed.line): who_weighs(plan, task) for task in plan.weighing.of(sheet.recipe.name, planned.purpose)}
    phases = dict.fromkeys(row[0].line.phase for row in sheet.rows)
    groups = (
        _group(printed, [row[0] for row in sheet.rows if row[0].line.phase == phase], who)
        for phase, printed in zip(phases, table.phases, strict=True)
    )
    return PotView(batch_title(planned), tuple(groups), table.total.cells[WEIGHED])


# Where the columns of the staff's table have what the scale shows, and the scale.
WEIGHED, SCALE = 2, 3


def _group(printed: PhaseTable, mine: list[Weighed], who: dict[int, str]) -> WeighGroup:
    whose = [who.get(id(w.line), "") for w in mine]
    common = whose[0] if len(set(whose)) == 1 else ""
    rows = tuple(
        WeighRow(row.name, weighed(w, "g"), row.cells[SCALE], "" if common else one)
        for w, row, one in zip(mine, printed.rows, whose, strict=True)
    )
    together = printed.total.cells[WEIGHED] if len(rows) > 1 else ""
    caustic = any(w.line.role is Role.ALKALI for w in mine)
    return WeighGroup(printed.title, printed.treatment, common, rows, together, printed.note, caustic)
