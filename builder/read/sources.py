"""`sources.yaml` becomes the sources that figures cite by their short names."""

from builder.model.figure import Source
from builder.model.finding import Finding
from builder.read.fit import fit_each
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.stock import SourceShape


def read_sources(placed: PlacedYaml, findings: list[Finding]) -> dict[str, Source]:
    """Read the sources of one file."""
    return {key: Source(key, shape.title, shape.kind, shape.by, shape.about) for key, shape in fit_each(SourceShape, placed, findings)}
