"""A file `class.yaml`, with the lesson beside it, becomes a class."""

from pathlib import PurePosixPath

from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding
from builder.model.teaching.lesson import Lesson
from builder.read.shapes.studio_class import ClassShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import fit


def read_class(placed: PlacedData, lesson: Lesson | None, findings: list[Finding]) -> StudioClass | None:
    """Read one class; None where it, or its lesson, cannot be made."""
    shape = fit(ClassShape, placed, findings)
    return shape.make(placed, key=PurePosixPath(placed.file).parent.name, lesson=lesson) if shape and lesson else None
