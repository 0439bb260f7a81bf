"""How big a batch is asked to be: by weight, by its oils, by containers, by a mould, or for people."""

from dataclasses import dataclass

from builder.model.recipe.quantity import NO_MASS, Mass, Volume
from builder.model.recipe.recipe import Fill


@dataclass(frozen=True)
class Lost:
    """What of a batch fills no container: what stays in the pot, and what sticks to each cup."""

    in_the_pot: Mass = NO_MASS
    in_each_cup: Mass = NO_MASS


NOTHING_LOST = Lost()


@dataclass(frozen=True)
class TotalSize:
    """A batch of this weight in all."""

    total: Mass
    lost: Lost = NOTHING_LOST


@dataclass(frozen=True)
class OilsSize:
    """A batch with this weight of oils."""

    oils: Mass
    lost: Lost = NOTHING_LOST


@dataclass(frozen=True)
class ContainersSize:
    """A batch that fills this many containers, and holds what is lost on the way to them."""

    containers: int
    lost: Lost = NOTHING_LOST


@dataclass(frozen=True)
class MouldSize:
    """A batch that fills a mould of this volume."""

    volume: Volume


@dataclass(frozen=True)
class PeopleSize:
    """A batch for people: containers to fill, and weights to show, to lose in the pot and in each cup.

    `also` are other containers that the same batch fills, with how many of each. `each_student` is how many a student takes.
    """

    containers: int
    demo: Mass
    left_in_the_pot: Mass
    left_in_each_cup: Mass = NO_MASS
    also: tuple[tuple[Fill, int], ...] = ()
    each_student: int = 0


Size = TotalSize | OilsSize | ContainersSize | MouldSize | PeopleSize
