"""`drawings.yaml`, `tools.yaml` and the SVG files beside them become the drawings that a lesson can call for, and those of tools."""

from builder.model.drawing import Drawing, ToolDrawing
from builder.model.finding import Finding
from builder.read.known import NamesKnown
from builder.read.shapes.teaching import DrawingShape, ToolDrawingShape
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_files import TextFolder
from builder.read.yaml.fit import fit_each
from builder.words.fold import fold


def read_drawings(placed: PlacedData, folder: TextFolder, known: NamesKnown, findings: list[Finding]) -> dict[str, Drawing]:
    """Read all drawings, by their folded names; one whose file is not there is left out, and found."""
    read = ((shape, entry, _svg(folder, "drawings", entry.key)) for shape, entry in fit_each(DrawingShape, placed, findings, known))
    return {fold(entry.key): shape.make(entry, svg=svg) for shape, entry, svg in read if svg is not None}


def read_tool_drawings(placed: PlacedData, folder: TextFolder, known: NamesKnown, findings: list[Finding]) -> dict[str, ToolDrawing]:
    """Read the small drawings of tools by their names; one whose file is not there is left out, and found."""
    read = ((shape, entry, _svg(folder, "tools", entry.key)) for shape, entry in fit_each(ToolDrawingShape, placed, findings, known))
    return {entry.key: shape.make(entry, svg=svg) for shape, entry, svg in read if svg is not None}


def _svg(folder: TextFolder, inside: str, name: str) -> str | None:
    svg = folder.text(f"{inside}/{name.replace(' ', '-')}.svg")
    return None if svg is None else svg.strip()
