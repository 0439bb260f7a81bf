"""All labels of the studio in every design, at their size: in colour, in grey, and as outlines to colour in. To choose a design by.

Each product has its own pages, with the label of its first date: first on its container, drawn from its measures as it is seen from the
side, or its lid from above; then the back, which is alike in every design; then a line for each design, and last the outlines that are too
wide to stand beside what is printed. It is made where `labels: {portfolio: yes}` is written.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace
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
from builder.compose.label_layout.label_sheets import SheetUse, wished
from builder.compose.label_layout.on_pages import GAP, WORDS, Group, Item, Page, in_lines, on_pages, wide_of
from builder.compose.ornament.portrait import Portrait, portrait_of
from builder.compose.recipe.portion_words import container_name
from builder.compose.views.labels import LabelsView, MarkView, PositionView
from builder.model.recipe.container import Container
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say

HEAD, SMALL, TITLE = 14.0, 8.0, 10.0  # Sizes of words in points.

Captioned = tuple[str, Item]


def compose_portfolio(edition: Edition, studio: Studio, _: Address) -> Composed | None:
    """Make the portfolio of all products that have labels in a design; none where it is not asked for."""
    if not studio.profile.labels.portfolio:
        return None
    found = list(_first_of_each(edition))
    if not found:
        return None
    title = say("Labels in all designs")
    width, height = studio.profile.paper.size
    page = float(width), float(height)
    pages = [page_of for plan, label_plan, laid in found for page_of in on_pages(_groups(edition, plan, label_plan, laid, page), page)]
    return Composed(LabelsView(sheet_frame(edition, title, title), title, tuple(pages)))


def _first_of_each(edition: Edition) -> Iterator[tuple[ClassPlan, LabelPlan, LaidOut]]:
    """Yield the labels of the first date of each product that have a composed front, with their layout."""
    seen: set[str] = set()
    for plan in edition.plans:
        if all(made.batch.recipe.key in seen for made in plan.made):
            continue
        for label_plan in labels_planned(edition.studio, plan):
            if label_plan.name not in seen and label_plan.laid_out and label_plan.laid_out.is_composed:
                seen |= {label_plan.name, label_plan.made.batch.recipe.key}
                yield plan, label_plan, label_plan.laid_out


def _groups(edition: Edition, plan: ClassPlan, label_plan: LabelPlan, laid: LaidOut, page: Page) -> Iterator[Group]:
    """Yield what the pages of one product show; a group stands together on a page."""
    studio, setter, wide = edition.studio, setter_of(edition.studio.typefaces), wide_of(page)
    container, kind = studio.container(label_plan.filling.fill.container), container_name(studio, label_plan.filling.fill)
    portrait = portrait_of(studio, label_plan.made.batch, dict(label_plan.jars[0].variant.chosen))
    ink = Ink.OUTLINES if wished(studio, plan).to_colour else Ink.ACCENT
    title = _words(setter, f"{label_plan.name} ({kind})", HEAD, wide)
    yield (title,), (*(_container(container, laid, portrait, ink) if container else ()), *_backs(laid, portrait))
    apart: list[Captioned] = []
    for design in DESIGNS.values():
        printed, outlined = (_in(studio, plan, label_plan, laid, design, to_fill_in=to_fill_in) for to_fill_in in (False, True))
        row = [
            (name, item) for name, how in ((design.name, Ink.ACCENT), (say("in grey"), Ink.GREY)) for item in _shown(printed, portrait, how)
        ]
        if not row:
            yield ((_words(setter, say("{design}: does not fit here", design=design.name), SMALL, wide),),)
        for item in _shown(outlined, portrait, Ink.OUTLINES):
            beside = bool(row) and sum(one.width + GAP for _, one in row) + item.width <= wide and item.height <= row[0][1].height
            (row if beside else apart).append((say("to colour in") if beside else design.name, item))
        yield tuple(line for both in _captioned(setter, row, wide) for line in both)
    for number, both in enumerate(_captioned(setter, apart, wide)):
        yield both if number else ((_words(setter, say("To colour in"), HEAD, wide),), *both)


def _captioned(setter: Setter, named: list[Captioned], wide: float) -> Iterator[Group]:
    """Yield lines of items, each with a line of their names above it; those of designs are in bold."""
    taken = 0
    for line in in_lines([item for _, item in named], wide):
        names = named[taken : taken + len(line)]
        taken += len(line)
        yield tuple(_words(setter, name, TITLE if name in DESIGNS else SMALL, item.width) for name, item in names), line


def _in(studio: Studio, plan: ClassPlan, label_plan: LabelPlan, laid: LaidOut, design: Design, *, to_fill_in: bool) -> LaidOut | None:
    """Lay out a label in a design on the labels that its date has, else on the best ones for that design."""
    batch, filling, dressed = label_plan.made.batch, label_plan.filling, [(label_plan.texts[0], design)]
    sheet = SheetUse(laid.sheet, laid.count, laid.back.sheet if laid.back else None)
    found = lay_out_composed(dressed, sheet, rules_of(studio, batch, filling), setter_of(studio.typefaces), to_fill_in=to_fill_in)
    return found or lay_out_dressed(studio, plan, batch, filling, dressed, to_fill_in=to_fill_in)


def _shown(laid: LaidOut | None, portrait: Portrait, ink: Ink, most: float | None = None) -> Iterator[Item]:
    """Yield the front of a label, without a back that stands beside it; nothing where none is composed.

    Of what is wider than `most` the middle is seen: that of a label around a bottle.
    """
    drawing = laid.labels[0][0].drawing if laid else None
    if laid is None or drawing is None:
        return
    whole, wide = whole_of(laid.sheet), drawing.on.width
    seen = wide if most is None else min(most, wide)
    off = (seen - wide) / 2
    blocks = [replace(block, x=block.x + off) for block in laid.labels[0][0].blocks if block.x < wide]
    art = drawn(drawing, portrait, whole, ink)
    art = f'<div style="{place(off, 0, wide, whole.height)}">{art}</div>' if off else art
    yield _item(replace(position_of(blocks), drawing_html=art), laid, wide, off, seen)


def _backs(laid: LaidOut, portrait: Portrait) -> Iterator[Item]:
    """Yield the back, or the whole label where the front and the back are one."""
    if laid.back:
        yield _item(position_of(laid.back.labels[0][0].blocks), laid.back)
    elif laid.count == 2:
        yield _item(position_of(laid.labels[0][1].blocks), laid)
    elif drawing := laid.labels[0][0].drawing:
        whole = drawn(drawing, portrait, whole_of(laid.sheet))
        yield _item(replace(position_of(laid.labels[0][0].blocks), drawing_html=whole), laid)


def _item(position: PositionView, laid: LaidOut, wide: float | None = None, off: float = 0.0, seen: float | None = None) -> Item:
    whole = whole_of(laid.sheet)
    corner, width = whole.width / 2 if whole.is_round else 0.0, whole.width if wide is None else wide
    edge = MarkView("cut", f"{place(off, 0, width, whole.height)};border-radius:{corner:.4f}mm")
    return Item(replace(position, marks=(edge,)), width if seen is None else seen, whole.height)


def _words(setter: Setter, text: str, points: float, width: float) -> Item:
    blocks = setter.stack([((Run(text, bold=points > SMALL),), points)], 0.0, 0.0, width, 0.0) or ()
    return Item(position_of(blocks), width, max((block.below for block in blocks), default=WORDS))


def _container(container: Container, laid: LaidOut, portrait: Portrait, ink: Ink) -> Iterator[Item]:
    """Draw what is known of a container at its size, its side with the rounded corners of a vessel, its lid, or its flat face, and the
    label in the middle of what bears it; of a label that goes around, what is seen from in front."""
    shapes = list(_seen(container))
    bearing = shapes[-1] if laid.sheet.is_round and shapes else next(iter(shapes), None)
    for shape in shapes:
        width, height, radius = shape
        mark = MarkView("outline", f"{place(0, 0, width, height)};border-radius:{radius:.4f}mm")
        item = Item(PositionView(marks=(mark,)), width, height)
        for label in _shown(laid, portrait, ink, width) if shape is bearing else ():
            if label.height <= height + 0.1:
                item = replace(item, bears=label, at=((width - label.width) / 2, (height - label.height) / 2))
        yield item


def _seen(container: Container) -> Iterable[tuple[float, float, float]]:
    """Yield the width, the height and the corners of the sides of a container that are measured."""
    lengths = {name: float(length.millimetres) for name, length in container.outside.measured}
    if "height" in lengths and "width" in lengths:
        yield lengths["width"], lengths["height"], 2.0
    elif "height" in lengths and "around" in lengths:
        yield lengths["around"] / pi, lengths["height"], 3.0
    if "lid" in lengths:
        yield lengths["lid"], lengths["lid"], lengths["lid"] / 2
