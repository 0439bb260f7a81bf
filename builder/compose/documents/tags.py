"""Gift tags to hang on a bag, one for each student, printed on both sides: the mark of what they made to colour in, and lines for who gives
it to whom; on the back what is in the bag, who made it, and the way back to the class's page.

Decided: a tag goes on the first sheet of tags that holds all it says, its title as large as fits; words that are too wide are broken.
Why: no law sets a height there, and nothing is left out.

Decided: backs lie on a page of their own behind their fronts, from right to left. Why: a sheet turned over its long edge then has each back
behind its front, and who has a printer for one side prints the second page on the other side of the first.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.document_kind import Composed, Lies, ToPrint
from builder.compose.edition import Edition
from builder.compose.label.label_languages import not_for_sale
from builder.compose.label.label_questions import labels_are_held
from builder.compose.label.label_texts import Paragraph, Run, maker
from builder.compose.label.qr_codes import qr_side, view_qr
from builder.compose.label_front.designs import DESIGNS, USUAL, Design, Ornament
from builder.compose.label_front.drawing import Drawing
from builder.compose.label_front.drawn import Ink, drawn
from builder.compose.label_front.front import border_to_colour
from builder.compose.label_layout.composed import whole_of
from builder.compose.label_layout.label_layout import HOLE_AT
from builder.compose.label_layout.label_lines import Block, Setter, line_height
from builder.compose.label_layout.label_pages import hole_of, labels_view, position_of
from builder.compose.label_layout.label_plans import design_of
from builder.compose.label_layout.label_sheets import tag_sheets, wished
from builder.compose.ornament.colouring import SMALLEST
from builder.compose.ornament.portrait import Portrait, portrait_of
from builder.compose.views.labels import PositionView
from builder.model.label.label_sheet import LabelSheet
from builder.model.recipe.quantity import Length
from builder.model.teaching.class_plan import ClassPlan
from builder.words.listed import listed
from builder.words.say import say, say_in

# All in millimetres: text stands so far from every edge, what is coloured in as far from the hole.
EDGE, BELOW_THE_HOLE, GAP = 5.5, 4.0, 2.0
PLAIN, SMALL = 9.0, 6.5
TITLES = (12.0, 10.0, 8.0, 6.5)
BY_HAND, LINE = 13.0, 10.0  # The size of the words before a line to write on, in points, and the height of one.


def copies_of_tags(edition: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield how many tags there are."""
    if plan.students and wished(edition.studio, plan).tags:
        line = say("Tags: {number}, printed on both sides", number=plan.students)
        yield ToPrint(line, say("Tags"), on_both_sides=True, lies=Lies.ON_STOCK)


def compose_tags(edition: Edition, plan: ClassPlan, _: Address) -> Composed | None:
    """Make the tags of one date where they are wanted, on the first sheet of tags that holds what they say."""
    studio = edition.studio
    if not plan.students or not wished(studio, plan).tags:
        return None
    tags = ((sheet, back) for sheet in tag_sheets(studio) if _holds_front(sheet) and (back := _back(edition, plan, sheet)))
    sheet, back = next(tags, (None, None))
    if sheet is None or back is None:
        return None
    title = say("Tags: {class_title}", class_title=plan.studio_class.title)
    fronts = [_front(edition, sheet, *dress) for dress in _dresses(edition, plan)]
    view = labels_view(edition, title, sheet, fronts)
    behind = labels_view(edition, title, _turned(sheet), list(_mirrored([back] * plan.students, sheet)))
    pages = [page for both in zip(view.pages, behind.pages, strict=True) for page in both]
    return Composed(replace(view, pages=tuple(pages)))


def _dresses(edition: Edition, plan: ClassPlan) -> Iterator[tuple[Design, Portrait]]:
    """Yield the design and the mark of each student's tag: those of the first thing that they take home."""
    jars = [(made, jar) for made in plan.made for one in made.containers for jar in one.jars]
    usual = DESIGNS.get(wished(edition.studio, plan).design, USUAL)
    for student in range(1, plan.students + 1):
        made, jar = next(((made, jar) for made, jar in jars if jar.student == student), (plan.made[0], None))
        design = design_of(edition.studio, plan, made.batch.recipe, jar) if jar else usual
        yield design, portrait_of(edition.studio, made.batch, dict(jar.variant.chosen) if jar else None)


def _top(sheet: LabelSheet) -> float:
    return HOLE_AT + float(sheet.hole.millimetres if sheet.hole else 0) + BELOW_THE_HOLE


def _holds_front(sheet: LabelSheet) -> bool:
    """Tell whether a tag has room for a mark to colour in, in every design, and for two lines."""
    whole = whole_of(sheet)
    inner = min(
        whole.width - 2 * max(border_to_colour(design) for design in DESIGNS.values()), whole.height - _top(sheet) - 2 * LINE - EDGE
    )
    return inner >= SMALLEST + 2 * GAP


