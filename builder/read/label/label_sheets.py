"""`label_sheets.yaml` becomes the label stock; what a studio or a class says under `labels:` becomes its wishes."""

from builder.model.finding import Finding
from builder.model.label.label_sheet import NO_WISHES, LabelSheet, LabelWishes
from builder.read.shapes.labels import LabelSheetShape, LabelWishesShape, StudioLabelsShape
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold


def read_label_sheets(placed: PlacedYaml, findings: list[Finding]) -> dict[str, LabelSheet]:
    """Read the label sheets of one file, keyed by their folded names."""
    return {
        fold(name): shape.make(LabelSheet, name=name, place=placed.key_place(name))
        for name, shape in fit_each(LabelSheetShape, placed, findings)
    }


def make_label_wishes(shape: LabelWishesShape | None, placed: PlacedYaml) -> LabelWishes:
    """Make the wishes of a studio or of a class."""
    if shape is None:
        return NO_WISHES
    right, down = (shape.right, shape.down) if isinstance(shape, StudioLabelsShape) else (None, None)
    own_names, portfolio, logo = (
        (shape.own_names, shape.portfolio, shape.logo) if isinstance(shape, StudioLabelsShape) else (False, False, False)
    )
    place = placed.place("labels", "sheet") if shape.sheet else placed.key_place("labels")
    return LabelWishes(
        shape.sheet, shape.panels, shape.to_colour, shape.tags, right, down, shape.design, own_names, portfolio, shape.spare, logo, place
    )
