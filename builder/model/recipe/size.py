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
class ToFill:
    """A kind of container that is to be filled: how many of it for each student, and spare."""

    fill: Fill
    each_student: int = 0
    spare: int = 0


@dataclass(frozen=True)
class PeopleSize:
    """A batch for so many people: what each of them fills, what is spare, and weights to show, to lose in the pot and in each cup.

    The first kind of container is the recipe's own. Where a class has several pots only one of them is made `with_spare` containers.
    """

    to_fill: tuple[ToFill, ...]
    people: int
    with_spare: bool
    demo: Mass
    left_in_the_pot: Mass
    left_in_each_cup: Mass = NO_MASS

    @property
    def counts(self) -> tuple[tuple[ToFill, int], ...]:
        """Return each kind of container with how many of it the batch fills."""
        return tuple((one, self.people * one.each_student + self.with_spare * one.spare) for one in self.to_fill)


Size = TotalSize | OilsSize | ContainersSize | MouldSize | PeopleSize
