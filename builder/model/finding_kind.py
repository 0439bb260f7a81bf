"""What all findings of one name have in common. Each is declared beside the rule or the reader that gives it."""

from dataclasses import dataclass
from enum import Flag, auto


class ComesAs(Flag):
    """What a finding of a name can be: a stop, a stop that a reason under `accepts:` lifts, a caution (which a reason always answers)."""

    STOP = auto()
    ACCEPTABLE_STOP = auto()
    CAUTION = auto()


STOP, ACCEPTABLE_STOP, CAUTION = ComesAs.STOP, ComesAs.ACCEPTABLE_STOP, ComesAs.CAUTION


@dataclass(frozen=True)
class FindingKind:
    """A name of findings, what they can be, and in one sentence what is the matter."""

    name: str
    comes_as: ComesAs
    means: str

    @property
    def stops(self) -> bool:
        """Tell whether such a finding can stop."""
        return bool(self.comes_as & (STOP | ACCEPTABLE_STOP))

    @property
    def cautions(self) -> bool:
        """Tell whether such a finding can be a caution."""
        return CAUTION in self.comes_as

    @property
    def acceptable(self) -> bool:
        """Tell whether a reason can ever answer such a finding."""
        return bool(self.comes_as & (ACCEPTABLE_STOP | CAUTION))


# Given where a roster is read and where it is held against its class.
ROSTER_COLUMN_UNCLEAR = FindingKind("roster-column-unclear", STOP, "A column of a roster stands twice, or could be meant for two things.")
