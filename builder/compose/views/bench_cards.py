"""What `sheets/bench-cards.html` and `sheets/bench-steps.html` show: a card for each group, and the steps that are the same for all."""

from dataclasses import dataclass

from builder.compose.views.for_staff import WeighRow
from builder.compose.views.frame import Frame
from builder.compose.views.lesson import LessonFlow
from builder.compose.views.take_home import ChoiceView


@dataclass(frozen=True)
class BenchAmount:
    """One ingredient to weigh."""

    amount: str
    name: str


@dataclass(frozen=True)
class BenchPhase:
    """A phase and what is weighed for it; `apart` is how, where a scale does not hold all of it at once."""

    title: str
    amounts: tuple[BenchAmount, ...]
    apart: str = ""


@dataclass(frozen=True)
class BenchProduct:
    """What a group makes of one product.

    `dangers` names the gravest hazards in a line, or is empty; `phases` is empty where one batch is made for all. `left_over` is what the
    batch of a smaller group holds beyond what its people take.
    """

    name: str
    whose: str
    dangers: str
    fills: tuple[BenchAmount, ...]
    phases: tuple[BenchPhase, ...]
    choices: tuple[ChoiceView, ...]
    left_over: str = ""


@dataclass(frozen=True)
class BenchCard:
    """One card: whose it is, how it is used (empty where that needs no word), and what they make."""

    heading: str
    people: str
    told: str
    products: tuple[BenchProduct, ...]


@dataclass(frozen=True)
class CardPage:
    """Two cards that are cut apart, or a last one alone; `copies` says how many of the page to print where that is more than one."""

    copies: str
    cards: tuple[BenchCard, ...]


@dataclass(frozen=True)
class BenchCardsView:
    """The cards of one date, two on a page."""

    frame: Frame
    title: str
    when: str
    emergency: tuple[str, ...]
    pages: tuple[CardPage, ...]


@dataclass(frozen=True)
class BenchStepsView:
    """The steps of one date, with the cautions before them, and how many copies are needed."""

    frame: Frame
    title: str
    when: str
    copies: str
    flow: LessonFlow


@dataclass(frozen=True)
class BatchCard:
    """What is kept of one pot: whose it is, its batch code (empty without a date), what goes in, `blanks` to write in."""

    title: str
    pot: str
    code: str
    lines: tuple[WeighRow, ...]
    total: str
    blanks: tuple[str, ...]


@dataclass(frozen=True)
class BatchCardsView:
    """The batch cards of one date in rows, on at most so many pages; a row holds one card, or two `side_by_side`."""

    frame: Frame
    title: str
    when: str
    rows: tuple[tuple[BatchCard, ...], ...]
    most: int
    side_by_side: bool
