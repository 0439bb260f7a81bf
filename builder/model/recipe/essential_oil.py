"""What is published of an essential oil: its constituents, and the span of each over all works."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction

from builder.model.place import NOWHERE, Place
from builder.model.recipe.figure import Known, Source


@dataclass(frozen=True)
class Constituent:
    """One constituent of one oil as one work published it, from `low` to `high` (shares of one); both None where no figure is kept."""

    oil: str
    inci: tuple[str, ...]
    name: str
    low: Fraction | None
    high: Fraction | None
    source: Source
    at: str
    known: Known
    note: str
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class Held:
    """How much of one constituent an ingredient can hold, from `low` to `high` (shares of one), and the works that say so.

    `stated`: the supplier says it of the studio's own bottle.
    """

    name: str
    low: Fraction
    high: Fraction
    works: tuple[str, ...]
    known: Known
    stated: bool = False


def span_of(rows: Iterable[Constituent]) -> dict[str, Held]:
    """Return the widest span of each constituent, by its name.

    One measured sample (equal ends) says how much there can be. How little, it does not say: the next bottle is another one.
    """
    by_name: dict[str, list[Constituent]] = {}
    for row in rows:
        if row.high is not None:
            by_name.setdefault(row.name, []).append(row)
    return {name: _widest(name, found) for name, found in by_name.items()}


def _widest(name: str, rows: list[Constituent]) -> Held:
    is_range = any(row.low != row.high for row in rows)
    return Held(
        name,
        min((row.low for row in rows if row.low is not None), default=Fraction(0)) if is_range else Fraction(0),
        max((row.high for row in rows if row.high is not None), default=Fraction(0)),
        tuple(dict.fromkeys(f"{row.source.title}, {row.at}" for row in rows)),
        Known.MEMORY if any(row.known is Known.MEMORY for row in rows) else rows[0].known,
    )
