"""`sources.yaml` becomes the sources that figures cite by their short names."""

from builder.model.finding import Finding
from builder.model.recipe.figure import Source
from builder.read.shapes.library import SourceShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import each_made


def read_sources(placed: PlacedData, findings: list[Finding]) -> dict[str, Source]:
    """Read the sources of one file."""
    return each_made(SourceShape, placed, findings)
