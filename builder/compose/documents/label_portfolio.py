"""All labels of the studio in every design, in colour and in grey, at their size beside their container: to choose a design by.

Each product has its own pages, with the label of its first date; the back, which is alike in every design, stands once. A container is
drawn from its measures as it is seen from the side, or its lid from above. It is made where `labels: {portfolio: yes}` is written.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import pi

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import sheet_frame
from builder.compose.label.label_texts import Run
from builder.compose.label_front.designs import DESIGNS
from builder.compose.label_front.drawn import Ink, drawn
from builder.compose.label_layout.composed import lay_out_composed, whole_of
from builder.compose.label_layout.label_heights import rules_of
from builder.compose.label_layout.label_layout import LaidOut
from builder.compose.label_layout.label_lines import Setter, setter_of
from builder.compose.label_layout.label_pages import place, position_of
from builder.compose.label_layout.label_plans import LabelPlan, plan_labels
from builder.compose.label_layout.label_sheets import Stock
from builder.compose.ornament.portrait import portrait_of
from builder.compose.recipe.portion_words import container_name
from builder.compose.views.labels import LabelsView, MarkView, PositionView
from builder.model.label.label_sheet import PAPERS
from builder.model.recipe.container import Container
from builder.model.studio import Studio
from builder.words.say import say

# All in millimetres: the edge of the pages, the gap between what lies on them, the height of a line of words.
EDGE, GAP, WORDS = 12.0, 6.0, 6.0
HEAD, SMALL = 14.0, 8.0


@dataclass(frozen=True)
class _Item:
    """Something that takes a place on a page, with its size."""

    position: PositionView
    width: float
    height: float


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
    pages = [page_of for plan, laid in found for page_of in _flow(list(_items(edition, plan, laid, page)), page)]
    return Composed(title, LabelsView(sheet_frame(edition, title, title), title, tuple(pages)))


def _first_of_each(edition: Edition) -> Iterator[tuple[LabelPlan, LaidOut]]:
    """Give the labels of the first date of each product that have a composed front, with their layout."""
    seen: set[str] = set()
    for sheet in edition.sheets:
        if all(made.batch.recipe.key in seen for made in sheet.made):
            continue
        for plan in plan_labels(edition.studio, sheet):
            if plan.name not in seen and plan.laid_out and plan.laid_out.drawings:
                seen |= {plan.name, plan.made.batch.recipe.key}
                yield plan, plan.laid_out


Row = tuple[_Item, ...]


def _items(edition: Edition, plan: LabelPlan, laid: LaidOut, page: tuple[float, float]) -> Iterator[Row]:
    """Give what the pages of one product show: its name, its container, the back, then each design in colour and in grey.

    What is given together stands side by side where the paper is wide enough.
    """
    studio, setter = edition.studio, setter_of(edition.studio.typefaces)
    container = studio.container(plan.filling.fill.container)
    kind = container_name(studio, plan.filling.fill)
    yield (_words(setter, f"{plan.name} ({kind})", HEAD, page[0] - 2 * EDGE),)
    if container:
        yield tuple(_container(setter, container, kind))
    portrait = portrait_of(studio, plan.made.batch, dict(plan.jars[0].variant.chosen))
    rules = rules_of(studio, plan.made.batch, plan.filling)
    stock = Stock(laid.stock, laid.count, laid.back.stock if laid.back else None)
    for number, design in enumerate(DESIGNS.values()):
        one = lay_out_composed([(plan.texts[0], design)], stock, rules, setter)
        if one is None:
            yield (_words(setter, say("{design}: does not fit here", design=design.name), SMALL, 50.0),)
            continue
        if number == 0:
            yield tuple(_backs(one))
        whole = whole_of(one.stock)
        (drawing, *_), (blocks, *_) = one.drawings[0], one.positions[0]
        both = (
            _item(replace(position_of(blocks), drawing_html=drawn(drawing, portrait, whole, ink) if drawing else ""), one)
            for ink in (Ink.ACCENT, Ink.GREY)
        )
        yield (*both, _words(setter, design.name, SMALL, 18.0))


def _backs(laid: LaidOut) -> Iterator[_Item]:
    if laid.back:
        yield _item(position_of(laid.back.positions[0][0]), laid.back)
    elif laid.count == 2:
        yield _item(position_of(laid.positions[0][1]), laid)


def _item(position: PositionView, laid: LaidOut) -> _Item:
    whole = whole_of(laid.stock)
    corner = whole.width / 2 if whole.is_round else 0.0
    edge = MarkView("cut", f"{place(0, 0, whole.width, whole.height)};border-radius:{corner:.4f}mm")
    return _Item(replace(position, marks=(edge,)), whole.width, whole.height)


def _words(setter: Setter, text: str, points: float, width: float) -> _Item:
    blocks = setter.stack([((Run(text, bold=points == HEAD),), points)], 0.0, 0.0, width, 0.0) or ()
    return _Item(position_of(blocks), width, max((block.below for block in blocks), default=WORDS))


def _container(setter: Setter, container: Container, kind: str) -> Iterator[_Item]:
    """Draw what is known of a container at its size: its side with the rounded corners of a vessel, its lid, or its flat face."""
    outside = container.outside
    lengths = {name: float(length.millimetres) for name, length in outside.measured}
    shapes = []
    if "height" in lengths and "width" in lengths:
        shapes.append((lengths["width"], lengths["height"], 2.0))
    elif "height" in lengths and "around" in lengths:
        shapes.append((lengths["around"] / pi, lengths["height"], 3.0))
    if "lid" in lengths:
        shapes.append((lengths["lid"], lengths["lid"], lengths["lid"] / 2))
    for width, height, radius in shapes:
        mark = MarkView("outline", f"{place(0, 0, width, height)};border-radius:{radius:.4f}mm")
        words = setter.stack([((Run(kind),), SMALL)], 1.0, height / 2 - 2.0, max(width - 2.0, 1.0), 0.0) or ()
        yield _Item(position_of(words, marks=(mark,)), width, height)


def _flow(rows: list[Row], page: tuple[float, float]) -> Iterator[tuple[PositionView, ...]]:
    """Lay items side by side, then below, then on the next page; what is given together is not parted where a page is wide enough."""
    positions: list[PositionView] = []
    x, y, high = EDGE, EDGE, 0.0
    for row in rows:
        wide = sum(item.width + GAP for item in row) - GAP
        for number, item in enumerate(row):
            needed = wide if not number and wide <= page[0] - 2 * EDGE else item.width
            if x > EDGE and x + needed > page[0] - EDGE:
                x, y, high = EDGE, y + high + GAP, 0.0
            if positions and y + item.height > page[1] - EDGE:
                yield tuple(positions)
                positions, x, y, high = [], EDGE, EDGE, 0.0
            positions.append(replace(item.position, style=place(x, y, item.width, item.height)))
            x, high = x + item.width + GAP, max(high, item.height)
    if positions:
        yield tuple(positions)
