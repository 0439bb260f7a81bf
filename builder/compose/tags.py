"""Tags to hang on a bag, one for each student: a border to colour in, a hole, lines for names, and the way back to the class's page."""

from dataclasses import replace

from builder.compose import addresses
from builder.compose.edition import Edition
from builder.compose.label_languages import sentences
from builder.compose.label_lines import Block, Setter
from builder.compose.label_pages import STYLES, border, cell_of, hole_of, labels_view
from builder.compose.label_stocks import wished
from builder.compose.label_texts import Paragraph, Run
from builder.compose.qr_codes import qr_side, view_qr
from builder.compose.views.labels import CellView
from builder.model.class_sheet import ClassSheet
from builder.model.document import Document
from builder.model.label_stock import LabelStock

# The art of a border is 7 mm wide; text stands clear of it, all in millimetres.
EDGE, BELOW_THE_HOLE, GAP = 9.0, 6.0, 2.0
LARGE, PLAIN, SMALL = 12.0, 9.0, 6.5


def compose_tags(edition: Edition, sheet: ClassSheet) -> tuple[Document, ...]:
    """Make the tags of one date where its labels are to be coloured in."""
    studio = edition.studio
    stock = next((one for one in studio.label_stocks.values() if one.hole is not None and one.paper == studio.profile.paper), None)
    if stock is None or not sheet.students or not wished(studio, sheet).to_colour:
        return ()
    title = f"Tags: {sheet.studio_class.title}"
    cells = [_tag(edition, sheet, stock, border(number)) for number in range(sheet.students)]
    view = labels_view(edition, title, stock, cells)
    here = addresses.class_sheet(sheet, "tags.pdf")
    return (Document(here.folder, here.path, title, edition.templates.render("sheets/labels.html", view), STYLES),)


def _tag(edition: Edition, sheet: ClassSheet, stock: LabelStock, art: str) -> CellView:
    width, height = float(stock.width.millimetres), float(stock.height.millimetres)
    hole = float(stock.hole.millimetres) if stock.hole else 0.0
    top, inside = EDGE + hole + BELOW_THE_HOLE, width - 2 * EDGE
    setter, address = Setter(edition.studio.typefaces), _address(edition, sheet)
    by_hand: list[tuple[Paragraph, float]] = [((Run(f"{word} "), Run("", blank=inside - 12)), PLAIN) for word in ("For", "From")]
    blocks = setter.stack([((Run(sheet.studio_class.title, bold=True),), LARGE), *by_hand], EDGE, top, inside, GAP) or ()
    foot = _foot(setter, address, sentences(edition.studio.label_languages, "not for sale"), inside, height)
    side = qr_side(address) if address else 0.0
    qr = view_qr(address, (width - side) / 2, foot[0].y - side) if address and foot else None
    return replace(cell_of((*blocks, *foot), art, hole_of(stock)), qr=qr)


def _foot(setter: Setter, address: str, untested: str, inside: float, height: float) -> tuple[Block, ...]:
    """Set what stands at the foot: the address in words, broken where it has a slash, and that nothing here has been tested."""
    printed = address.removeprefix("https://")
    at_slashes = printed.replace("/", "/ ").split(" ") if setter.width(printed, False, SMALL) > inside else [printed]
    lines: list[tuple[Paragraph, float]] = [((Run(piece),), SMALL) for piece in at_slashes if piece]
    lines.append(((Run(untested),), SMALL))
    blocks = setter.stack(lines, EDGE, 0.0, inside, 0.3) or ()
    down = height - EDGE - blocks[-1].below if blocks else 0.0
    return tuple(Block(block.x, block.y + down, block.width, block.points, block.lines) for block in blocks)


def _address(edition: Edition, sheet: ClassSheet) -> str:
    public = edition.studio.profile.public_address.rstrip("/")
    return f"{public}/{addresses.class_page(sheet.studio_class.key).path}" if public else ""
