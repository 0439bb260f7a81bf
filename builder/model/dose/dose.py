"""What a student may add to one portion: the most of each option, of several together, and what made it less than the recipe's own."""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.dose.limit import Limit
from builder.model.recipe.quantity import NO_MASS, Mass


@dataclass(frozen=True)
class Drop:
    """The mass of one drop. Not `measured` is an estimate that a pharmacopoeial dropper does not pass: it allows too few drops."""

    mass: Mass
    measured: bool


@dataclass(frozen=True)
class Lowered:
    """The limit that leaves less of an option than the recipe would allow.

    `own_law`: it is law in the studio's region. `proven` is False where a blend may hold less of it than is counted.
    `passed_already`: the batch passes it before anything is added.
    """

    limit: Limit
    own_law: bool
    proven: bool
    passed_already: bool


@dataclass(frozen=True)
class MostOf:
    """The most of one option in one portion: by weight, in whole divisions of a scale, and in whole drops.

    `drops` and `drop` are None for what does not drip: a powder.
    """

    option: str
    weight: Mass
    drops: int | None = None
    drop: Drop | None = None
    lowered: Lowered | None = None

    @property
    def by_drops(self) -> Mass:
        """Return what the most drops weigh at most."""
        return self.drop.mass * self.drops if self.drop and self.drops else NO_MASS

    @property
    def mass(self) -> Mass:
        """Return the most that gets into a portion, whether it is weighed or counted in drops."""
        return max(self.weight, self.by_drops)

    @property
    def to_have_ready(self) -> Mass:
        """Return what to have ready for one portion."""
        return self.weight or self.by_drops

    @property
    def is_offered(self) -> bool:
        """Tell whether one division or one drop at least may be added."""
        return bool(self.weight) or bool(self.drops)


@dataclass(frozen=True)
class Mixed:
    """The most of several options of one choice in one portion, together; of each no more than its own most.

    `drops` is None where fewer than two of the options drip.
    """

    weight: Mass
    drops: int | None


@dataclass(frozen=True)
class Dose:
    """What one choice may add to one portion. `share` is what the recipe itself allows at most; an option of None leaves it out.

    `each` has the most of every option but that; `mixed` is None where there are not two that may be added.
    """

    what: str
    options: tuple[str | None, ...]
    share: Fraction
    each: tuple[MostOf, ...] = ()
    mixed: Mixed | None = None

    @property
    def at_most(self) -> Mass:
        """Return the most weight of whichever option may take most."""
        return max((one.weight for one in self.each), default=NO_MASS)

    @property
    def offered(self) -> tuple[str | None, ...]:
        """Return the options that can be offered, leaving it out included."""
        held_back = {one.option for one in self.each if not one.is_offered}
        return tuple(option for option in self.options if option not in held_back)
