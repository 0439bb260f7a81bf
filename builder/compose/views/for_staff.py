"""What the teacher's sheet and the documents beside it show: the run by the clock, all weighings, the roster, costs, reasons, workings."""

from dataclasses import dataclass

from builder.compose.views.caution import Call
from builder.compose.views.doses import GuestTable, TotalTable
from builder.compose.views.frame import Frame
from builder.compose.views.lesson import FlowPart, LessonFlow
from builder.compose.views.running import RunningView, WatchRow
from builder.compose.views.teacher import AllergyView, BatchView, Fact, FindingView, ProductBatches, SumsView, SuppliesView


@dataclass(frozen=True)
class WeighRow:
    """One weighing: what, how much, on which scale, who does it in which part, and whether it is lye."""

    name: str
    weight: str
    scale: str
    who: str
    is_lye: bool


@dataclass(frozen=True)
class WeighGroup:
    """The weighings of one phase of a batch, what they come to (empty for one alone), what is done with it, and what follows.

    `who` does all of them but those whose rows name somebody else; it is empty where nobody is named. `apart` says that each is weighed by
    itself, where a scale does not hold all of them at once.
    """

    title: str
    treatment: str
    who: str
    rows: tuple[WeighRow, ...]
    together: str
    note: str
    apart: str = ""

    @property
    def caustic(self) -> bool:
        """Tell whether there is lye in it."""
        return any(row.is_lye for row in self.rows)


@dataclass(frozen=True)
class PotView:
    """All weighings of one planned batch: whose it is and how often it is made, what it weighs in all (empty for lye alone)."""

    title: str
    groups: tuple[WeighGroup, ...]
    total: str


@dataclass(frozen=True)
class StepsGroup:
    """The parts of what is done before the class, in it, or after it, for the run by the clock and with their steps."""

    title: str
    parts: tuple[FlowPart, ...]


@dataclass(frozen=True)
class StaffProduct:
    """One product on the teacher's sheet: its batches, and all their weighings, lye that is mixed for all of them first."""

    made: ProductBatches
    pots: tuple[PotView, ...]


@dataclass(frozen=True)
class RunSheet:
    """Page 1 of what staff have in hand, beside the run by the clock: who watches whom, the numbers to call.

    `marks` are the drawings of what is made, as HTML. `ready` says when soap that is made has cured.
    """

    title: str
    when: str
    facts: tuple[Fact, ...]
    calls: tuple[Call, ...]
    ready: tuple[str, ...]
    watch: tuple[WatchRow, ...]
    carried: str
    policy: str
    allergies: str
    marks: tuple[str, ...]


@dataclass(frozen=True)
class TeacherView:
    """The teacher's sheet of one date: page 1, all weighings, and the steps. `scales` says how each scale reads."""

    frame: Frame
    run: RunSheet
    scales: str
    products: tuple[StaffProduct, ...]
    findings: tuple[FindingView, ...]
    before: LessonFlow
    steps: tuple[StepsGroup, ...]


@dataclass(frozen=True)
class RosterView:
    """Who comes to one date, who waits, and what there is to say of their allergies."""

    frame: Frame
    title: str
    when: str
    guests: tuple[GuestTable, ...]
    allergies: tuple[AllergyView, ...]
    allergy_note: str


@dataclass(frozen=True)
class CostsView:
    """What one date needs bought and what it costs."""

    frame: Frame
    title: str
    when: str
    supplies: SuppliesView


@dataclass(frozen=True)
class ReasonsView:
    """Why a class is taught as it is, and the rules that hold in it with what they rest on."""

    frame: Frame
    title: str
    when: str
    running: RunningView


@dataclass(frozen=True)
class WorkedProduct:
    """The batches of one product as they were worked out: exact amounts beside what is weighed, lye, what the soap becomes.

    `totals` are of what students may add, `labels` counts the labels.
    """

    name: str
    labels: tuple[str, ...]
    batches: tuple[BatchView, ...]
    totals: tuple[TotalTable, ...]


@dataclass(frozen=True)
class WorkingsView:
    """The sums of one date, or of the home sizes of a class."""

    frame: Frame
    title: str
    when: str
    products: tuple[WorkedProduct, ...]
    sums: tuple[SumsView, ...]
