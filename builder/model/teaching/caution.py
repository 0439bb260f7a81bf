"""A caution text that sheets print before the step it belongs to."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from builder.model.place import Placed


class Signal(StrEnum):
    """The signal word of a caution, the gravest first (ISO 3864-2, ANSI Z535.6)."""

    DANGER = "danger"
    WARNING = "warning"
    CAUTION = "caution"
    NOTICE = "notice"

    @property
    def rank(self) -> int:
        """Return 0 for the gravest, 1 for the next."""
        return tuple(Signal).index(self)


@dataclass(frozen=True, kw_only=True)
class CautionText(Placed):
    """Signal word, hazard, consequence, how to avoid it, and what to do if it happens. `key` is its file's name.

    `gear` is what people put on against it, each piece as it is set out. `in_brief` is what to do for where the whole of it stands on the
    same sheet; empty where that is never shortened. `again` is hazard, consequence and how to avoid it in a breath, for a later part of a
    home sheet whose earlier part has said all; empty for always all.
    `written` is what stands in its file, with what it has of the one of ours that it is in place of, which is `in_place_of`.
    """

    key: str
    name: str
    signal: Signal
    hazard: str
    what: str
    avoid: tuple[str, ...]
    if_it_happens: tuple[str, ...]
    reviewed: date
    gear: tuple[str, ...] = ()
    in_brief: str = ""
    again: str = ""
    written: Mapping[str, object] = field(default_factory=dict, compare=False, repr=False)
    in_place_of: "CautionText | None" = None
