"""What `parts/lye.html` shows of the lye of a soap."""

from dataclasses import dataclass


@dataclass(frozen=True)
class LyeFact:
    """One fact about the lye: what, how much, and what that means in plain words (empty where it needs none)."""

    name: str
    value: str
    meaning: str = ""


@dataclass(frozen=True)
class RangeTick:
    """A mark on the line: its place as a percentage of the width, its words, and which it is (`zero` or `whole`)."""

    left: str
    word: str
    kind: str


@dataclass(frozen=True)
class RangeView:
    """The superfat as a line: the span from worst to best, the typical value, and the marks. Places are percentages of the width."""

    key: str
    description: str
    span_left: str
    span_width: str
    typical_left: str
    typical: str
    ticks: tuple[RangeTick, ...]


@dataclass(frozen=True)
class LyeView:
    """The facts in order, the assumptions on which they rest, each a sentence, and the range as a picture (None where it has none)."""

    facts: tuple[LyeFact, ...]
    assumptions: tuple[str, ...]
    span: RangeView | None = None
