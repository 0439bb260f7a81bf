"""How the numbers of a country are dialled: one row of the table of calling codes."""

from dataclasses import dataclass, field

from builder.model.place import NOWHERE, Place
from builder.model.recipe.figure import Known, Source


@dataclass(frozen=True)
class CallingCode:
    """One country: its code, what its numbers have before them at home (`trunk`) and before another country's code (`abroad`).

    A number has from `shortest` to `longest` figures without those. `region` is the region whose one country it is.
    """

    country: str
    region: str
    code: str
    trunk: str
    abroad: str
    shortest: int
    longest: int
    source: Source
    at: str
    known: Known
    place: Place = field(default=NOWHERE, compare=False)
