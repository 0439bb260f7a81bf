"""Who has to watch what: the rules that hold in each part, the most students that the staff carry, and who watches which group.

Steps of the students' hands on a recipe with lye count as work with raw soap, unless the part says `no raw soap`: who stirs or pours it
names neither the lye nor the soap. Lye that has come into their hands stays raw soap in every later part in which they work on that recipe.
What is hot in their hands, or in steps of the teacher, stays hot in their later parts on that recipe, until a wait is over or a part
begins `cooled`: the pot stands there meanwhile, and is poured from. What staff have melted before the class is hot for who fills from it.

Decided: teachers and assistants count alike; each watches groups that lie side by side. Why: one teacher and three assistants carry four
pairs with lye.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from math import ceil

from builder.model.dates.studio_class import StudioClass
from builder.model.hazard import Hazard
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.lesson import Part, Who
from builder.model.teaching.supervision import Supervision, WatchedPart, Watcher, WatchRule
from builder.model.teaching.timed_part import TimedPart
from builder.reckon.lye.lye_course import parts_with_dry_lye
from builder.reckon.teaching.handling import batch_of, handled_in, has_steps, hazards_in
from builder.rules.hazard import HEAT
from builder.rules.over_heat import heat_said
from builder.rules.pouring import pours_in

LINGERS = (Hazard.CAUSTIC, Hazard.DRY_LYE, Hazard.RAW_SOAP)


def reckon_supervision(
    studio: Studio,
    studio_class: StudioClass,
    made: tuple[MadeProduct, ...],
    timeline: tuple[TimedPart, ...],
    adults: tuple[int, int],
    groups: int,
) -> Supervision:
    """Apply the teaching policy to a class with so many teachers and assistants."""
    staff = sum(adults)
    parts: list[WatchedPart] = []
    ahead = _named_ahead(studio, studio_class, made)
    lingering = _Lingering(melted=_melted_ahead(studio, studio_class, made))
    with_dry_lye = parts_with_dry_lye(studio, studio_class.lesson, made)
    for timed in timeline:
        batch = batch_of(made, timed.part)
        lingering.begin(timed.part, batch.recipe.key)
        if timed.part.who is Who.WAITING:
            continue
        hazards = own = hazards_in(studio, timed.part, batch, with_dry_lye)
        if timed.part.by_hand:
            handled = handled_in(studio, timed.part, batch)
            fills = handled.fills or pours_in(timed.part) is not None
            met = (*own, *([Hazard.RAW_SOAP] if handled.raw_soap else []), *(lingering.melted.get(batch.recipe.key, ()) if fills else ()))
            hazards = lingering.with_what_lingers(batch.recipe.key, met)
        elif has_steps(timed.part):
            lingering.heat(batch.recipe.key, own)
        said = heat_said(timed.part, studio.flame_words, hazards)
        hazards, own = (*hazards, *said), (*own, *said)
        not_ahead: tuple[tuple[str, tuple[str, ...]], ...] = ()
        if timed.part.by_hand:
            cards = _cards_of(studio, timed.part, batch)
            not_ahead = tuple((card.name, card.hazards) for card in cards if (batch.recipe.key, card.key) not in ahead)
        rules = tuple(rules_for(studio.supervision.values(), hazards, by_hand=timed.part.by_hand))
        carried = carry(rules, staff, studio_class.youngest) if timed.part.by_hand else None
        parts.append(
            WatchedPart(
                timed.number,
                timed.part.title,
                timed.part.by_hand,
                hazards,
                rules,
                carried,
                tuple(one for one in hazards if one not in own),
                not_ahead,
            )
        )
    holding = [(carry((rule,), staff, studio_class.youngest), rule) for part in parts if part.by_hand for rule in part.rules]
    limits = [(most, rule) for most, rule in holding if most is not None]
    fewest, limit = min(limits, key=lambda limit: limit[0], default=(None, None))
    return Supervision(tuple(parts), fewest, limit, share_out(groups, adults))


@dataclass
class _Lingering:
    """What stays dangerous on the students' benches from part to part, by the key of the recipe; and whose wait is not over yet.

    `melted` is what staff have made hot before the class: it is met by who fills from it.
    """

    melted: dict[str, tuple[str, ...]]
    raw: set[str] = field(default_factory=set)
    hot: dict[str, tuple[str, ...]] = field(default_factory=dict)
    cooling: set[str] = field(default_factory=set)

    def begin(self, part: Part, recipe: str) -> None:
        """Take off what has cooled when a part begins: by a wait that is over, or since the part says so."""
        if not part.in_the_wait:
            for key in self.cooling:
                self._cool(key)
            self.cooling = {recipe} if part.who is Who.WAITING else set()
        if part.cooled:
            self._cool(recipe)

    def _cool(self, recipe: str) -> None:
        self.hot.pop(recipe, None)
        self.melted.pop(recipe, None)

    def heat(self, recipe: str, hazards: tuple[str, ...]) -> None:
        """Remember what is hot from now on."""
        self.hot[recipe] = tuple(hazard for hazard in HEAT if hazard in (*hazards, *self.hot.get(recipe, ())))

    def with_what_lingers(self, recipe: str, hazards: tuple[str, ...]) -> tuple[str, ...]:
        """Return the hazards of work by hand with those that are still there, and remember those that it leaves."""
        found = (*hazards, *([Hazard.RAW_SOAP] if recipe in self.raw else []), *self.hot.get(recipe, ()))
        if any(hazard in LINGERS for hazard in found):
            self.raw.add(recipe)
        self.heat(recipe, found)
        return tuple(dict.fromkeys(found))


def _cards_of(studio: Studio, part: Part, batch: WorkedBatch) -> tuple[Ingredient, ...]:
    """Return the ingredients that a part names, those to choose from included."""
    handled = handled_in(studio, part, batch)
    return tuple({card.key: card for card in (*(one.line.ingredient for one in handled.weighed), *handled.chosen)}.values())


def _named_ahead(studio: Studio, studio_class: StudioClass, made: tuple[MadeProduct, ...]) -> set[tuple[str, str]]:
    """Return what staff have in hand before the class, by the key of the recipe and of the card: it comes to the bench in cups."""
    parts = [part for part in studio_class.lesson.parts if part.who is Who.AHEAD]
    return {(batch.recipe.key, card.key) for part in parts for batch in [batch_of(made, part)] for card in _cards_of(studio, part, batch)}


def _melted_ahead(studio: Studio, studio_class: StudioClass, made: tuple[MadeProduct, ...]) -> dict[str, tuple[str, ...]]:
    """Return what is made hot before the class on its day, by the key of the recipe."""
    melted: dict[str, tuple[str, ...]] = {}
    for part in (part for part in studio_class.lesson.parts if part.who is Who.AHEAD and not part.days_before):
        batch = batch_of(made, part)
        hot = tuple(hazard for hazard in hazards_in(studio, part, batch) if hazard in HEAT)
        melted[batch.recipe.key] = (*melted.get(batch.recipe.key, ()), *hot)
    return melted


def rules_for(rules: Iterable[WatchRule], hazards: tuple[str, ...], *, by_hand: bool) -> Iterable[WatchRule]:
    """Return the rules that speak of some hazards, and for work of the students' hands those that always hold."""
    return (rule for rule in rules if (by_hand and not rule.hazards) or any(hazard in rule.hazards for hazard in hazards))


def carry(rules: Iterable[WatchRule], staff: int, age: int) -> int | None:
    """Return the most students of an age that so many adults may watch under all of some rules; None where none sets a number."""
    limits = []
    for rule in rules:
        to_one = rule.to_one(age)
        limits += [staff * to_one] if to_one is not None else []
        limits += [rule.most] if rule.most is not None else []
    return min(limits, default=None)


def share_out(groups: int, adults: tuple[int, int]) -> tuple[Watcher, ...]:
    """Return each of the teachers and the assistants groups that lie side by side, as evenly as can be; those with one more come first."""
    watchers: list[Watcher] = []
    first, (teachers, assistants) = 1, adults
    for of_kind, is_teacher in ((teachers, True), (assistants, False)):
        for number in range(1, of_kind + 1):
            many = ceil((groups - first + 1) / (sum(adults) - len(watchers)))
            watchers.append(Watcher(is_teacher, number, of_kind == 1, tuple(range(first, first + many))))
            first += many
    return tuple(watchers)
