"""A file `class.yaml`, with the lesson beside it, becomes a class."""

from pathlib import PurePosixPath

from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding
from builder.model.recipe.unread import UNREAD
from builder.model.teaching.lesson import Lesson
from builder.read.shapes.studio_class import ClassShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.in_part import made_in_part


def read_class(placed: PlacedData, lesson: Lesson | None, findings: list[Finding]) -> tuple[StudioClass | None, bool]:
    """Read one class, and tell whether all of it can be read, with its lesson; None where nothing of it can."""
    key = PurePosixPath(placed.file).parent.name
    made, is_whole = made_in_part(ClassShape, placed, findings, key=key, lesson=UNREAD if lesson is None else lesson)
    return made, is_whole and lesson is not None
