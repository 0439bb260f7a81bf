"""Rules on watching people at work: how many students one adult watches, from what age, in what gear; and what they come to in a class."""

from dataclasses import dataclass, field

from builder.model.hazard import Hazard
from builder.model.place import NOWHERE, Place
from builder.model.recipe.figure import Known, Source

# Years; whoever is younger is a minor.
ADULT = 18


@dataclass(frozen=True)
class Band:
    """How many students one adult watches from an age on."""

    from_age: int
    students: int


@dataclass(frozen=True)
class Basis:
    """Where a rule comes from, and how that is known."""

    source: Source
    at: str
    known: Known


@dataclass(frozen=True)
class OwnNumbers:
    """What a studio sets in place of the numbers of a rule; None leaves the rule's own."""

    youngest: int | None = None
    group_of: int | None = None
    to_one: int | None = None
    most: int | None = None
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class WatchRule:
    """One rule of the teaching policy, for parts in which students meet one of its hazards; without hazards, for any work of their hands.

    `stops` says whether a class that breaks it is held back, `stops_minors` whether one that is open to minors is. `bands` are in the order
    of their ages. `two_adults`: wherever a minor takes part. `watchers_wear` is worn by everybody in the room while it is shown. Below the
    age of `ahead_below` staff weigh ahead what brings the hazard, and below that of `poured_below` an adult pours it. `shipped` is the rule
    as the library has it, where the studio sets numbers of its own; `floor` are the laxest that it may set.
    """

    key: str
    hazards: tuple[Hazard, ...]
    stops: bool
    basis: tuple[Basis, ...]
    youngest: int | None = None
    group_of: int | None = None
    bands: tuple[Band, ...] = ()
    most: int | None = None
    two_adults: bool = False
    wear: tuple[str, ...] = ()
    watchers_wear: tuple[str, ...] = ()
    kit: tuple[str, ...] = ()
    ahead: str = ""
    ahead_below: int | None = None
    poured_below: int | None = None
    stops_minors: bool = False
    floor: OwnNumbers | None = None
    shipped: "WatchRule | None" = None
    place: Place = field(default=NOWHERE, compare=False)

    def stops_for(self, age: int) -> bool:
        """Tell whether it holds back a class that is open from an age and breaks it."""
        return self.stops or (self.stops_minors and age < ADULT)

    def to_one(self, age: int) -> int | None:
        """Return how many students of an age one adult watches, those below all bands like the youngest; None where no number is set."""
        if not self.bands:
            return None
        fitting = [band for band in self.bands if band.from_age <= age]
        return (fitting[-1] if fitting else self.bands[0]).students


@dataclass(frozen=True)
class WatchedPart:
    """A part in class with what its people meet. `number` is its place in the run; `by_hand` says that students do it themselves.

    `carried` is the most students that the staff can watch in it; None where no rule sets a number. `lingering` are those of the hazards
    that are there only since they have not gone since an earlier part. `not_ahead` are ingredients that people take from the bottle in it,
    since no part of the staff weighs them ahead, each with the hazards that it brings.
    """

    number: int
    title: str
    by_hand: bool
    hazards: tuple[str, ...]
    rules: tuple[WatchRule, ...]
    carried: int | None
    lingering: tuple[str, ...] = ()
    not_ahead: tuple[tuple[str, tuple[str, ...]], ...] = ()


@dataclass(frozen=True)
class Watcher:
    """An adult who watches: a teacher or an assistant, with their number among these, and the numbers of the groups that they watch.

    `alone`: there is one of the kind, who needs no number.
    """

    is_teacher: bool
    number: int
    alone: bool
    groups: tuple[int, ...]


@dataclass(frozen=True)
class Supervision:
    """What the rules come to: the people who watch, the most students they carry and the rule that says so, and who watches which group.

    `watchers` are the adults, the teachers first.
    """

    parts: tuple[WatchedPart, ...]
    carried: int | None
    limit: WatchRule | None
    watchers: tuple[Watcher, ...]

    @property
    def staff(self) -> int:
        """Return how many adults watch."""
        return len(self.watchers)

    @property
    def rules(self) -> tuple[WatchRule, ...]:
        """Return every rule that holds in a part that students do, each once."""
        return tuple(dict.fromkeys(rule for part in self.parts if part.by_hand for rule in part.rules))
