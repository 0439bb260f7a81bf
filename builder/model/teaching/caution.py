"""A caution text that sheets print before the step it belongs to."""

from dataclasses import dataclass, field

from builder.model.place import NOWHERE, Place


@dataclass(frozen=True)
class CautionText:
    """Signal word, hazard, consequence, how to avoid it, and what to do if it happens. `key` is its file's name.

    `in_brief` is what to do for where the whole of it stands on the same sheet; empty where that is never shortened. `again` is hazard,
    consequence and how to avoid it in a breath, for a later part of a home sheet whose earlier part has said all; empty for always all.
    """

    key: str
    name: str
    signal: str
    hazard: str
    what: str
    avoid: tuple[str, ...]
    if_it_happens: tuple[str, ...]
    reviewed: str
    in_brief: str = ""
    again: str = ""
    place: Place = field(default=NOWHERE, compare=False)
