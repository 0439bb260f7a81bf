"""A sheet of labels by its dimensions alone: a grid of positions on a page."""

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.place import NOWHERE, Place
from builder.model.recipe.quantity import Length

# The width and height of each paper in millimetres: letter, 8.5 by 11 inches, and A4 (ISO 216).


class Paper(StrEnum):
    """A size of paper."""

    LETTER = "letter"
    A4 = "A4"

    @property
    def size(self) -> tuple[Fraction, Fraction]:
        """Return its width and its height in millimetres (ANSI/ASME Y14.1, ISO 216)."""
        return (Fraction(2159, 10), Fraction(2794, 10)) if self is Paper.LETTER else (Fraction(210), Fraction(297))


@dataclass(frozen=True)
class LabelSheet:
    """One kind of sheet. `left` and `top` are the margins before the first position, `across` and `down` the gaps between positions.

    `corner` is the radius of the corners; `is_round` says that the positions are circles. `hole` is the diameter of the hole of a tag
    (None for labels); `is_cut` says that it is plain paper to be cut, so that the lines of the positions are printed.
    """

    name: str
    paper: Paper
    columns: int
    rows: int
    width: Length
    height: Length
    left: Length
    top: Length
    across: Length
    down: Length
    corner: Length
    is_round: bool = False
    hole: Length | None = None
    is_cut: bool = False
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def positions(self) -> int:
        """Return the number of positions of a sheet."""
        return self.columns * self.rows

    def position(self, number: int) -> tuple[float, float]:
        """Return the left and top edge of a position in millimetres from those of the page; positions are counted from 0, row by row."""
        row, column = divmod(number, self.columns)
        x = self.left.millimetres + column * (self.width.millimetres + self.across.millimetres)
        y = self.top.millimetres + row * (self.height.millimetres + self.down.millimetres)
        return float(x), float(y)


@dataclass(frozen=True)
class LabelWishes:
    """What a studio, or a class of its own, asks of its labels: a sheet by name, text on one label or on two, a label to colour in, tags,
    a design by name, names that students give to what they have made, a page of all designs, spare labels of each product, the logo.

    None means: not said. `right` and `down` move everything on the page, since a printer may be off.
    """

    sheet: str | None = None
    panels: int | None = None
    to_colour: bool | None = None
    tags: bool | None = None
    right: Length | None = None
    down: Length | None = None
    design: str | None = None
    own_names: bool = False
    portfolio: bool = False
    spare: int | None = None
    logo: bool = False
    place: Place = field(default=NOWHERE, compare=False)


NO_WISHES = LabelWishes()
