"""`regions.yaml` becomes the regions that a studio can lie in, each with its rules."""

from builder.model.finding import Finding
from builder.model.label.region import Region
from builder.read.known import Known
from builder.read.shapes.library import RegionShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import each_made


def read_regions(placed: PlacedData, known: Known, findings: list[Finding]) -> dict[str, Region]:
    """Read the regions, keyed by their names."""
    return each_made(RegionShape, placed, findings, known)
