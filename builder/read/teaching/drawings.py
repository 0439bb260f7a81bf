"""`drawings.yaml`, `tools.yaml` and the SVG files beside them become the drawings that a lesson can call for, and those of tools."""

from builder.model.drawing import Drawing, ToolDrawing
from builder.model.finding import Finding
from builder.read.known import Known
from builder.read.shapes.teaching import DrawingShape, ToolDrawingShape
from builder.read.text.text_files import TextFolder
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold


def read_drawings(placed: PlacedYaml, folder: TextFolder, known: Known, findings: list[Finding]) -> dict[str, Drawing]:
    """Read all drawings, by their folded names; one whose file is not there is left out, and found."""
    made = {}
    for name, shape in fit_each(DrawingShape, placed, findings, known):
        svg = _svg(folder, "drawings", name)
        if svg is not None:
            fits = tuple(frozenset(fold(words).split()) for words in shape.fits)
            made[fold(name)] = Drawing(name, shape.caption, shape.alt, svg, fits)
    return made


def read_tool_drawings(placed: PlacedYaml, folder: TextFolder, known: Known, findings: list[Finding]) -> dict[str, ToolDrawing]:
    """Read the small drawings of tools by their names; one whose file is not there is left out, and found."""
    read = ((name, shape.names, _svg(folder, "tools", name)) for name, shape in fit_each(ToolDrawingShape, placed, findings, known))
    return {name: ToolDrawing(name, names, svg) for name, names, svg in read if svg is not None}


def _svg(folder: TextFolder, inside: str, name: str) -> str | None:
    svg = folder.text(f"{inside}/{name.replace(' ', '-')}.svg")
    return None if svg is None else svg.strip()