def _front(edition: Edition, sheet: LabelSheet, design: Design, portrait: Portrait) -> PositionView:
    """Draw the front of a tag: the hole, the mark to colour in, and the lines for names."""
    whole, setter = whole_of(sheet), Setter(edition.studio.typefaces)
    edge = max(EDGE, border_to_colour(design) + GAP)
    inside = whole.width - 2 * edge
    names = (say_in("the name of who gets a present", "For"), say_in("the name of who gives a present", "From"))
    face = design.face if design.face in setter.faces else "bold"
    wide = max(setter.faces[face].width(f"{word} ", BY_HAND) for word in names)
    blocks = []
    at = whole.height - edge - len(names) * LINE
    for number, word in enumerate(names):
        y = at + (number + 1) * LINE - line_height(BY_HAND, 1.2)
        shown = "" if face == "bold" else face
        blocks.append(Block(edge, y, wide, BY_HAND, ((Run(word, bold=face == "bold"),),), shown, leading=1.2))
        blank = Run("", blank=inside - wide - 0.2)
        blocks.append(Block(edge + wide, y, inside - wide, BY_HAND, ((blank,),), leading=1.2))
    top = max(_top(sheet), edge + GAP if design.ornament is Ornament.WREATH or design.dashes else 0.0)
    side = min(inside, at - top - GAP)
    drawing = Drawing(design, whole, whole.middle - side / 2, top + (at - GAP - top - side) / 2, side)
    if design.ornament is Ornament.ON_GROUND:
        drawing = replace(drawing, ground=(0.0, top - GAP, whole.width, at - top + GAP))
    if design.ornament is Ornament.WREATH:
        drawing = replace(drawing, leaves_along=(1, 2, 3))
    if design.stripes:
        drawing = replace(drawing, threads=((0.0, at, whole.width),))
    position = position_of(blocks, marks=hole_of(sheet))
    return replace(position, drawing_html=drawn(drawing, portrait, whole, Ink.OUTLINES))


def _back(edition: Edition, plan: ClassPlan, sheet: LabelSheet) -> PositionView | None:
    """Lay out the back of a tag; None where it does not hold all."""
    width, height = float(sheet.width.millimetres), float(sheet.height.millimetres)
    inside = width - 2 * EDGE
    setter, address = Setter(edition.studio.typefaces), _address(edition, plan)
    side = qr_side(address) if address else 0.0
    foot = _foot(setter, address, inside, height)
    head = _head(edition, setter, plan, _top(sheet), inside, foot[0].y - side if foot else height - EDGE - side)
    if not head or side > inside:
        return None
    qr = view_qr(address, (width - side) / 2, foot[0].y - side) if address else None
    return replace(position_of((*head, *foot)), qr=qr)


def _head(edition: Edition, setter: Setter, plan: ClassPlan, top: float, inside: float, end: float) -> tuple[Block, ...]:
    """Set the title and what the law and care ask for, in the largest type with which all stands above what follows; else nothing."""
    said = [
        say("In this bag: {products}.", products=listed([made.batch.recipe.name for made in plan.made])),
        *([] if any(labels_are_held(edition, plan, made) for made in plan.made) else [say("Read the label of each before you use it.")]),
        f"{maker(edition.studio.profile)}.",
        not_for_sale(edition.studio.label_languages),
    ]
    for points in TITLES:
        small = min(points, PLAIN)
        words = _broken(setter, plan.studio_class.title, True, points, inside)
        rest: list[tuple[Paragraph, float]] = [((Run(_broken(setter, one, False, small, inside)),), small) for one in said]
        blocks = setter.stack([((Run(words, bold=True),), points), *rest], EDGE, top, inside, GAP)
        if blocks and blocks[-1].below <= end:
            return blocks
    return ()


def _foot(setter: Setter, address: str, inside: float, height: float) -> tuple[Block, ...]:
    """Set what stands at the foot: the address in words, broken where it has a slash."""
    printed = address.removeprefix("https://")
    at_slashes = printed.replace("/", "/ ").split(" ") if setter.width(printed, False, SMALL) > inside else [printed]
    pieces = [_broken(setter, piece, False, SMALL, inside) for piece in at_slashes if piece]
    blocks = setter.stack([((Run(piece),), SMALL) for piece in pieces], EDGE, 0.0, inside, 0.3) or ()
    down = height - EDGE - blocks[-1].below if blocks else 0.0
    return tuple(Block(block.x, block.y + down, block.width, block.points, block.lines) for block in blocks)


def _turned(sheet: LabelSheet) -> LabelSheet:
    """Return the other side of a sheet: its tags lie as far from the right edge as they do from the left one, and nothing is cut on it."""
    across = sheet.columns * sheet.width.millimetres + (sheet.columns - 1) * sheet.across.millimetres
    return replace(sheet, left=Length(sheet.paper.size[0] - sheet.left.millimetres - across), hole=None, is_cut=False)


def _mirrored(backs: Sequence[PositionView], sheet: LabelSheet) -> Iterator[PositionView]:
    """Yield backs row by row from right to left, so that each lies behind its front; a row that is not full begins with empty places."""
    for begin in range(0, len(backs), sheet.columns):
        row = backs[begin : begin + sheet.columns]
        yield from (*[PositionView()] * (sheet.columns - len(row)), *reversed(row))


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
