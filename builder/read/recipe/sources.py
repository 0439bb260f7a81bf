"""`sources.yaml` becomes the sources that figures cite by their short names."""

from builder.model.finding import Finding
from builder.model.recipe.figure import Source
from builder.read.shapes.library import SourceShape
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml


def read_sources(placed: PlacedYaml, findings: list[Finding]) -> dict[str, Source]:
    """Read the sources of one file."""
    return {key: Source(key, shape.title, shape.kind, shape.by, shape.about) for key, shape in fit_each(SourceShape, placed, findings)}
