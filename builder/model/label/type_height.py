"""How high the letters of a label must be at least, from the rows of the table of type heights."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.label.typeface import MeasuredOn
from builder.model.place import NOWHERE, Place
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.quantity import Length


class LabelStatement(StrEnum):
    """Which part of a label a row is about."""

    NET_CONTENTS = "net contents"
    TEXT = "text"
    SMALL_PACK = "ingredients on a small pack"


class HeightBy(StrEnum):
    """What a height depends on: the area of the panel or of all of the outside that can bear a label, in mm2; the contents, in g or mL."""

    PANEL = "panel"
    SURFACE = "surface"
    CONTENTS = "contents"


@dataclass(frozen=True)
class HeightRule:
    """One row: it holds for what is over `over` and up to `up_to`, or for a surface that is less than that.

    Without `by` it holds always; None as an end means that there is none.
    """

    region: str
    statement: LabelStatement
    by: HeightBy | None
    over: Fraction | None
    up_to: Fraction | None
    height: Length
    measured_on: MeasuredOn
    source: Source
    at: str
    known: Known
    place: Place = field(default=NOWHERE, compare=False)

    def holds(self, area: Fraction, contents: Fraction) -> bool:
        """Tell whether the row is the one for a panel, or a surface, of that area (mm2) and those contents (g or mL)."""
        if self.by is None:
            return True
        if self.by is HeightBy.SURFACE:
            return self.up_to is None or area < self.up_to
        value = area if self.by is HeightBy.PANEL else contents
        return (self.over is None or value > self.over) and (self.up_to is None or value <= self.up_to)


def rules_for(
    rules: Iterable[HeightRule], region: str, statement: LabelStatement, area: Fraction, contents: Fraction
) -> tuple[HeightRule, ...]:
    """Return the rows that hold for one statement of one label."""
    return tuple(rule for rule in rules if rule.region == region and rule.statement is statement and rule.holds(area, contents))
