"""A source, and a figure: a number that cannot be made without its source."""

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from functools import cached_property

from builder.model.place import NOWHERE, Place


class Known(StrEnum):
    """How a figure is known."""

    READ = "read"
    MEMORY = "memory"
    COMPUTED = "computed"
    PRACTICE = "practice"
    SUPPLIER = "supplier"
    MEASURED = "measured"


OF_ONE_PACK = (Known.SUPPLIER, Known.MEASURED)


class SourceKind(StrEnum):
    """What kind of work a source is; `UNREAD` where its entry cannot be read."""

    STANDARD = "standard"
    PHARMACOPOEIA = "pharmacopoeia"
    LAW = "law"
    HANDBOOK = "handbook"
    ARTICLE = "article"
    GUIDANCE = "official guidance"
    TRADE = "trade"
    COMPUTED = "computed"
    PRACTICE = "practice"
    UNREAD = "unread"


@dataclass(frozen=True)
class Source:
    """A book, standard, law or page that figures cite, under the short name `key`."""

    key: str
    title: str
    kind: SourceKind
    by: str = ""
    about: str = ""


@dataclass(frozen=True)
class Figure:
    """One published value or range, with where it was published.

    `low` and `high` are equal for a single value; `high` is None where only a minimum is published. `typical` is the value itself
    or the middle of the range: the source prints no other.
    """

    low: Fraction
    high: Fraction | None
    unit: str
    source: Source
    at: str
    known: Known
    when: str = ""
    note: str = ""
    because: str = ""
    place: Place = field(default=NOWHERE, compare=False)

    @cached_property
    def typical(self) -> Fraction:
        """Return the value, or the middle of the range."""
        return self.low if self.high is None else (self.low + self.high) / 2

    @property
    def highest(self) -> Fraction:
        """Return the upper end, or the only value there is."""
        return self.low if self.high is None else self.high


@dataclass(frozen=True)
class Figures:
    """All published values of one property: the one in use first, then the others, kept for comparison."""

    in_use: Figure
    others: tuple[Figure, ...] = ()

    @property
    def all(self) -> tuple[Figure, ...]:
        """Return every entry, the one in use first."""
        return (self.in_use, *self.others)
