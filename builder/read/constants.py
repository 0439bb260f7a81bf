"""`constants.yaml` becomes the figures that belong to no ingredient, such as the density of water."""

from builder.model.figure import Figure
from builder.model.finding import Finding
from builder.read.figures import make_figure
from builder.read.fit import Known, fit_each
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.figure import FigureShape

WATER_DENSITY = "water density at 20 degC"


def read_constants(placed: PlacedYaml, known: Known, findings: list[Finding]) -> dict[str, Figure]:
    """Read the constants of one file."""
    entries = fit_each(FigureShape, placed, findings, known)
    return {name: make_figure(entry, placed.key_place(name)) for name, entry in entries}
