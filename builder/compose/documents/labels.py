"""Label sheets: one label for each container, of just what is in it, in the order of the roster; the spare ones come last. Products whose
labels are of one size share sheets.

Where students design their own, fronts are outlines to colour in with a title to write, and what the law asks for stands as on every label.
Where no front is composed, a panel with nothing but the mark to colour in lies beside the panel with the facts.

What is printed is the layout that the checks have seen. A product whose labels are held back has no sheet, nor has one whose
labels do not fit at a lawful height.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.label_front.drawn import Ink, drawn, panel_to_colour
from builder.compose.label_layout.composed import whole_of
from builder.compose.label_layout.label_pages import hole_of, labels_view, position_of
from builder.compose.label_layout.label_sheets import wished
from builder.compose.label_layout.sharing import OneLabel
from builder.compose.ornament.portrait import portrait_of
from builder.compose.scopes import Labelled
from builder.compose.views.labels import PositionView
from builder.words.say import say

# How far a ground goes on beyond the line of a cut by hand, in millimetres; sheets with cuts of their own have none.
BLEED = 2.0


def compose_labels(edition: Edition, labelled: Labelled, _: Address) -> Composed:
    """Make the sheets of labels of one size on one date, and behind them those of their backs, where these have sheets of their own."""
    title = say("Labels: {name}", name=labelled.title)
    to_colour = wished(edition.studio, labelled.plan).to_colour
    positions = [position for one in labelled.labels for position in _one(edition, one, to_colour=to_colour)]
    view = labels_view(edition, title, labelled.labels[0].laid_out.sheet, positions, labelled.first)
    backs = [(back.sheet, behind.blocks) for one in labelled.labels if (back := one.laid_out.back) for behind in one.behind]
    if backs:
        sheet = backs[0][0]
        behind = labels_view(edition, title, sheet, [position_of(blocks, marks=hole_of(sheet)) for _, blocks in backs], labelled.first_back)
        view = replace(view, pages=(*view.pages, *behind.pages))
    return Composed(view)


def _one(edition: Edition, label: OneLabel, *, to_colour: bool) -> Iterator[PositionView]:
    """Yield the positions of one label; a panel to colour in stands before the ones with the facts."""
    laid = label.laid_out
    portrait = portrait_of(edition.studio, label.plan.made.batch, dict(label.jar.variant.chosen))
    if to_colour and not laid.is_composed:
        yield PositionView(drawing_html=panel_to_colour(portrait, whole_of(laid.sheet)))
    ink = Ink.OUTLINES if to_colour else Ink.ACCENT
    bleed = BLEED if laid.sheet.is_cut and laid.sheet.across.millimetres > 2 * BLEED else 0.0
    for one in label.positions:
        position, drawing = position_of(one.blocks, marks=hole_of(laid.sheet)), one.drawing
        yield replace(position, drawing_html=drawn(drawing, portrait, whole_of(laid.sheet), ink, bleed)) if drawing else position
