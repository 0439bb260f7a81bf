"""What the sheets of one date share: the batch that a part of the lesson speaks of, and when the class is."""

from builder.compose.dates import clock, long_date
from builder.compose.edition import Edition
from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet
from builder.model.lesson import Part


def part_sheet(sheet: ClassSheet, part: Part) -> BatchSheet:
    """Give the batch that a part is about: that of the recipe it names, or the first of the class."""
    if part.recipe is not None:
        return next(made.batch for made in sheet.made if made.make.recipe.text == part.recipe.text)
    return sheet.made[0].batch


def when(edition: Edition, sheet: ClassSheet) -> str:
    """Say when the class is; without a date it is a full class."""
    if sheet.date is None:
        return "Full class, no date set"
    on = sheet.date.on
    return f"{long_date(on.date(), edition.locale)}, {clock(on, edition.locale)}"
