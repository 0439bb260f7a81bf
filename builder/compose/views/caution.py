"""What `parts/caution.html` and `parts/calls.html` show."""

from dataclasses import dataclass
from math import ceil
from textwrap import wrap

from builder.compose.formula.first_aid import accident_and_aid, aid_sentences

# How many letters a line of a take-home sheet holds in what a caution says, and in the column of its name.
LETTERS, NAME_LETTERS = 70, 13


@dataclass(frozen=True)
class CautionView:
    """A caution. `signal` chooses its look, `word` is the signal word that is printed.

    `also` are cautions of the same signal that share its frame, and its first aid. With `is_said` it stands before its part already, at the
    head of each page of it; with `leans` the box above it says some of it. `in_few_words` stands for all but its name where a sheet has no
    room; empty for what is never shortened. `at_foot` is what to do of which the foot of each page of paper tells.
    """

    signal: str
    word: str
    name: str
    what: str
    avoid: tuple[str, ...]
    if_it_happens: tuple[str, ...]
    also: tuple["CautionView", ...] = ()
    is_said: bool = False
    kind: str = "caution"
    in_few_words: str = ""
    at_foot: tuple[str, ...] = ()
    leans: bool = False

    @property
    def each(self) -> tuple["CautionView", ...]:
        """Return all that stand in its frame, itself first."""
        return (self, *self.also)

    @property
    def names(self) -> tuple[str, ...]:
        """Return the names of all dangers that it speaks of."""
        return tuple(one.name for one in self.each)

    @property
    def dangers(self) -> tuple[str, ...]:
        """Return what it says of each danger: its name, what harms, and how to keep clear of it."""
        return tuple(" ".join((f"{one.name}.", one.what, *one.avoid)) for one in self.each)

    @property
    def name_runs_in(self) -> bool:
        """Tell whether its name stands at the head of what it says: in a column of its own it would be higher than that."""
        said = sum(map(len, (self.what, *self.avoid, *self.aid_here))) + len(self.avoid) + len(self.aid_here)
        in_column = 1 + len(wrap(self.name, NAME_LETTERS))
        return not self.also and ceil((said + len(self.name)) / LETTERS) < max(in_column, ceil(said / LETTERS))

    @property
    def aid_here(self) -> tuple[str, ...]:
        """Return what to do of which no foot tells."""
        return tuple(one for one in self.if_it_happens if one not in self.at_foot)

    @property
    def aid(self) -> tuple[tuple[str, str, bool], ...]:
        """Return first aid sentence by sentence: the accident that it begins with (empty where it names none), what to do, and whether the
        foot tells of that, where it does not tell of all.
        """
        lines = ((one, line in self.at_foot and bool(self.aid_here)) for line in self.if_it_happens for one in aid_sentences(line))
        return tuple((*accident_and_aid(one), at_foot) for one, at_foot in lines)

    @property
    def begins_unnamed(self) -> bool:
        """Tell whether first aid begins without the name of an accident, so that a word has to say what it is about."""
        return bool(self.aid) and not self.aid[0][0]


@dataclass(frozen=True)
class Call:
    """A number to call, and whose it is."""

    whose: str
    number: str
