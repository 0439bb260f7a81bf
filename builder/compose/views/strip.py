"""What `parts/strip.html` draws: the time of a class as a bar, divided by who is doing."""

from dataclasses import dataclass


@dataclass(frozen=True)
class StripSegment:
    """One part as a piece of the bar. Places are percentages of the width; `word` and `minutes` are empty where there is no room."""

    who: str
    left: str
    width: str
    label_left: str
    word: str
    minutes: str


@dataclass(frozen=True)
class StripRow:
    """One part in words: who, title, how long, and when it begins."""

    who: str
    word: str
    title: str
    minutes: str
    clock: str


@dataclass(frozen=True)
class StripTotal:
    """How long the same people are doing, over the whole class."""

    who: str
    word: str
    minutes: str


@dataclass(frozen=True)
class StripView:
    """The bar and its words. `key` keeps the names of the hatchings of one page apart."""

    key: str
    title: str
    description: str
    segments: tuple[StripSegment, ...]
    totals: tuple[StripTotal, ...]
    rows: tuple[StripRow, ...]
