"""What all tries of one front share, and where its words may begin. Lengths in millimetres, type in points."""

from dataclasses import dataclass

from builder.compose.label.label_texts import LabelText
from builder.compose.label_front.designs import Design, Ornament, border_scale
from builder.compose.label_front.names import Lettering
from builder.compose.label_front.space import Space
from builder.compose.label_layout.label_lines import Setter
from builder.compose.label_layout.rules import LabelRules
from builder.compose.ornament.colouring import SMALLEST

MOST_NET, LEAST_NAME = 0.7, 12.0
GAP, LEAST_MARK = 1.2, 7.0
CROWN, CROWN_AT = 10.0, 1.4  # The side of a mark above a garland, and how far it stays off the edge.


@dataclass(frozen=True)
class Ground:
    """What all tries of one front share. `space` is where words may stand, `label` all of the label that the front has.

    `to_fill_in`: a title is to be written in place of the name. `is_rich`: to colour in, with the fields that only its design has.
    `is_roomy`: what it is stands in larger type than it has to.
    """

    text: LabelText
    space: Space
    label: Space
    rules: LabelRules
    setter: Setter
    design: Design
    lettering: Lettering
    to_fill_in: bool
    is_rich: bool
    is_roomy: bool

    @property
    def crown(self) -> float:
        """Return the side of a mark that stands at the top of a garland; none for other designs, nor where it is to be coloured in."""
        if self.design.ornament is not Ornament.WREATH or self.to_fill_in:
            return 0.0
        return CROWN * border_scale(self.label.width, self.label.height)

    @property
    def top(self) -> float:
        """Return where words may begin."""
        crowned = self.label.y + CROWN_AT + self.crown + GAP / 2 if self.crown else 0.0
        return max(self.space.y + (1.5 if self.space.is_round else 0.0), crowned)

    @property
    def least_mark(self) -> float:
        """Return the least side of a mark."""
        return SMALLEST if self.to_fill_in else LEAST_MARK

    @property
    def least_name(self) -> float:
        """Return the least size of the name: net contents are never above MOST_NET of it."""
        return max(self.rules.net / MOST_NET, self.rules.text * 1.4, LEAST_NAME)

    @property
    def is_centred(self) -> bool:
        """Tell whether lines stand in the middle."""
        return self.design.is_centred or self.space.is_round

    @property
    def edge(self) -> float:
        """Return how far to the left letters may reach that bring space of their own."""
        return self.label.x + self.rules.inset
