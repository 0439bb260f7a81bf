"""What `sheets/bench-cards.html` shows: one card for each group."""

from dataclasses import dataclass

from builder.compose.views.frame import SheetFrame
from builder.compose.views.lesson import LessonFlow
from builder.compose.views.take_home import ChoiceView


@dataclass(frozen=True)
class BenchAmount:
    """One ingredient to weigh."""

    amount: str
    name: str


@dataclass(frozen=True)
class BenchPhase:
    """A phase and what is weighed for it."""

    title: str
    amounts: tuple[BenchAmount, ...]


@dataclass(frozen=True)
class BenchProduct:
    """What a group makes of one product. `phases` is empty where one batch is made for all."""

    name: str
    whose: str
    fill: str
    fill_words: str
    phases: tuple[BenchPhase, ...]
    choices: tuple[ChoiceView, ...]


@dataclass(frozen=True)
class BenchCard:
    """One card: whose it is, what they make, their steps with the cautions before them."""

    heading: str
    people: str
    products: tuple[BenchProduct, ...]
    flow: LessonFlow


@dataclass(frozen=True)
class BenchCardsView:
    """The cards of one date."""

    frame: SheetFrame
    title: str
    when: str
    cards: tuple[BenchCard, ...]
