"""What `parts/lye.html` shows of the lye of a soap."""

from dataclasses import dataclass


@dataclass(frozen=True)
class LyeFact:
    """One fact about the lye: what, how much, and what that means in plain words (empty where it needs none)."""

    name: str
    value: str
    meaning: str = ""


@dataclass(frozen=True)
class LyeView:
    """The facts in order, then the assumptions on which they rest, each a sentence."""

    facts: tuple[LyeFact, ...]
    assumptions: tuple[str, ...]
