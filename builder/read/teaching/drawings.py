"""`drawings.yaml` and the SVG files beside it become the drawings that a lesson can call for."""

from builder.model.drawing import Drawing
from builder.model.finding import Finding
from builder.read.known import Known
from builder.read.shapes.teaching import DrawingShape
from builder.read.text.text_files import TextFolder
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold


def read_drawings(placed: PlacedYaml, folder: TextFolder, known: Known, findings: list[Finding]) -> dict[str, Drawing]:
    """Read all drawings, by their folded names; one whose file is not there is left out, and found."""
    made = {}
    for name, shape in fit_each(DrawingShape, placed, findings, known):
        svg = folder.text(f"drawings/{name.replace(' ', '-')}.svg")
        if svg is not None:
            fits = tuple(frozenset(fold(words).split()) for words in shape.fits)
            made[fold(name)] = Drawing(name, shape.caption, shape.alt, svg.strip(), fits)
    return made
