"""`label_sheets.yaml` becomes the sheets of labels."""

from builder.model.finding import Finding
from builder.model.label.label_sheet import LabelSheet
from builder.read.shapes.labels import LabelSheetShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import each_made
from builder.words.fold import fold


def read_label_sheets(placed: PlacedData, findings: list[Finding]) -> dict[str, LabelSheet]:
    """Read the label sheets of one file, keyed by their folded names."""
    return {fold(name): sheet for name, sheet in each_made(LabelSheetShape, placed, findings).items()}
