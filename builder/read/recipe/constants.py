"""`constants.yaml` becomes the figures that belong to no ingredient, such as the density of water."""

from builder.model.finding import Finding
from builder.model.recipe.figure import Figure
from builder.read.known import Known
from builder.read.recipe.figures import make_figure
from builder.read.shapes.figure import FigureShape
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml

WATER_DENSITY = "water density at 20 degC"


def read_constants(placed: PlacedYaml, known: Known, findings: list[Finding]) -> dict[str, Figure]:
    """Read the constants of one file."""
    entries = fit_each(FigureShape, placed, findings, known)
    return {name: make_figure(entry, placed.key_place(name)) for name, entry in entries}
