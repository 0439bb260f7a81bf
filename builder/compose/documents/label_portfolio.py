"""All labels of the studio in every design, at their size: in colour, in grey, and as outlines to colour in. To choose a design by.

Each product has its own pages, with the label of its first date: first on its container, drawn from its measures as it is seen from the
side, or its lid from above; then the back, which is alike in every design; then a group for each design. It is made where
`labels: {portfolio: yes}` is written.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import pi

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import sheet_frame
from builder.compose.label.label_texts import Run
from builder.compose.label_front.designs import DESIGNS, Design
from builder.compose.label_front.drawn import Ink, drawn
from builder.compose.label_layout.composed import lay_out_composed, whole_of
from builder.compose.label_layout.label_heights import rules_of
from builder.compose.label_layout.label_layout import LaidOut
from builder.compose.label_layout.label_lines import Setter, setter_of
from builder.compose.label_layout.label_pages import place, position_of
from builder.compose.label_layout.label_plans import LabelPlan, labels_planned, lay_out_dressed
from builder.compose.label_layout.label_sheets import Stock
from builder.compose.ornament.portrait import Portrait, portrait_of
from builder.compose.recipe.portion_words import container_name
from builder.compose.views.labels import LabelsView, MarkView, PositionView
from builder.model.label.label_sheet import PAPERS
from builder.model.recipe.container import Container
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say

# All in millimetres: the edge of the pages, the gap between what lies on them, the height of a line of words.
EDGE, GAP, WORDS = 9.0, 5.0, 6.0
HEAD, SMALL, TITLE = 14.0, 8.0, 10.0


@dataclass(frozen=True)
class _Item:
    """Something that takes a place on a page, with its size; `bears` is a label that lies on it, from its corner."""

    position: PositionView
    width: float
    height: float
    bears: "_Item | None" = None
    at: tuple[float, float] = (0.0, 0.0)


Line = tuple[_Item, ...]
Group = tuple[Line, ...]


def compose_portfolio(edition: Edition, studio: Studio, _: Address) -> Composed | None:
    """Make the portfolio of all products that have labels in a design; none where it is not asked for."""
    if not studio.profile.labels.portfolio:
        return None
    found = list(_first_of_each(edition))
    if not found:
        return None
    title = say("Labels in all designs")
    width, height = PAPERS[studio.profile.paper]
    page = float(width), float(height)
    pages = [page_of for sheet, plan, laid in found for page_of in _flow(_groups(edition, sheet, plan, laid, page), page)]
    return Composed(LabelsView(sheet_frame(edition, title, title), title, tuple(pages)))


def _first_of_each(edition: Edition) -> Iterator[tuple[ClassPlan, LabelPlan, LaidOut]]:
    """Yield the labels of the first date of each product that have a composed front, with their layout."""
    seen: set[str] = set()
    for sheet in edition.sheets:
        if all(made.batch.recipe.key in seen for made in sheet.made):
            continue
        for plan in labels_planned(edition.studio, sheet):
            if plan.name not in seen and plan.laid_out and plan.laid_out.drawings:
                seen |= {plan.name, plan.made.batch.recipe.key}
                yield sheet, plan, plan.laid_out


def _groups(edition: Edition, sheet: ClassPlan, plan: LabelPlan, laid: LaidOut, page: tuple[float, float]) -> Iterator[Group]:
    """Yield what the pages of one product show; a group stands together on a page."""
    studio, setter = edition.studio, setter_of(edition.studio.typefaces)
    wide = page[0] - 2 * EDGE
    container, kind = studio.container(plan.filling.fill.container), container_name(studio, plan.filling.fill)
    portrait = portrait_of(studio, plan.made.batch, dict(plan.jars[0].variant.chosen))
    title = _words(setter, f"{plan.name} ({kind})", HEAD, wide)
    shown = _shown(laid, portrait, Ink.ACCENT)
    yield (title,), (*(_container(container, shown, laid) if container and shown else ()), *_backs(laid, portrait))
    outlines: list[tuple[str, _Item]] = []
    for design in DESIGNS.values():
        printed, to_colour = (_in(studio, sheet, plan, laid, design, to_fill_in=to_fill_in) for to_fill_in in (False, True))
        found = [item for ink in (Ink.ACCENT, Ink.GREY) if printed and (item := _shown(printed, portrait, ink))]
        outlines += [(design.name, item)] if to_colour and (item := _shown(to_colour, portrait, Ink.OUTLINES)) else []
        name = design.name if found else say("{design}: does not fit here", design=design.name)
        yield (_words(setter, name, TITLE, wide),), tuple(found)
    for number, row in enumerate(_wrapped([item for _, item in outlines], wide)):
        names = [(name, item) for name, item in outlines if item in row]
        heading = ((_words(setter, say("To colour in"), TITLE, wide),),) if not number else ()
        yield (*heading, tuple(_words(setter, name, SMALL, item.width) for name, item in names), row)


def _in(studio: Studio, sheet: ClassPlan, plan: LabelPlan, laid: LaidOut, design: Design, *, to_fill_in: bool) -> LaidOut | None:
    """Lay out a label in a design on the labels that its date has, else on the best ones for that design."""
    batch, filling, dressed = plan.made.batch, plan.filling, [(plan.texts[0], design)]
    stock = Stock(laid.stock, laid.count, laid.back.stock if laid.back else None)
    found = lay_out_composed(dressed, stock, rules_of(studio, batch, filling), setter_of(studio.typefaces), to_fill_in=to_fill_in)
    return found or lay_out_dressed(studio, sheet, batch, filling, dressed, to_fill_in=to_fill_in)


def _shown(laid: LaidOut, portrait: Portrait, ink: Ink) -> _Item | None:
    """Return the front of a label, without a back that stands beside it; None where nothing of it is composed."""
    drawing = laid.drawings[0][0] if laid.drawings else None
    if drawing is None:
        return None
    whole, wide = whole_of(laid.stock), drawing.on.width
    blocks = [block for block in laid.positions[0][0] if block.x < wide]
    return _item(replace(position_of(blocks), drawing_html=drawn(drawing, portrait, whole, ink)), laid, wide)


def _backs(laid: LaidOut, portrait: Portrait) -> Iterator[_Item]:
    """Yield the back, or the whole label where the front and the back are one."""
    if laid.back:
        yield _item(position_of(laid.back.positions[0][0]), laid.back)
    elif laid.count == 2:
        yield _item(position_of(laid.positions[0][1]), laid)
    elif drawing := laid.drawings[0][0]:
        whole = drawn(drawing, portrait, whole_of(laid.stock))
        yield _item(replace(position_of(laid.positions[0][0]), drawing_html=whole), laid)


def _item(position: PositionView, laid: LaidOut, wide: float | None = None) -> _Item:
    whole = whole_of(laid.stock)
    corner, width = whole.width / 2 if whole.is_round else 0.0, whole.width if wide is None else wide
    edge = MarkView("cut", f"{place(0, 0, width, whole.height)};border-radius:{corner:.4f}mm")
    return _Item(replace(position, marks=(edge,)), width, whole.height)


def _words(setter: Setter, text: str, points: float, width: float) -> _Item:
    blocks = setter.stack([((Run(text, bold=points > SMALL),), points)], 0.0, 0.0, width, 0.0) or ()
    return _Item(position_of(blocks), width, max((block.below for block in blocks), default=WORDS))


def _container(container: Container, label: _Item, laid: LaidOut) -> Iterator[_Item]:
    """Draw what is known of a container at its size, its side with the rounded corners of a vessel, its lid, or its flat face, and the
    label in the middle of what bears it; of a label that goes around, what is seen from in front."""
    lengths = {name: float(length.millimetres) for name, length in container.outside.measured}
    shapes = []
    if "height" in lengths and "width" in lengths:
        shapes.append((lengths["width"], lengths["height"], 2.0))
    elif "height" in lengths and "around" in lengths:
        shapes.append((lengths["around"] / pi, lengths["height"], 3.0))
    if "lid" in lengths:
        shapes.append((lengths["lid"], lengths["lid"], lengths["lid"] / 2))
    bearing = shapes[-1] if laid.stock.is_round and shapes else next(iter(shapes), None)
    for shape in shapes:
        width, height, radius = shape
        mark = MarkView("outline", f"{place(0, 0, width, height)};border-radius:{radius:.4f}mm")
        item = _Item(PositionView(marks=(mark,)), width, height)
        if shape is bearing and label.height <= height + 0.1:
            seen = replace(label, width=min(label.width, width))
            item = replace(item, bears=seen, at=((width - seen.width) / 2, (height - seen.height) / 2))
        yield item


def _flow(groups: Iterable[Group], page: tuple[float, float]) -> Iterator[tuple[PositionView, ...]]:
    """Lay groups one below the other, a group that does not fit on what is left of a page on the next one."""
    positions: list[PositionView] = []
    y = EDGE
    for group in groups:
        lines = [line for one in group for line in _wrapped(one, page[0] - 2 * EDGE)]
        high = sum(max(item.height for item in line) + GAP for line in lines) - GAP
        if positions and y + high > page[1] - EDGE:
            yield tuple(positions)
            positions, y = [], EDGE
        for line in lines:
            tallest = max(item.height for item in line)
            if positions and y + tallest > page[1] - EDGE:
                yield tuple(positions)
                positions, y = [], EDGE
            positions += _placed(line, y)
            y += tallest + (GAP if tallest > WORDS else 1.0)
    if positions:
        yield tuple(positions)


def _placed(line: Line, y: float) -> Iterator[PositionView]:
    """Lay a line of items side by side, with what they bear on them."""
    x = EDGE
    for item in line:
        yield replace(item.position, style=place(x, y, item.width, item.height))
        if item.bears:
            on = place(x + item.at[0], y + item.at[1], item.bears.width, item.bears.height)
            yield replace(item.bears.position, style=f"{on};overflow:hidden")
        x += item.width + GAP


def _wrapped(line: Iterable[_Item], wide: float) -> Iterator[Line]:
    """Break a line of items where they are wider together than a page."""
    row: list[_Item] = []
    for item in line:
        if row and sum(one.width + GAP for one in row) + item.width > wide:
            yield tuple(row)
            row = []
        row.append(item)
    if row:
        yield tuple(row)
