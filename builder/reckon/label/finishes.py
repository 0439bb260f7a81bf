"""How what bears a label is finished, so that it gets the label of just that: by the roster where a choice is known there."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from builder.model.recipe.filling import Filling
from builder.model.recipe.recipe import Recipe
from builder.model.roster.roster import Guest
from builder.model.teaching.class_plan import Finish


def reckon_finishes(recipe: Recipe, filling: Filling, students: int, guests: Sequence[Guest]) -> tuple[Finish, ...]:
    """Give the finish of each container or package: those of each student in the order of the roster, then of students without a row,
    then spare ones.

    A guest's choice is that of all of their containers. What is open falls evenly on what is offered, each choice by itself, so that no
    option has more containers than `reckon_choices` expects; of equally rare options the finish that fewest have is taken.
    """
    variants = filling.variants
    given: Counter[tuple[str, str | None]] = Counter()
    together: Counter[int] = Counter()
    finishes = []
    for chosen, units in _packed(recipe, filling, students, guests) if variants else ():
        open_choices = [what for what, _ in variants[0].chosen if what not in chosen]
        free = [[pair for pair in one.chosen if pair[0] in open_choices] for one in variants]
        fitting = (at for at, one in enumerate(variants) if all((what, option) in one.chosen for what, option in chosen.items()))
        taken = min(fitting, key=lambda at: (sum(given[pair] for pair in free[at]), together[at]))
        given.update(dict.fromkeys(free[taken], units))
        together[taken] += units
        finishes.append(Finish(variants[taken], is_open=bool(open_choices), units=units))
    return tuple(finishes)


def _packed(recipe: Recipe, filling: Filling, students: int, guests: Sequence[Guest]) -> Iterator[tuple[Mapping[str, str | None], int]]:
    """Give what bears a label, with what is known of its choices and how many containers it holds.

    Packages are filled whole by one student, or from what is spare; what is left of a package is labelled by itself.
    """
    units = filling.fill.units
    for number in range(students + 1):
        is_spare = number == students
        chosen = _known(recipe, filling, guests[number]) if number < len(guests) and not is_spare else {}
        packages, single = divmod(filling.spare if is_spare else filling.each_student, units)
        yield from ((chosen, size) for size in (*[units] * packages, *[1] * single))


def _known(recipe: Recipe, filling: Filling, guest: Guest) -> Mapping[str, str | None]:
    """Give what a guest has chosen of what is offered in these containers; an option that is not offered leaves the choice open."""
    known = [dose for dose in filling.doses if (recipe.key, dose.what) in guest.chosen]
    return {dose.what: option for dose in known if (option := guest.chosen[recipe.key, dose.what]) in dose.offered}
