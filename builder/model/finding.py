"""A finding: what is wrong in the studio's text, where, why it matters and what to write instead."""

from dataclasses import dataclass, field
from enum import StrEnum

from builder.model.place import NOWHERE, Place
from builder.model.subject import Subject


@dataclass(frozen=True)
class Acceptance:
    """A finding that the studio accepts: its reason, and where it says so."""

    reason: str
    place: Place = field(default=NOWHERE, compare=False)


class Weight(StrEnum):
    """The two kinds of finding; there is no third."""

    STOP = "stop"
    CAUTION = "caution"


@dataclass(frozen=True)
class Finding:
    """One thing to mend or to accept.

    `name` is stable once given out. `wrong` says what is wrong and why it matters, `remedy` what to write instead. The same fault in two
    places is two findings. `about` is what it is about, which a stop holds back; empty means: what the file in which it stands is for.
    `accepted` is the studio's reason, once a caution (or an acceptable stop) has been accepted.
    """

    name: str
    weight: Weight
    place: Place
    wrong: str
    remedy: str
    about: frozenset[Subject] = frozenset()
    acceptable: bool = True
    accepted: str | None = None

    @property
    def stops(self) -> bool:
        """Tell whether this finding holds something back."""
        return self.weight is Weight.STOP and self.accepted is None

    @property
    def answer(self) -> str:
        """Return what is to be done about it, or why it has been accepted."""
        return self.remedy if self.accepted is None else f"Accepted: {self.accepted}"


def stop(name: str, place: Place, wrong: str, remedy: str, *, about: frozenset[Subject] = frozenset(), acceptable: bool = False) -> Finding:
    """Make a stop; it cannot be accepted away unless its rule says so."""
    return Finding(name, Weight.STOP, place, wrong, remedy, about, acceptable)


def caution(name: str, place: Place = NOWHERE, wrong: str = "", remedy: str = "", *, about: frozenset[Subject] = frozenset()) -> Finding:
    """Make a caution, which a studio may accept with a reason."""
    return Finding(name, Weight.CAUTION, place, wrong, remedy, about, acceptable=True)
