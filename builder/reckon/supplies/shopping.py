"""Class plans to what to buy for all of them: the needs of all dates first, then what is in stock, then the cheapest packs for the rest.

Bought once for all dates, what is left in a pack serves the next one. Choices count as the totals of the classes expect them: what the
roster says, and an even share of those that are open. Dates without a sheet (past, cancelled, nobody enrolled) need nothing.

Decided: stock is taken off on the shopping list alone, before any pack is chosen; a teacher's sheet knows no stock. Why: stock belongs to
whichever date comes first, so that a sheet of one date could only guess at it.

Decided: the shopping list counts expected choices, a teacher's sheet of one class counts each option for all. Why: over many dates
choices even out; on one day the dish must not run empty.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date
from fractions import Fraction

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.studio import Studio
from builder.model.supplies.shopping import Occasion, Period, Shopping, Wanted
from builder.model.supplies.supply import SupplyKind
from builder.model.teaching.class_plan import ClassPlan
from builder.reckon.supplies.costs import cost_of_class
from builder.reckon.supplies.inventory import CountOnDay, reckon_inventory
from builder.reckon.supplies.packs_by_kind import Key, PacksByKind, ingredient_key, packs_of
from builder.words.fold import fold

OLD_AFTER = "days after which a count is old"


def reckon_shopping(studio: Studio, plans: Iterable[ClassPlan], period: Period, *, today: date, held_back: Iterable[str] = ()) -> Shopping:
    """Work out the list of the dates within a period, none of them before today; `held_back` are the classes that have no sheets."""
    dated = [(plan, occasion) for plan in plans for occasion in _occasions(plan) if period.holds(occasion.class_key, occasion.on)]
    dated.sort(key=lambda one: one[1])
    needs: dict[Key, dict[date, Fraction]] = {}
    names: dict[Key, str] = {}
    for plan, occasion in dated:
        for key, name, quantity in _needs(studio, plan):
            day = occasion.on.date()
            names.setdefault(key, name)
            days = needs.setdefault(key, {})
            days[day] = days.get(day, Fraction(0)) + quantity
    by_kind, stock = packs_of(studio), reckon_inventory(studio)
    counts = [counted for key, (_, counted) in stock.items() if key in needs]
    return Shopping(
        today=today,
        occasions=tuple(occasion for _, occasion in dated),
        wanted=tuple(_wanted(studio, by_kind, key, names[key], days, stock.get(key)) for key, days in needs.items() if any(days.values())),
        nobody_yet=tuple(sorted(_nobody_yet(studio, period, today))),
        held_since=tuple(sorted(_held_since(studio, min(counts), today))) if counts else (),
        held_back=tuple(sorted(key for key in held_back if not period.classes or key in period.classes)),
        old_after=int(studio.constants[OLD_AFTER].typical),
    )


def _occasions(plan: ClassPlan) -> tuple[Occasion, ...]:
    return (_occasion(plan.studio_class, plan.date, plan.students),) if plan.date else ()


def _occasion(studio_class: StudioClass, when: ClassDate, students: int) -> Occasion:
    return Occasion(when.on, studio_class.key, studio_class.title, students)


def _needs(studio: Studio, plan: ClassPlan) -> Iterator[tuple[Key, str, Fraction]]:
    """Yield what one date needs: what is used for certain, and of each option what is expected."""
    cost = plan.cost or cost_of_class(studio, plan)
    for need in cost.needs:
        yield (need.kind, fold(need.name)), need.name, need.used
    for option in (option for made in plan.made for choice in made.choices for option in choice.options):
        card = studio.ingredients[fold(option.option)]
        yield ingredient_key(card), card.name, option.expected.grams


def _wanted(studio: Studio, by_kind: PacksByKind, key: Key, name: str, days: dict[date, Fraction], stock: CountOnDay | None) -> Wanted:
    have, counted = stock or (Fraction(0), None)
    card = studio.stocked(name) if key[0] is SupplyKind.INGREDIENT else None
    wanted = Wanted(
        kind=key[0],
        name=name,
        card_kind=card.kind if card else None,
        on_days=tuple((day, quantity) for day, quantity in sorted(days.items()) if quantity),
        have=have,
        counted=counted,
    )
    return replace(wanted, purchase=by_kind.need(key, name, wanted.short).purchase) if wanted.short else wanted


def _nobody_yet(studio: Studio, period: Period, today: date) -> Iterator[Occasion]:
    for studio_class in studio.classes.values():
        for when in studio_class.dates_held:
            if not when.enrolled and when.on.date() >= today and period.holds(studio_class.key, when.on):
                yield _occasion(studio_class, when, 0)


def _held_since(studio: Studio, counted: date, today: date) -> Iterator[Occasion]:
    """Yield the dates that have been held since a count: what they used may no longer be there."""
    for studio_class in studio.classes.values():
        for when in studio_class.dates_held:
            if when.enrolled and counted <= when.on.date() < today:
                yield _occasion(studio_class, when, when.enrolled)
