"""What `parts/caution.html` and `parts/calls.html` show."""

from dataclasses import dataclass


@dataclass(frozen=True)
class CautionView:
    """A caution. `signal` chooses its look, `word` is the signal word that is printed.

    `also` are cautions of the same signal that share its frame, and its first aid. With `when_apart` it says what stands before on the same
    page, and is left out there. `in_few_words` stands for all but its name where a sheet has no room; empty for what is never shortened.
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

    @property
    def names(self) -> tuple[str, ...]:
        """Return the names of all dangers that it speaks of."""
        return (self.name, *(other.name for other in self.also))

    @property
    def paragraphs(self) -> tuple[str, ...]:
        """Return its paragraphs without what the template adds: each danger, and what to do if it happens."""
        dangers = (" ".join((one.word, f"{one.name}.", one.what, *one.avoid)) for one in (self, *self.also))
        return (*dangers, " ".join(self.if_it_happens))


@dataclass(frozen=True)
class Call:
    """A number to call, and whose it is."""

    whose: str
    number: str
