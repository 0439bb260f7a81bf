"""`label_sheets.yaml` becomes the label stock; what a studio or a class says under `labels:` becomes its wishes."""

from builder.model.finding import Finding
from builder.model.label_stock import NO_WISHES, LabelStock, LabelWishes
from builder.model.place import fold
from builder.read.fit import fit_each
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.labels import LabelStockShape, LabelWishesShape, StudioLabelsShape


def read_label_stocks(placed: PlacedYaml, findings: list[Finding]) -> dict[str, LabelStock]:
    """Read the label sheets of one file, keyed by their folded names."""
    return {
        fold(name): LabelStock(
            name=name,
            paper=shape.paper,
            columns=shape.columns,
            rows=shape.rows,
            width=shape.width,
            height=shape.height,
            left=shape.left,
            top=shape.top,
            across=shape.across,
            down=shape.down,
            corner=shape.corner,
            is_round=shape.is_round,
            hole=shape.hole,
            is_cut=shape.is_cut,
            place=placed.key_place(name),
        )
        for name, shape in fit_each(LabelStockShape, placed, findings)
    }


def make_label_wishes(shape: LabelWishesShape | None, placed: PlacedYaml) -> LabelWishes:
    """Make the wishes of a studio or of a class."""
    if shape is None:
        return NO_WISHES
    right, down = (shape.right, shape.down) if isinstance(shape, StudioLabelsShape) else (None, None)
    place = placed.place("labels", "sheet") if shape.sheet else placed.key_place("labels")
    return LabelWishes(shape.sheet, shape.panels, shape.to_colour, shape.tags, right, down, place)
