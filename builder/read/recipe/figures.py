"""Published values, already judged by their shape, become figures."""

from builder.model.place import Place
from builder.model.recipe.figure import Figure, Figures
from builder.read.shapes.figure import Entries, FigureShape
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.read.yaml.yaml_nodes import Step


def make_figures(entries: Entries, placed: PlacedYaml, *path: Step) -> Figures:
    """Make the figures of one property, the one in use first."""
    made = [make_figure(entry, placed.place(*path, number)) for number, entry in enumerate(entries)]
    in_use = next((number for number, entry in enumerate(entries) if entry.in_use), 0)
    return Figures(made[in_use], (*made[:in_use], *made[in_use + 1 :]))


def make_figure(entry: FigureShape, place: Place) -> Figure:
    """Make one figure."""
    low = entry.low if entry.value is None else entry.value
    high = entry.high if entry.value is None else entry.value
    assert low is not None and entry.source is not None
    return Figure(low, high, entry.unit, entry.source, entry.at, entry.known, entry.when, entry.note, entry.because, place)
