"""What the calculation pass makes of a class: its batches for the people who come, its home batches, its clock."""

from dataclasses import dataclass, replace

from builder.model.dates.studio_class import ClassDate, Format, HomeSize, Make, StudioClass
from builder.model.formula.warmth import CooledTooSoon, MixedTooCool, MixedTooWarm
from builder.model.lye.lye_solution import LyeSolution
from builder.model.recipe.filling import Filling
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import Mass
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.model.roster.roster import Guest
from builder.model.subject import OneDate, WholeClass
from builder.model.supplies.cost import Cost, Jug
from builder.model.teaching.jar import Jar, Pot
from builder.model.teaching.lesson import Part
from builder.model.teaching.pot_for import PotFor
from builder.model.teaching.preparation import Preparation
from builder.model.teaching.supervision import Supervision
from builder.model.teaching.teaching import NOT_TAUGHT, Taught, Teaching
from builder.model.teaching.timed_part import HomePart, StaffPart, TimedPart
from builder.model.teaching.weighing_plan import WeighingPlan, group_that_does


@dataclass(frozen=True)
class PlannedBatch:
    """A batch made `copies` times."""

    purpose: PotFor
    batch: WorkedBatch
    copies: int


@dataclass(frozen=True)
class Needed:
    """What the class needs of one ingredient in all, from the amounts as weighed."""

    ingredient: str
    mass: Mass


@dataclass(frozen=True)
class HomeBatch:
    """One home size and its batch, in grams and ounces, and the parts of the lesson that are done at home, in order."""

    size: HomeSize
    batch: WorkedBatch
    parts: tuple[HomePart, ...]


@dataclass(frozen=True)
class OptionTotal:
    """What all portions of a class need of one option of a choice, if each takes its most.

    `chosen` portions take it by the roster and need `for_chosen`; `expected` adds an even share of those that are open; `worst` is what is
    needed if every portion takes it.
    """

    option: str
    chosen: int
    for_chosen: Mass
    expected: Mass
    worst: Mass


@dataclass(frozen=True)
class ChoiceTotal:
    """One choice over all portions: how many leave it out and how many are open by the roster, and what each option needs."""

    what: str
    portions: int
    left_out: int
    open: int
    options: tuple[OptionTotal, ...]


@dataclass(frozen=True)
class Containers:
    """The containers of one kind that a class fills from all its pots, and how many there are in all.

    `jars` are what bears a label of them, the students' in the order of the roster, then the spare ones.
    """

    filling: Filling
    in_all: int
    jars: tuple[Jar, ...] = ()


@dataclass(frozen=True)
class MadeProduct:
    """One product of a class: its batches, what they need in all, the containers they fill, its home batches, its choices in all.

    `pots` are the single pots of the batches, the teacher's last. `containers` has the recipe's own first, then others in the order of
    the class file. `ready_mixed` are its ready-mixed lyes, one for each alkali. `jugs` say what a pack of each ready-made base serves.
    `taught` says who makes it.
    """

    make: Make
    batches: tuple[PlannedBatch, ...]
    pots: tuple[Pot, ...]
    needed: tuple[Needed, ...]
    containers: tuple[Containers, ...]
    home: tuple[HomeBatch, ...]
    ready_mixed: tuple[LyeSolution, ...] = ()
    jugs: tuple[Jug, ...] = ()
    choices: tuple[ChoiceTotal, ...] = ()
    taught: Taught = NOT_TAUGHT

    @property
    def batch(self) -> WorkedBatch:
        """Return the batch that the lesson speaks of: the class's, the group's or the student's own."""
        return self.batches[0].batch

    @property
    def filled(self) -> tuple[Filling, ...]:
        """Return the filling of each kind of container of which there is any; the recipe's own where there is none."""
        return tuple(one.filling for one in self.containers if one.in_all) or (self.batch.own,)


