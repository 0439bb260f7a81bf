"""Who has to watch what: the rules that hold in each part, the most students that the staff carry, and who watches which group.

Lye that has come into the students' hands stays raw soap in every later part in which they work on that recipe.
"""

from collections.abc import Iterable
from math import ceil

from builder.model.class_sheet import MadeSheet
from builder.model.clock import TimedPart
from builder.model.lesson import Who
from builder.model.studio import Studio
from builder.model.studio_class import StudioClass
from builder.model.supervision import Supervision, WatchedPart, WatchRule
from builder.reckon.handling import CAUSTIC, DRY_LYE, RAW_SOAP, batch_of, hazards_in

LINGERS = (CAUSTIC, DRY_LYE, RAW_SOAP)


def reckon_supervision(
    studio: Studio, studio_class: StudioClass, made: tuple[MadeSheet, ...], timeline: tuple[TimedPart, ...], staff: int, groups: int
) -> Supervision:
    """Apply the teaching policy to a class with so many adults."""
    parts: list[WatchedPart] = []
    raw: set[str] = set()
    for timed in timeline:
        if timed.part.who is Who.WAITING:
            continue
        sheet = batch_of(made, timed.part)
        hazards = hazards_in(studio, timed.part, sheet)
        if timed.part.by_hand:
            if sheet.recipe.key in raw:
                hazards = tuple(dict.fromkeys((*hazards, RAW_SOAP)))
            if any(hazard in LINGERS for hazard in hazards):
                raw.add(sheet.recipe.key)
        rules = tuple(rules_for(studio.supervision.values(), hazards, by_hand=timed.part.by_hand))
        carried = carry(rules, staff, studio_class.youngest) if timed.part.by_hand else None
        parts.append(WatchedPart(timed.number, timed.part.title, timed.part.by_hand, hazards, rules, carried))
    holding = [(carry((rule,), staff, studio_class.youngest), rule) for part in parts if part.by_hand for rule in part.rules]
    limits = [(most, rule) for most, rule in holding if most is not None]
    fewest, limit = min(limits, key=lambda limit: limit[0], default=(None, None))
    return Supervision(staff, tuple(parts), fewest, limit, share_out(groups, staff))


def rules_for(rules: Iterable[WatchRule], hazards: tuple[str, ...], *, by_hand: bool) -> Iterable[WatchRule]:
    """Give the rules that speak of some hazards, and for work of the students' hands those that always hold."""
    return (rule for rule in rules if (by_hand and not rule.hazards) or any(hazard in rule.hazards for hazard in hazards))


def carry(rules: Iterable[WatchRule], staff: int, age: int) -> int | None:
    """Give the most students of an age that so many adults may watch under all of some rules; None where none sets a number."""
    limits = []
    for rule in rules:
        to_one = rule.to_one(age)
        limits += [staff * to_one] if to_one is not None else []
        limits += [rule.most] if rule.most is not None else []
    return min(limits, default=None)


def share_out(groups: int, staff: int) -> tuple[tuple[int, ...], ...]:
    """Give each adult groups that lie side by side, as evenly as can be; those with one more come first."""
    shared: list[tuple[int, ...]] = []
    first = 1
    for adults_left in range(staff, 0, -1):
        many = ceil((groups - first + 1) / adults_left)
        shared.append(tuple(range(first, first + many)))
        first += many
    return tuple(shared)
