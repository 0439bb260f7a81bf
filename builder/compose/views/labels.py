"""What `sheets/labels.html` shows: one label for each container."""

from dataclasses import dataclass

from builder.compose.views.frame import SheetFrame


@dataclass(frozen=True)
class LabelView:
    """One label. `net_contents` and `made_on` are empty where they are to be written by hand."""

    identity: str
    name: str
    variant: str
    net_contents: str
    ingredients: str
    directions: str
    cautions: tuple[str, ...]
    batch: str
    made_on: str


@dataclass(frozen=True)
class LabelsView:
    """The labels of one product of one date. `fits` are the sizes of type and cell that may be tried, the best first."""

    frame: SheetFrame
    title: str
    fits: str
    first_fit: str
    maker: str
    labels: tuple[LabelView, ...]
