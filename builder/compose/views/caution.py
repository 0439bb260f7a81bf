"""What `parts/caution.html` and `parts/calls.html` show."""

from dataclasses import dataclass


@dataclass(frozen=True)
class CautionView:
    """A caution. `signal` chooses its look, `word` is the signal word that is printed.

    `also` are cautions of the same signal that share its frame, and its first aid. With `when_apart` it says what stands before on the same
    page, and is left out there. `in_few_words` stands for all but its name where a sheet has no room; empty for what is never shortened.
    `shorter` says it in a breath where its part goes on upon another page; None where it has no shorter words.
    """

    signal: str
    word: str
    name: str
    what: str
    avoid: tuple[str, ...]
    if_it_happens: tuple[str, ...]
    also: tuple["CautionView", ...] = ()
    when_apart: bool = False
    kind: str = "caution"
    in_few_words: str = ""
    shorter: "CautionView | None" = None

    @property
    def names(self) -> tuple[str, ...]:
        """Return the names of all dangers that it speaks of."""
        return (self.name, *(other.name for other in self.also))

    @property
    def dangers(self) -> tuple[str, ...]:
        """Return what it says of each danger: its name, what harms, and how to keep clear of it."""
        return tuple(" ".join((f"{one.name}.", one.what, *one.avoid)) for one in (self, *self.also))


@dataclass(frozen=True)
class Call:
    """A number to call, and whose it is."""

    whose: str
    number: str
