"""What `sheets/dose-cards.html` and the choices of the teacher's sheet show: the most of each option, and what they come to."""

from dataclasses import dataclass

from builder.compose.views.caution import CautionView
from builder.compose.views.frame import Frame


@dataclass(frozen=True)
class DoseOption:
    """One option on a card: its most in drops and by weight, each a number (empty where it has none) with its word; `about` an estimate."""

    name: str
    about: str
    drops: str
    drops_word: str
    weight: str
    unit: str


@dataclass(frozen=True)
class DoseChoice:
    """One choice on a card: its options, how much of several together, how to leave it out (each empty where it does not apply)."""

    title: str
    count: str
    weigh: str
    options: tuple[DoseOption, ...]
    together: str
    without: str


@dataclass(frozen=True)
class DoseCard:
    """The page of one product. `notes` say why an option may take less, or cannot be offered, and what is estimated."""

    product: str
    each: str
    choices: tuple[DoseChoice, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class DoseCardsView:
    """The cards of one date, two on a page where they fit it. Of the cautions on neat scent what to avoid is shown."""

    frame: Frame
    title: str
    when: str
    neat: tuple[CautionView, ...]
    ask: str
    emergency: tuple[str, ...]
    pages: tuple[tuple[DoseCard, ...], ...]


@dataclass(frozen=True)
class TotalRow:
    """One option on the teacher's sheet: the most in a portion, and what the class needs of it."""

    name: str
    most: str
    chosen: str
    for_chosen: str
    expected: str
    worst: str


@dataclass(frozen=True)
class TotalTable:
    """One choice of one product over all portions; `has_roster` says whether anybody's choice is known."""

    caption: str
    has_roster: bool
    rows: tuple[TotalRow, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class GuestTable:
    """Who comes: the columns, a row of cells for each person, and how many of those enrolled are listed."""

    listed: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
