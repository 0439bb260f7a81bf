"""How a batch is divided over its containers."""

from dataclasses import dataclass

from builder.model.recipe.quantity import NO_MASS, Mass


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
