"""A caution text that sheets print before the step it belongs to."""

from dataclasses import dataclass, field

from builder.model.place import NOWHERE, Place


@dataclass(frozen=True)
class CautionText:
    """Signal word, hazard, consequence, how to avoid it, and what to do if it happens. `key` is its file's name."""

    key: str
    name: str
    signal: str
    hazard: str
    what: str
    avoid: tuple[str, ...]
    if_it_happens: tuple[str, ...]
    reviewed: str
    place: Place = field(default=NOWHERE, compare=False)
