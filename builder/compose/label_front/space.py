"""Where text may stand on a front: a rectangle or a circle, which is narrower towards its top and bottom. All in millimetres."""

from dataclasses import dataclass, replace
from math import sqrt


@dataclass(frozen=True)
class Space:
    """A rectangle from the corner of the label, or the circle in it."""

    x: float
    y: float
    width: float
    height: float
    is_round: bool = False

    @property
    def below(self) -> float:
        """Return where it ends."""
        return self.y + self.height

    @property
    def middle(self) -> float:
        """Return the middle from left to right."""
        return self.x + self.width / 2

    def across(self, top: float, bottom: float) -> tuple[float, float]:
        """Return the left edge and the width of what is free all the way between two heights; no width where that is nothing."""
        if not self.is_round:
            return self.x, self.width
        radius, centre = self.width / 2, self.y + self.height / 2
        off = max(abs(top - centre), abs(bottom - centre))
        half = sqrt(radius**2 - off**2) if off < radius else 0.0
        return self.middle - half, 2 * half

    def inside(self, edge: float) -> "Space":
        """Return it without an edge all around."""
        return replace(self, x=self.x + edge, y=self.y + edge, width=self.width - 2 * edge, height=self.height - 2 * edge)
