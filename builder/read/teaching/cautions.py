"""A file of `cautions/` becomes a caution text. Its citations are looked up, and kept in the file."""

from pathlib import PurePosixPath

from builder.model.finding import Finding
from builder.model.teaching.caution import CautionText
from builder.read.shapes.library import CautionShape
from builder.read.yaml.fit import Known, fit
from builder.read.yaml.placed_yaml import PlacedYaml


def read_caution(placed: PlacedYaml, known: Known, findings: list[Finding]) -> CautionText | None:
    """Read one caution."""
    shape = fit(CautionShape, placed, findings, known=known)
    if shape is None:
        return None
    return shape.make(CautionText, key=PurePosixPath(placed.file).stem, place=placed.place("name"))
