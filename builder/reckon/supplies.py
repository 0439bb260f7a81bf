"""A worked class or batch, with what its studio's supplies add: strokes of pumps, what a jug serves, what it costs."""

from dataclasses import replace

from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet, MadeSheet
from builder.model.studio import Studio
from builder.reckon.costs import cost_of_batch, cost_of_class
from builder.reckon.jugs import jugs_of_batch, jugs_of_class
from builder.reckon.pumps import reckon_strokes


def supply_batch(studio: Studio, sheet: BatchSheet) -> BatchSheet:
    """Add what a batch costs and what a jug serves; a studio without supplies gets its batch as it is."""
    if not studio.supplies:
        return sheet
    return replace(sheet, strokes=reckon_strokes(studio, sheet), jugs=jugs_of_batch(studio, sheet), cost=cost_of_batch(studio, sheet))


def supply_class(studio: Studio, sheet: ClassSheet) -> ClassSheet:
    """Add the same to a class, by its students; its home batches are costed each for itself, without a pump."""
    if not studio.supplies:
        return sheet
    made = tuple(_supply_made(studio, one, sheet.studio_class.group_size) for one in sheet.made)
    return replace(sheet, made=made, cost=cost_of_class(studio, sheet))


def _supply_made(studio: Studio, made: MadeSheet, group_size: int) -> MadeSheet:
    return replace(
        made,
        batches=tuple(replace(one, sheet=replace(one.sheet, strokes=reckon_strokes(studio, one.sheet))) for one in made.batches),
        home=tuple(replace(home, sheet=replace(home.sheet, cost=cost_of_batch(studio, home.sheet))) for home in made.home),
        jugs=jugs_of_class(studio, made, group_size),
    )
