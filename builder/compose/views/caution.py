"""What `parts/caution.html` and `parts/calls.html` show."""

from dataclasses import dataclass


@dataclass(frozen=True)
class CautionView:
    """A caution. `signal` chooses its look, `word` is the signal word that is printed."""

    signal: str
    word: str
    name: str
    what: str
    avoid: tuple[str, ...]
    if_it_happens: tuple[str, ...]
    kind: str = "caution"


@dataclass(frozen=True)
class Call:
    """A number to call, and whose it is."""

    whose: str
    number: str
