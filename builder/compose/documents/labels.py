"""Label sheets: one label for each container, of just what is in it, in the order of the roster; the spare ones come last.

Where students design their own, each label has a panel with nothing but a border to colour in beside the panel with the facts.

What is printed is the layout that the checks have seen. A product whose labels are held back has no sheet, nor has one whose
labels do not fit at a lawful height.
"""

from collections.abc import Iterator

from builder.compose import addresses
from builder.compose.edition import Edition
from builder.compose.label.label_questions import labels_are_held
from builder.compose.label_layout.label_layout import LaidOut
from builder.compose.label_layout.label_lines import Block
from builder.compose.label_layout.label_pages import STYLES, border, cell_of, hole_of, labels_view
from builder.compose.label_layout.label_plans import LabelPlan, plan_labels
from builder.compose.label_layout.label_sheets import wished
from builder.compose.views.labels import CellView
from builder.model.document import Document
from builder.model.teaching.class_plan import ClassPlan


def compose_labels(edition: Edition, sheet: ClassPlan) -> tuple[Document, ...]:
    """Make the label sheets of each product of one date; the first of them begins where a sheet has been used up."""
    documents: list[Document] = []
    first = sheet.date.first_label if sheet.date else 1
    for plan in plan_labels(edition.studio, sheet):
        if plan.laid_out is not None and not labels_are_held(edition, sheet, plan.made):
            documents.append(_compose_sheet(edition, sheet, plan, plan.laid_out, first))
            first = 1
    return tuple(documents)


def _compose_sheet(edition: Edition, sheet: ClassPlan, plan: LabelPlan, laid: LaidOut, first: int) -> Document:
    """Make the labels of one kind of container; the file of any but the recipe's own is named after the container too."""
    title = f"Labels: {plan.name}"
    cells = [cell for number, label in enumerate(laid.cells) for cell in _one(edition, sheet, laid, number, label)]
    view = labels_view(edition, title, laid.stock, cells, first)
    here = addresses.label_sheet(sheet, plan.made, plan.filled)
    return Document(here.folder, here.path, title, edition.templates.render("sheets/labels.html", view), STYLES)


def _one(edition: Edition, plan: ClassPlan, laid: LaidOut, number: int, label: tuple[tuple[Block, ...], ...]) -> Iterator[CellView]:
    """Give the cells of one label; a panel to colour in stands before the ones with the facts."""
    if wished(edition.studio, plan).to_colour:
        yield CellView(art="ring" if laid.stock.is_round else border(number))
    yield from (cell_of(blocks, marks=hole_of(laid.stock)) for blocks in label)
