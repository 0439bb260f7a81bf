"""What is drawn on a label: its mark, what lies behind and beside it. Lengths in millimetres from the corner of the label."""

from dataclasses import dataclass

from builder.compose.label_front.designs import Design, Ornament
from builder.compose.label_front.space import Space


@dataclass(frozen=True)
class Drawing:
    """What is drawn on a label, in millimetres from its corner: the square of the mark, where the ground of the accent ends, threads.

    `on` is the part of the label that the front has: nothing is drawn beyond it. A side of 0 is no mark; `ground` is left, top, width and
    height. `leaves_along` are the edges along which leaves to colour in lie, from the top clockwise from 0. `is_rich`: what is to be
    coloured in has the fields that only its design has.
    """

    design: Design
    on: Space
    x: float = 0.0
    y: float = 0.0
    side: float = 0.0
    ground: tuple[float, float, float, float] | None = None
    threads: tuple[tuple[float, float, float], ...] = ()
    leaves_along: tuple[int, ...] = (0,)
    is_rich: bool = False

    @property
    def is_marked(self) -> bool:
        """Tell whether something that the recipe draws is seen: its mark, its petals as a wreath, its shares as a bar."""
        return self.side > 0 or self.design.ornament is Ornament.WREATH or (self.is_rich and self.design.ornament is Ornament.CORNER)

    @property
    def has_fields(self) -> bool:
        """Tell whether a front to colour in has fields that a crayon fills: those of what the recipe draws, or of a woven band."""
        return self.is_marked or (self.is_rich and bool(self.threads))
