"""Label sheets: one label for each container, of just what is in it, in the order of the roster; the spare ones come last.

Where students design their own, each label has a panel with nothing but a border to colour in beside the panel with the facts.

What is printed is the layout that the checks have seen. A product whose labels are held back has no sheet, nor has one whose
labels do not fit at a lawful height.
"""

from collections.abc import Iterator

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.label_layout.label_layout import LaidOut
from builder.compose.label_layout.label_lines import Block
from builder.compose.label_layout.label_pages import border, cell_of, hole_of, labels_view
from builder.compose.label_layout.label_sheets import wished
from builder.compose.scopes import Labelled
from builder.compose.views.labels import CellView
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say


def compose_labels(edition: Edition, labelled: Labelled, _: Address) -> Composed:
    """Make the label sheet of one kind of container on one date."""
    plan, laid = labelled.plan, labelled.laid_out
    title = say("Labels: {name}", name=labelled.labels.name)
    cells = [cell for number, label in enumerate(laid.cells) for cell in _one(edition, plan, laid, number, label)]
    return Composed(title, labels_view(edition, title, laid.stock, cells, labelled.first))


def _one(edition: Edition, plan: ClassPlan, laid: LaidOut, number: int, label: tuple[tuple[Block, ...], ...]) -> Iterator[CellView]:
    """Give the cells of one label; a panel to colour in stands before the ones with the facts."""
    if wished(edition.studio, plan).to_colour:
        yield CellView(art="ring" if laid.stock.is_round else border(number))
    yield from (cell_of(blocks, marks=hole_of(laid.stock)) for blocks in label)
