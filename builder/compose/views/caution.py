"""What `parts/caution.html` shows."""

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
class ReminderView:
    """A caution that has been printed in full before, as one line."""

    signal: str
    word: str
    name: str
    kind: str = "reminder"
