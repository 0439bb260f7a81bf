"""The pots of a product on one date, and the jars that are filled from them: what bears one label."""

from collections.abc import Iterable
from dataclasses import dataclass

from builder.model.label.ingredient_list import Variant
from builder.model.recipe.filling import Filling
from builder.model.roster.roster import Guest
from builder.model.teaching.pot_for import PotFor


@dataclass(frozen=True)
class Pot:
    """One pot of a product.

    `number` counts the pots of groups or of students from 1 (0: the one of the class, or the teacher's). `people` fill from it. `code` is
    its batch code, empty where there is no date yet.
    """

    purpose: PotFor
    number: int
    people: int
    code: str


@dataclass(frozen=True)
class Jar:
    """What bears one label: a container, or a package of so many `units`, filled from one pot.

    `student` counts from 1 in the order of the roster and is None for a spare one; `guest` is who that is, where it is known. `is_open`:
    a choice for it is not known yet, and has been taken for an even share. `design` and `own_name` are what its guest wishes of its label,
    which bears them where nobody's name is known.
    """

    pot: Pot
    filling: Filling
    variant: Variant
    is_open: bool
    units: int = 1
    student: int | None = None
    guest: Guest | None = None
    design: str = ""
    own_name: str = ""


def pot_of_each_student(pots: Iterable[Pot]) -> tuple[Pot, ...]:
    """Return the pot from which each student fills, in the order of the roster."""
    return tuple(pot for pot in pots for _ in range(pot.people))