@dataclass(frozen=True)
class ClassPlan:
    """One class for a number of students: on one of its dates, or for a full class where `date` is None.

    `cost` is None where the studio lists no supplies.
    `guests` are those on its roster, `waiting` those of it who wait for a seat. Only what stays in the studio may see them
    (`without_names`). `after` is what the staff do when the students have gone, `heat` what steps say of
    it that cannot be. `was_listed` says of a plan without names that there is a roster, `asked_at_home` which home sizes are wanted on it.
    """

    studio_class: StudioClass
    date: ClassDate | None
    students: int
    groups: int
    last_group: int
    made: tuple[MadeProduct, ...]
    timeline: tuple[TimedPart, ...]
    ahead: tuple[StaffPart, ...]
    teaching: Teaching
    supervision: Supervision
    preparation: Preparation
    weighing: WeighingPlan
    cost: Cost | None = None
    guests: tuple[Guest, ...] = ()
    waiting: tuple[Guest, ...] = ()
    after: tuple[StaffPart, ...] = ()
    heat: tuple[MixedTooCool | MixedTooWarm | CooledTooSoon, ...] = ()
    was_listed: bool = False
    asked_at_home: tuple[str, ...] = ()

    @property
    def sizes_at_home(self) -> tuple[str, ...]:
        """Return the home sizes that those on the roster want, each as often as it is wanted, in no order of people."""
        return self.asked_at_home or tuple(sorted(one.at_home for one in self.guests if one.at_home))

    @property
    def has_roster(self) -> bool:
        """Tell whether anybody is listed for the date, or waits for it."""
        return self.was_listed or bool(self.guests or self.waiting)

    @property
    def names_somebody(self) -> bool:
        """Tell whether it was made from what somebody wrote of a person."""
        return self.has_roster

    @property
    def subject(self) -> WholeClass | OneDate:
        """Return what a finding about this plan alone is about: its date, or the class where it has none."""
        return OneDate(self.studio_class.key, self.date.on) if self.date else WholeClass(self.studio_class.key)

    @property
    def format(self) -> Format:
        """Return the format that the parts come to, which is the one that is published."""
        return self.teaching.format

    def comes_from_before(self, product: Product) -> bool:
        """Tell whether students take home an earlier batch of it: after a demonstration of soap, so that it has had time to cure."""
        return product.made_with_lye and self.format is Format.DEMO

    @property
    def chosen(self) -> tuple[MadeProduct, ...]:
        """Return the products to which students add something of their choice; none where nobody comes or all is shown."""
        if not self.students or self.format is Format.DEMO:
            return ()
        return tuple(one for one in self.made if any(dose.each for dose in one.batch.own.doses))

    @property
    def staff(self) -> tuple[int, int]:
        """Return the teachers and the assistants of this date."""
        return self.studio_class.staff_on(self.date)

    def unclaimed(self, each_student: int) -> int:
        """Return how many containers the batch of the last group fills beyond its people: every group makes the batch of a whole one."""
        return (self.studio_class.group_size - self.last_group) * each_student if self.groups else 0

    def group_that_does(self, part: Part) -> int | None:
        """Return the number of the group that does a part for all; None where no single one does."""
        return group_that_does(part, self.groups)

    def without_names(self) -> "ClassPlan":
        """Return the plan as it may be published: without those who come, and without those who wait; itself where nobody is listed."""
        return _without_names(self) if self.names_somebody else self


@remembered(128)
def _without_names(plan: ClassPlan) -> ClassPlan:
    """Return the same value for the same plan, so that what has been worked out from it is known."""
    made = tuple(_nameless(one) for one in plan.made)
    return replace(plan, guests=(), waiting=(), was_listed=plan.has_roster, asked_at_home=plan.sizes_at_home, made=made)


def _nameless(made: MadeProduct) -> MadeProduct:
    return replace(
        made, containers=tuple(replace(one, jars=tuple(replace(jar, guest=None) for jar in one.jars)) for one in made.containers)
    )
