"""Label sheets: one label for each container, of just what is in it, in the order of the roster; the spare ones come last.

Where students design their own, fronts are outlines to colour in with a title to write, and what the law asks for stands as on every label.
Where no front is composed, a panel with nothing but a border to colour in lies beside the panel with the facts.

What is printed is the layout that the checks have seen. A product whose labels are held back has no sheet, nor has one whose
labels do not fit at a lawful height.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.label_front.drawn import Ink, drawn
from builder.compose.label_layout.composed import whole_of
from builder.compose.label_layout.label_pages import border, cell_of, hole_of, labels_view
from builder.compose.label_layout.label_sheets import wished
from builder.compose.ornament.portrait import portrait_of
from builder.compose.scopes import Labelled
from builder.compose.views.labels import CellView
from builder.words.say import say

# How far a ground goes on beyond the line of a cut by hand, in millimetres; sheets with cuts of their own have none.
BLEED = 2.0


def compose_labels(edition: Edition, labelled: Labelled, _: Address) -> Composed:
    """Make the label sheet of one kind of container on one date."""
    title = say("Labels: {name}", name=labelled.labels.name)
    cells = [cell for number in range(len(labelled.laid_out.cells)) for cell in _one(edition, labelled, number)]
    view = labels_view(edition, title, labelled.laid_out.stock, cells, labelled.first)
    back = labelled.laid_out.back
    if back is not None:
        backs = labels_view(edition, title, back.stock, [cell_of(one, marks=hole_of(back.stock)) for (one,) in back.cells])
        view = replace(view, pages=(*view.pages, *backs.pages))
    return Composed(title, view)


def _one(edition: Edition, labelled: Labelled, number: int) -> Iterator[CellView]:
    """Give the cells of one label; a panel to colour in stands before the ones with the facts."""
    laid, to_colour = labelled.laid_out, wished(edition.studio, labelled.plan).to_colour
    if to_colour and not laid.drawings:
        yield CellView(art="ring" if laid.stock.is_round else border(number))
    cells = [cell_of(blocks, marks=hole_of(laid.stock)) for blocks in laid.cells[number]]
    if not laid.drawings:
        yield from cells
        return
    jar = labelled.labels.jars[number]
    portrait = portrait_of(edition.studio, labelled.labels.made.batch, dict(jar.variant.chosen))
    ink = Ink.OUTLINES if to_colour else Ink.ACCENT
    bleed = BLEED if laid.stock.is_cut and laid.stock.across.millimetres > 2 * BLEED else 0.0
    for cell, drawing in zip(cells, laid.drawings[number], strict=True):
        yield replace(cell, drawing_html=drawn(drawing, portrait, whole_of(laid.stock), ink, bleed)) if drawing else cell
