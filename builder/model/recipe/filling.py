"""A batch in one kind of container: how it is divided, what students may add to a portion, and the ways to finish one."""

from dataclasses import dataclass

from builder.model.dose.dose import Dose
from builder.model.dose.towards import TowardsLimit
from builder.model.label.ingredient_list import Variant
from builder.model.recipe.quantity import NO_MASS, Mass, WeighingUnit
from builder.model.recipe.recipe import Fill
from builder.model.recipe.working import Working


@dataclass(frozen=True)
class Portions:
    """How a batch is divided: the weight of one, how many are wanted, how many it yields, and what is left of the batch.

    `poured` is what the scale reads on a tared cup: the fill, and what sticks to the cup. `in_the_pot` stays in the pot. `all_from` is the
    least weight of the finished batch that still fills every container that is wanted (None where none are).
    """

    fill: Mass
    wanted: int | None
    yields: int
    left: Mass
    poured: Mass
    all_from: Mass | None = None
    in_the_pot: Mass = NO_MASS


@dataclass(frozen=True)
class Reading:
    """The same as scales in one unit show it: whole divisions, and nothing finer.

    `finished` is the weight of the whole batch; `left` is rounded down, since it is a promise.
    """

    unit: WeighingUnit
    fill: Mass
    poured: Mass
    left: Mass
    in_the_pot: Mass
    finished: Mass
    all_from: Mass | None = None


@dataclass(frozen=True)
class Filling:
    """A batch in one kind of container. What students may add goes with the weight of a portion, and limits are judged with it.

    In a batch for people each student fills `each_student` of it, and `spare` ones come beside them. `towards` has every limit that
    something here counts towards, `asked` every row that asks for a pH or a label. `cured` is what one bar of soap weighs after the water
    loss that the recipe states (None where it states none). `readings` has one for each unit in which the place weighs, grams first.
    """

    fill: Fill
    portions: Portions
    each_student: int = 0
    spare: int = 0
    doses: tuple[Dose, ...] = ()
    variants: tuple[Variant, ...] = ()
    towards: tuple[TowardsLimit, ...] = ()
    asked: tuple[TowardsLimit, ...] = ()
    cured: Mass | None = None
    readings: tuple[Reading, ...] = ()
    workings: tuple[Working, ...] = ()

    @property
    def read(self) -> Reading:
        """Return what scales in grams show."""
        return self.readings[0]

    @property
    def read_in_ounces(self) -> Reading | None:
        """Return what scales in ounces show, where the place has some."""
        return next((one for one in self.readings if one.unit == "oz"), None)
