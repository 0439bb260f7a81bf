"""What a student may add to one portion: of each option the most by weight, rounded down to the scale, and in whole drops.

No combination that is offered, of any options of all choices, passes a limit. Where a limit leaves less than the recipe would allow, the
choices share it in proportion to what they would take at their most; then each in turn gets what is left, so that nowhere one drop or one
division more would do. Mixes come last: of several options of a choice together, as much as the others leave.

Decided: under a shared limit choices get in proportion to what they would take, then each what is left, mixes last. Why: nobody's choice
is emptied by another, and nowhere would one drop more do.

Decided: the most of a choice is worked out and printed for each kind of container that a batch fills. Why: a dose goes with the weight of
its portion.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import floor

from builder.model.dose.dose import Dose, Drop, MostOf
from builder.model.recipe.quantity import Mass
from builder.model.recipe.recipe import Choice, Fill
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.recipe.working import Given, SumRule, Working
from builder.reckon.dose.drops import reckon_drop
from builder.reckon.dose.mixes import reckon_mixed
from builder.reckon.dose.room import Room, rooms_under_limits
from builder.reckon.dose.worst_mix import worst_mix
from builder.reckon.recipe.rounding import round_down
from builder.reckon.recipe.workplace import Workplace
from builder.words.fold import fold

Caps = Mapping[str, tuple[Mass, Room | None]]
Drops = Mapping[str, Drop | None]


@dataclass(frozen=True)
class _Wish:
    """A choice of a recipe for one portion: the names of the cards that are its options, and the most that the recipe itself allows."""

    choice: Choice
    options: tuple[str | None, ...]
    most: Mass

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(name for name in self.options if name is not None))

    def takes(self, room: Room) -> Fraction:
        """Return what it would take of a limit at its most."""
        return max((room.takes[name] for name in self.names), default=Fraction(0)) * self.most.grams


def reckon_doses(batch: WorkedBatch, container: Fill, here: Workplace) -> tuple[tuple[Dose, ...], tuple[Working, ...]]:
    """Return the dose of each choice for a container of a batch as weighed, in any of its units, and how those came about that are
    estimated or lowered.
    """
    cards, fill = here.cards, container.weight
    rooms = [room for column in batch.columns for room in rooms_under_limits(batch, fill, column, cards, here.rules)]
    wishes = [
        _Wish(choice, tuple(cards[one.key].name if one else None for one in choice.options), fill * choice.at_most.fraction)
        for choice in batch.recipe.choices
    ]
    found = {name: reckon_drop(cards[fold(name)], here.constants) for wish in wishes for name in wish.names}
    drops = {name: drop for name, (drop, _) in found.items()}
    workings = [working for _, estimated in found.values() for working in estimated]
    doses = [_dose(wish, _fair_caps(wish, wishes, rooms), drops, here) for wish in wishes]
    for number, wish in enumerate(wishes):
        caps = _caps(wish, [(room, _left(room, doses, number)) for room in rooms])
        doses[number] = _dose(wish, caps, drops, here)
        lowered = {one.option for one in doses[number].each if one.lowered}
        workings += [_working(name, *caps[name], fill, doses, number) for name in wish.names if name in lowered]
    for number, wish in enumerate(wishes):
        rests = [(room.takes, _left(room, doses, number)) for room in rooms]
        division = here.division_for(wish.most)
        doses[number] = replace(doses[number], mixed=reckon_mixed(doses[number], wish.most, division, rests))
    return tuple(doses), tuple(workings)


def _fair_caps(wish: _Wish, wishes: Sequence[_Wish], rooms: Sequence[Room]) -> Caps:
    """Return the caps of a choice where each choice gets of every limit in proportion to what it would take."""
    totals = [(room, sum((other.takes(room) for other in wishes), Fraction(0))) for room in rooms]
    return _caps(wish, [(room, room.room * wish.takes(room) / total) for room, total in totals if total > room.room])


def _caps(wish: _Wish, rests: Sequence[tuple[Room, Fraction]]) -> Caps:
    """Return the exact most of each option under what is left of every limit, and the limit that binds it, if one does."""
    caps: dict[str, tuple[Mass, Room | None]] = {}
    for name in wish.names:
        caps[name] = (wish.most, None)
        for room, rest in rests:
            most = Mass(rest / room.takes[name]) if room.takes[name] else wish.most
            if most < caps[name][0]:
                caps[name] = (most, room)
    return caps


def _dose(wish: _Wish, caps: Caps, drops: Drops, here: Workplace) -> Dose:
    each = tuple(_most_of(name, *caps[name], wish.most, drops[name], here) for name in wish.names)
    return Dose(wish.choice.what, wish.options, wish.choice.at_most.fraction, each)


def _most_of(name: str, cap: Mass, room: Room | None, wish: Mass, drop: Drop | None, here: Workplace) -> MostOf:
    def most(mass: Mass) -> MostOf:
        weight = round_down(mass, here.division_for(mass))
        return MostOf(name, weight, floor(mass / drop.mass) if drop else None, drop)

    found = most(cap)
    return found if room is None or found == most(wish) else replace(found, lowered=room.lowered)


def _left(room: Room, doses: Sequence[Dose], number: int) -> Fraction:
    """Return what the other choices leave of a limit at their worst."""
    return room.room - sum((_taken(room, dose) for other, dose in enumerate(doses) if other != number), Fraction(0))


def _taken(room: Room, dose: Dose) -> Fraction:
    return sum((room.takes[option] * mass.grams for option, mass in worst_mix(dose, room.takes).items()), Fraction(0))


def _working(name: str, cap: Mass, room: Room | None, fill: Mass, doses: Sequence[Dose], number: int) -> Working:
    assert room is not None and room.lowered.limit.most is not None
    limit, most = room.lowered.limit, room.lowered.limit.most
    given = (
        Given("limit", most, "of 1", f"{limit.source.title}, {limit.at}"),
        Given("in the batch", room.holds, "of 1"),
        Given("fill", fill.grams, "g"),
        Given("room in a portion", room.room, "g"),
        Given("taken by other choices", room.room - _left(room, doses, number), "g"),
        Given("what 1 g takes", room.takes[name], "g"),
    )
    return Working(SumRule.MOST_UNDER_A_LIMIT, name, given, cap.grams, "g")
