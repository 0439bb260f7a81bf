"""What the teacher's sheet and the documents beside it show of batches, sums, costs and people."""

from dataclasses import dataclass

from builder.compose.views.ingredient_table import IngredientTable
from builder.compose.views.lye import LyeView
from builder.compose.views.take_home import ChoiceView


@dataclass(frozen=True)
class Fact:
    """A name and a value."""

    name: str
    value: str


@dataclass(frozen=True)
class BatchView:
    """One planned batch: whose it is and how often it is made, its weighings, its lye, what the soap becomes, its heat.

    `at_the_table` is read while it is made and filled, `portions` say how it divides.
    """

    title: str
    table: IngredientTable
    at_the_table: tuple[Fact, ...]
    portions: tuple[Fact, ...]
    lye: LyeView | None
    becomes: tuple[Fact, ...]
    heat: tuple[str, ...]


@dataclass(frozen=True)
class WorkingRow:
    """One sum: what it is of, the rule in words, what went in, what came out."""

    of: str
    rule: str
    given: str
    result: str


@dataclass(frozen=True)
class SumsView:
    """The sums of one batch, and the sources that they name by number."""

    title: str
    rows: tuple[WorkingRow, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class FindingView:
    """A finding that stands: what, what to do, and the studio's reason where it was accepted (empty where it was not)."""

    wrong: str
    remedy: str
    accepted: str


@dataclass(frozen=True)
class ProductBatches:
    """One product of the class: its batches, what each student may add, its codes.

    `labels` say how many labels there are of which finish, a line for each kind of container. `left_over` is what a smaller last
    group makes beyond its need.
    """

    name: str
    containers: str
    left_over: str
    batches: tuple[BatchView, ...]
    choices: tuple[ChoiceView, ...]
    codes: str
    labels: tuple[str, ...]

    @property
    def told(self) -> tuple[tuple[tuple[Fact, ...], tuple[str, ...]], ...]:
        """Return what is read at the table and assumed of the lye, for batches of which the same is told once."""
        return tuple(dict.fromkeys((one.at_the_table, one.lye.assumptions if one.lye else ()) for one in self.batches))


@dataclass(frozen=True)
class BuyRow:
    """One thing to buy: how much is needed, which packs, what they cost, and what is left in them."""

    name: str
    needed: str
    packs: str
    price: str
    left: str


@dataclass(frozen=True)
class BuyGroup:
    """Things of one kind."""

    title: str
    rows: tuple[BuyRow, ...]


@dataclass(frozen=True)
class SuppliesView:
    """What to buy, what the till takes, what a jug serves, what the class costs, and what to know of these sums."""

    groups: tuple[BuyGroup, ...]
    till: str
    left: str
    jugs: tuple[Fact, ...]
    costs: tuple[Fact, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class AllergyView:
    """One person with what they wrote of their allergies, and what there is to say of it."""

    who: str
    lines: tuple[str, ...]
