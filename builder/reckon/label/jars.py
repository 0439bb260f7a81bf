"""The jars of a product on one date: from which pot and for whom each is filled, and how it is finished, so that it gets the label of
just that.

Decided: labels of open choices and of spare containers are spread evenly over what is offered, each choice by itself. Why: the amounts to
have ready expect the same, so that no label lacks its scent.

Decided: a label has a blank line for the name, and lies in the order of the roster. Why: sorting needs the order and the batch code only;
no name leaves the teacher's sheet.

Decided: the units of a package are finished alike, and its panel is taken at those of all units side by side. Why: the list of
ingredients holds for all of it; type is rather too tall.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from builder.model.recipe.filling import Filling
from builder.model.recipe.recipe import Recipe
from builder.model.roster.roster import Guest
from builder.model.teaching.jar import Jar, Pot, pot_of_each_student

_Unfinished = tuple[Pot, int | None, Guest | None, int]


def reckon_jars(recipe: Recipe, filling: Filling, pots: Sequence[Pot], guests: Sequence[Guest]) -> tuple[Jar, ...]:
    """Return each container or package of one kind: those of each student in the order of the roster, then of students without a row, then
    spare ones, which are filled from the last pot.

    A guest's choice is that of all of their containers. What is open falls evenly on what is offered, each choice by itself, so that no
    option has more containers than `reckon_choices` expects; of equally rare options the finish that fewest have is taken.
    """
    variants = filling.variants
    given: Counter[tuple[str, str | None]] = Counter()
    together: Counter[int] = Counter()
    jars = []
    for pot, student, guest, units in _packed(filling, pots, guests) if variants else ():
        chosen = _known(recipe, filling, guest) if guest else {}
        open_choices = [what for what, _ in variants[0].chosen if what not in chosen]
        free = [[pair for pair in one.chosen if pair[0] in open_choices] for one in variants]
        fitting = (at for at, one in enumerate(variants) if all((what, option) in one.chosen for what, option in chosen.items()))
        taken = min(fitting, key=lambda at: (sum(given[pair] for pair in free[at]), together[at]))
        given.update(dict.fromkeys(free[taken], units))
        together[taken] += units
        wishes = (guest.design, guest.own_name) if guest else ("", "")
        jars.append(Jar(pot, filling, variants[taken], bool(open_choices), units, student, guest, *wishes))
    return tuple(jars)


def _packed(filling: Filling, pots: Sequence[Pot], guests: Sequence[Guest]) -> Iterator[_Unfinished]:
    """Yield what bears a label, not yet finished.

    Packages are filled whole by one student, or from what is spare; what is left of a package is labelled by itself.
    """
    for number, pot in enumerate(pot_of_each_student(pots)):
        guest = guests[number] if number < len(guests) else None
        yield from ((pot, number + 1, guest, units) for units in _units(filling, filling.each_student))
    yield from ((pots[-1], None, None, units) for units in _units(filling, filling.spare))


def _units(filling: Filling, containers: int) -> list[int]:
    packages, single = divmod(containers, filling.fill.units)
    return [filling.fill.units] * packages + [1] * single


def _known(recipe: Recipe, filling: Filling, guest: Guest) -> Mapping[str, str | None]:
    """Return what a guest has chosen of what is offered in these containers; an option that is not offered leaves the choice open."""
    known = [dose for dose in filling.doses if (recipe.key, dose.what) in guest.chosen]
    return {dose.what: option for dose in known if (option := guest.chosen[recipe.key, dose.what]) in dose.offered}
