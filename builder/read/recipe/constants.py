"""`constants.yaml` becomes the figures that belong to no ingredient, such as the density of water."""

from builder.model.finding import Finding
from builder.model.recipe.figure import Figure
from builder.read.known import Known
from builder.read.shapes.figure import FigureShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import each_made

WATER_DENSITY = "water density at 20 degC"


def read_constants(placed: PlacedData, known: Known, findings: list[Finding]) -> dict[str, Figure]:
    """Read the constants of one file."""
    return each_made(FigureShape, placed, findings, known)
