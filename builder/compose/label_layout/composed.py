"""A label with a composed front: beside its back on one label, or with the back on a label of its own, the facts to write on at its foot.

All labels of a product are laid out alike. The text of the back is as large as fits, and never below what the law asks for.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from builder.compose.label.label_texts import LabelText, Paragraph, Run
from builder.compose.label_front.designs import Design
from builder.compose.label_front.front import Front, front_of
from builder.compose.label_front.space import Space
from builder.compose.label_layout.label_layout import GAP, GUTTER, LaidOut, LaidPosition, box_of
from builder.compose.label_layout.label_lines import Block, Setter, line_height
from builder.compose.label_layout.label_sheets import SheetUse
from builder.compose.label_layout.rules import LabelRules
from builder.compose.recipe.wording import NBSP
from builder.model.label.label_sheet import LabelSheet
from builder.model.remembered import remembered

LARGEST, STEP = 9.5, 0.25
SHARES = (0.36, 0.4, 0.44, 0.48, 0.52, 0.56)
BESIDE = 2.5  # From what a front draws to its edge to the words of the back beside it, in millimetres.
LONGEST_TO_SIGN = 48.0  # How long a line to sign is at the most, in millimetres.
NAME_COUNTS = 0.12  # How much a point of the name is worth beside a point of the text on the back.

Dressed = tuple[LabelText, Design]


@dataclass(frozen=True)
class _Way:
    """The places of a front and of a back; `is_apart`: the back has a label of its own. `label` is what the front has to its edges."""

    front: Space
    label: Space
    back: Space
    is_apart: bool


def lay_out_composed(
    labels: Sequence[Dressed], use: SheetUse, rules: LabelRules, setter: Setter, *, to_fill_in: bool = False
) -> LaidOut | None:
    """Lay out labels of one product, each in its design; None where one of them has no composed front or no room for its back.

    `to_fill_in`: fronts have a title to write in place of the name.
    """
    best: tuple[float, LaidOut] | None = None
    for way in _ways(use, rules):
        fronts = _fronts(labels, way, rules, setter, to_fill_in=to_fill_in)
        if fronts is None:
            continue
        found = _with_backs(labels, use, way, fronts, rules, setter)
        if found is None:
            continue
        worth = found.points + NAME_COUNTS * min(front.name for front in fronts.values())
        if best is None or worth > best[0]:
            best = worth, found
    return best[1] if best else None


def whole_of(sheet: LabelSheet) -> Space:
    """Return a label to its edges."""
    return Space(0.0, 0.0, float(sheet.width.millimetres), float(sheet.height.millimetres), sheet.is_round)


def inside_of(sheet: LabelSheet, inset: float) -> Space:
    """Return where text may stand on a label."""
    if sheet.is_round:
        return whole_of(sheet).inside(inset)
    box = box_of(sheet, inset)
    return Space(box.x, box.y, box.width, box.height)


def _ways(one: SheetUse, rules: LabelRules) -> Iterator[_Way]:
    sheet = one.sheet
    whole, inside = whole_of(sheet), inside_of(sheet, rules.inset)
    if one.back is not None:
        yield _Way(inside, whole, inside_of(one.back, rules.inset), is_apart=True)
        return
    if one.count == 2:
        yield _Way(inside, whole, inside, is_apart=True)
        return
    if sheet.is_round or sheet.hole is not None:
        return
    for share in SHARES:
        width = inside.width * share - GUTTER / 2
        front = Space(inside.x, inside.y, width, inside.height)
        label = Space(0.0, 0.0, inside.x + width + rules.inset, whole.height)
        back_at = label.width + BESIDE
        yield _Way(front, label, Space(back_at, inside.y, inside.x + inside.width - back_at, inside.height), is_apart=False)


def _fronts(labels: Sequence[Dressed], way: _Way, rules: LabelRules, setter: Setter, *, to_fill_in: bool) -> dict[Dressed, Front] | None:
    fronts: dict[Dressed, Front] = {}
    for text, design in labels:
        if (text, design) not in fronts:
            front = _front(replace(text, lines=(), back=()), way.front, way.label, rules, _Faces(setter), design, to_fill_in)
            if front is None:
                return None
            fronts[text, design] = front
    return fronts


@dataclass(frozen=True)
class _Faces:
    """A setter, which for what is remembered is like any other of the same faces."""

    setter: Setter

    def __hash__(self) -> int:
        """Return what is alike for the same faces."""
        return hash((id(self.setter.faces), self.setter.hyphenates))

    def __eq__(self, other: object) -> bool:
        """Tell whether the faces are the same."""
        if not isinstance(other, _Faces):
            return False
        return other.setter.faces is self.setter.faces and other.setter.hyphenates == self.setter.hyphenates


@remembered(4096, LabelText, Space, LabelRules, _Faces, Design)
def _front(text: LabelText, space: Space, label: Space, rules: LabelRules, faces: _Faces, design: Design, to_fill_in: bool) -> Front | None:
    """Compose a front: the same one for every date of a class, since nothing on it is of one day."""
    each = (front_of(text, space, label, rules, setter, design, to_fill_in=to_fill_in) for setter in faces.setter.in_turn)
    return next((front for front in each if front), None)


def _with_backs(
    labels: Sequence[Dressed], use: SheetUse, way: _Way, fronts: dict[Dressed, Front], rules: LabelRules, setter: Setter
) -> LaidOut | None:
    texts = dict.fromkeys(text for text, _ in labels)
    points = rules.text
    found = ((one, backs) for one in setter.in_turn if (backs := _backs(texts, way.back, points, rules, one)) is not None)
    setter, backs = next(found, (setter, None))
    if backs is None:
        return None
    size = LARGEST
    while size > rules.text:
        larger = _backs(texts, way.back, size, rules, setter)
        if larger:
            points, backs = size, larger
            break
        size -= STEP
    both = [(fronts[text, design], backs[text]) for text, design in labels]
    if use.back is not None:
        on_the_other = LaidOut(use.back, points, tuple((LaidPosition(back),) for _, back in both))
        return LaidOut(use.sheet, points, tuple((LaidPosition(front.blocks, front.drawing),) for front, _ in both), on_the_other)
    if way.is_apart:
        apart = tuple((LaidPosition(front.blocks, front.drawing), LaidPosition(back)) for front, back in both)
        return LaidOut(use.sheet, points, apart)
    return LaidOut(use.sheet, points, tuple((LaidPosition((*front.blocks, *back), front.drawing),) for front, back in both))


def _backs(
    texts: dict[LabelText, None], space: Space, points: float, rules: LabelRules, setter: Setter
) -> dict[LabelText, tuple[Block, ...]] | None:
    """Set all backs alike: where one of them needs its ingredient list in capitals at the least size, they all have it so."""
    for in_capitals in (False, True) if points == rules.text else (False,):
        backs = {}
        for text in texts:
            back = _back(text, space, points, rules, setter, in_capitals=in_capitals)
            if back is None:
                break
            backs[text] = back
        else:
            return backs
    return None


def _back(
    text: LabelText, space: Space, points: float, rules: LabelRules, setter: Setter, *, in_capitals: bool
) -> tuple[Block, ...] | None:
    """Set a back: the ingredient list and all that follows from the top, the facts at the foot; None where it is too much.

    A list in capitals is as high as one in small letters of a larger size, and takes less room.
    """
    facts = _facts(text, space, points, setter)
    if not in_capitals or not text.back:
        return _back_of(text.back, facts, space, points, rules.ingredients, setter)
    listed = tuple(replace(run, text=run.text.upper()) for run in text.back[0])
    lower = max(setter.faces[face].small_o / setter.faces[face].capital for face in ("regular", "bold"))
    return _back_of((listed, *text.back[1:]), facts, space, points, rules.ingredients * lower, setter)


@remembered(4096, tuple, Space, float)
def _back_of(
    back: tuple[Paragraph, ...], facts: tuple[Paragraph, ...], space: Space, points: float, of_list: float, setter: Setter
) -> tuple[Block, ...] | None:
    above = [(one, points * (1 if number else of_list)) for number, one in enumerate(back)]
    below = [(line, points) for line in facts]
    if space.is_round:
        return _round_back([*above, *below], space, setter)
    foot = setter.stack(below, space.x, space.y, space.width, GAP / 2)
    blocks = setter.stack(above, space.x, space.y, space.width, GAP)
    if foot is None or blocks is None:
        return None
    down = space.below - (foot[-1].below if foot else space.y)
    lowest = blocks[-1].below + GAP if blocks else space.y
    if space.y + down < lowest - 1e-9:
        return None
    return (*blocks, *(Block(one.x, one.y + down, one.width, one.points, one.lines) for one in foot))


def _facts(text: LabelText, space: Space, points: float, setter: Setter) -> tuple[Paragraph, ...]:
    """Return the day with the batch, in one line where both have room in it, and a line to sign that is as long as it may be."""
    if len(text.lines) != 3:
        return text.lines
    on, by, batch = text.lines
    together = (*on, Run(f"{NBSP}{NBSP} "), *batch)
    if space.is_round:
        return (together, by)
    taken = sum(setter.width(run.text, run.bold, points) for run in by)
    by = tuple(replace(run, blank=max(run.blank, min(LONGEST_TO_SIGN, space.width - taken - 0.5))) if run.blank else run for run in by)
    lines = setter.lines(together, points, space.width)
    return (together, by) if lines and len(lines) == 1 else (on, batch, by)


def _round_back(paragraphs: Sequence[tuple[Paragraph, float]], space: Space, setter: Setter) -> tuple[Block, ...] | None:
    """Set paragraphs into a circle, each line as wide as the circle is at its height, the whole from as high up as lets it end inside."""
    start = space.y
    while start < space.y + space.height / 3:
        blocks = _round_from(paragraphs, space, setter, start)
        if blocks:
            return blocks
        start += 0.5
    return None


def _round_from(paragraphs: Sequence[tuple[Paragraph, float]], space: Space, setter: Setter, y: float) -> tuple[Block, ...]:
    blocks: list[Block] = []
    for paragraph, points in paragraphs:
        high, top = line_height(points), y

        def width_of(number: int, top: float = top, high: float = high) -> float:
            return space.across(top + number * high, top + (number + 1) * high)[1]

        lines = setter.lines_in(paragraph, points, width_of)
        if lines is None:
            return ()
        wide = max((width_of(number) for number in range(len(lines))), default=0.0)
        blocks.append(Block(space.middle - wide / 2, top, wide, points, lines, is_centred=True))
        y = blocks[-1].below + GAP / 2
    return tuple(blocks) if not blocks or blocks[-1].below <= space.below else ()
