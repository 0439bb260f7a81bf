"""Tags to hang on a bag, one for each student: a border to colour in, a hole, lines for names, and the way back to the class's page.

Decided: a tag goes on the first sheet of tags that holds all it says, its title as large as fits; words that are too wide are broken.
Why: no law sets a height there, and nothing is left out.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.label.label_languages import not_for_sale
from builder.compose.label.label_texts import Paragraph, Run
from builder.compose.label.qr_codes import qr_side, view_qr
from builder.compose.label_layout.label_layout import HOLE_AT
from builder.compose.label_layout.label_lines import Block, Setter
from builder.compose.label_layout.label_pages import border, cell_of, hole_of, labels_view
from builder.compose.label_layout.label_sheets import tag_stocks, wished
from builder.compose.views.labels import CellView
from builder.model.label.label_sheet import LabelSheet
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say, say_in

# The art of a border is 7 mm wide; text stands clear of it, all in millimetres.
EDGE, BELOW_THE_HOLE, GAP = 9.0, 6.0, 2.0
PLAIN, SMALL = 9.0, 6.5
TITLES = (12.0, 10.0, 8.0, 6.5)


def copies_of_tags(edition: Edition, plan: ClassPlan) -> Iterator[str]:
    """Say how many tags there are."""
    if plan.students and wished(edition.studio, plan).tags:
        yield say("Tags: {number}", number=plan.students)


def compose_tags(edition: Edition, plan: ClassPlan, _: Address) -> Composed | None:
    """Make the tags of one date where they are wanted, on the first sheet of tags that holds what they say."""
    studio = edition.studio
    if not plan.students or not wished(studio, plan).tags:
        return None
    tags = ((stock, tag) for stock in tag_stocks(studio) if (tag := _tag(edition, plan, stock)))
    stock, tag = next(tags, (None, None))
    if stock is None or tag is None:
        return None
    title = say("Tags: {class_title}", class_title=plan.studio_class.title)
    return Composed(title, labels_view(edition, title, stock, [replace(tag, art=border(number)) for number in range(plan.students)]))


def _tag(edition: Edition, plan: ClassPlan, stock: LabelSheet) -> CellView | None:
    """Lay out a tag, still without a border; None where it does not hold all."""
    width, height = float(stock.width.millimetres), float(stock.height.millimetres)
    hole = float(stock.hole.millimetres) if stock.hole else 0.0
    top, inside = HOLE_AT + hole + BELOW_THE_HOLE, width - 2 * EDGE
    setter, address = Setter(edition.studio.typefaces), _address(edition, plan)
    side = qr_side(address) if address else 0.0
    foot = _foot(setter, address, not_for_sale(edition.studio.label_languages), inside, height)
    head = _head(setter, plan.studio_class.title, top, inside, foot[0].y - side) if foot else ()
    if not foot or not head or side > inside:
        return None
    qr = view_qr(address, (width - side) / 2, foot[0].y - side) if address else None
    return replace(cell_of((*head, *foot), marks=hole_of(stock)), qr=qr)


def _head(setter: Setter, title: str, top: float, inside: float, end: float) -> tuple[Block, ...]:
    """Set the title and the lines for names, in the largest type with which all stands above what follows; nothing where none does."""
    names = (say_in("the name of who gets a present", "For"), say_in("the name of who gives a present", "From"))
    by_hand: list[tuple[Paragraph, float]] = [((Run(f"{word} "), Run("", blank=inside - 12)), PLAIN) for word in names]
    for points in TITLES:
        words = _broken(setter, title, True, points, inside)
        blocks = setter.stack([((Run(words, bold=True),), points), *by_hand], EDGE, top, inside, GAP)
        if blocks and blocks[-1].below <= end:
            return blocks
    return ()


def _foot(setter: Setter, address: str, untested: str, inside: float, height: float) -> tuple[Block, ...]:
    """Set what stands at the foot: the address in words, broken where it has a slash, and that nothing here has been tested."""
    printed = address.removeprefix("https://")
    at_slashes = printed.replace("/", "/ ").split(" ") if setter.width(printed, False, SMALL) > inside else [printed]
    pieces = [_broken(setter, piece, False, SMALL, inside) for piece in (*at_slashes, untested) if piece]
    blocks = setter.stack([((Run(piece),), SMALL) for piece in pieces], EDGE, 0.0, inside, 0.3) or ()
    down = height - EDGE - blocks[-1].below if blocks else 0.0
    return tuple(Block(block.x, block.y + down, block.width, block.points, block.lines) for block in blocks)


def _broken(setter: Setter, text: str, bold: bool, points: float, inside: float) -> str:
    """Break words that alone are wider than the tag, each piece as long as fits."""
    pieces: list[str] = []
    for word in text.split(" "):
        pieces.append("")
        for letter in word:
            if setter.width(pieces[-1] + letter, bold, points) > inside:
                pieces.append("")
            pieces[-1] += letter
    return " ".join(pieces)


def _address(edition: Edition, plan: ClassPlan) -> str:
    public = edition.studio.profile.public_address.rstrip("/")
    return f"{public}/{addresses.class_page(plan.studio_class.key).path}" if public else ""
