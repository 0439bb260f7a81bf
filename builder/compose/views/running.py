"""What the teacher's sheet and the check list show of running a class: the format, who watches, the room, what is made ready."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame


@dataclass(frozen=True)
class FormatView:
    """The format, how it is taught in sentences, and the advice that speaks for and against it."""

    name: str
    sentences: tuple[str, ...]
    speaks_for: tuple[str, ...]
    speaks_against: tuple[str, ...]


@dataclass(frozen=True)
class WatchRow:
    """One adult and the groups that they watch."""

    who: str
    watches: str


@dataclass(frozen=True)
class RuleRow:
    """One rule: in which parts it holds, what it asks, what it rests on."""

    rule: str
    parts: str
    asks: str
    basis: str


@dataclass(frozen=True)
class PlanBox:
    """A table of the plan, in whole units of the drawing; `strong` for what is no bench."""

    x: int
    y: int
    width: int
    height: int
    strong: bool


@dataclass(frozen=True)
class PlanText:
    """Words in the middle of a table."""

    x: int
    y: int
    words: str
    bold: bool


@dataclass(frozen=True)
class SeatingView:
    """The plan of the room. `description` says in words what it shows."""

    key: str
    view_box: str
    boxes: tuple[PlanBox, ...]
    texts: tuple[PlanText, ...]
    description: str


@dataclass(frozen=True)
class StaffRow:
    """What staff do before the class or after it: when (a time of day, or a day), what, how long."""

    when: str
    title: str
    minutes: str


@dataclass(frozen=True)
class CupRow:
    """What is weighed of one batch in one part, by whom, and how often."""

    batch: str
    where: str
    often: str
    what: str


@dataclass(frozen=True)
class CheckGroup:
    """Lines to tick under one heading, in the order of doing."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class RunningView:
    """Why a class is taught as it is: its format, who watches whom, the rules on it, who weighs what.

    `heat` says of each recipe to what its phases are heated, where rules and advice speak of heat in words.
    """

    taught: FormatView
    watch: tuple[WatchRow, ...]
    carried: str
    rules: tuple[RuleRow, ...]
    heat: tuple[str, ...]
    ahead_lines: tuple[str, ...]
    policy: str
    seating: SeatingView | None
    cups: tuple[CupRow, ...]


@dataclass(frozen=True)
class ChecklistView:
    """The check list of one date."""

    frame: Frame
    title: str
    when: str
    facts: tuple[str, ...]
    emergency: tuple[str, ...]
    groups: tuple[CheckGroup, ...]
