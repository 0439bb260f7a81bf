"""What `parts/caution.html` and `parts/calls.html` show."""

from dataclasses import dataclass


@dataclass(frozen=True)
class CautionView:
    """A caution. `signal` chooses its look, `word` is the signal word that is printed.

    `also` are cautions of the same signal that share its frame, and its first aid. With `is_said` it stands before its part already, at the
    head of each page of it. `in_few_words` stands for all but its name where a sheet has no room; empty for what is never shortened. With
    `aid_at_foot` what to do stands in a line at the foot of each page of paper.
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
    aid_at_foot: bool = False

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


@dataclass(frozen=True)
class Call:
    """A number to call, and whose it is."""

    whose: str
    number: str
