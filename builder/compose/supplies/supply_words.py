"""What to buy and what it costs, in words. Only sheets for the staff, and home sheets where the studio asks for it, show any of this.

Decided: only staff sheets, bench cards (strokes) and home sheets import the words of costs; public home sheets never show them. Why:
nothing of cost on the web site by construction; a test reads the imports.
"""

from collections.abc import Sequence
from fractions import Fraction
from math import floor

from builder.compose.dates.dates import money
from builder.compose.home.size_words import size_words
from builder.compose.punctuation import decimals_spoken
from builder.compose.recipe.portion_words import containers_of
from builder.compose.recipe.wording import NBSP, keep_together, listed, percent, sentence, shortest, within
from builder.compose.supplies.pack_words import SEARCH_ENDED, TITLES, packs_in_words, quantity, rough
from builder.compose.views.teacher import BuyGroup, BuyRow, Fact, SuppliesView
from builder.model.recipe.quantity import Volume
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.supplies.cost import Cost, Jug, Need, PumpStrokes
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.words.say import message, messages, say, say_count

ROUNDED = message("Each sum is rounded to the cent by itself; the totals are those of the exact sums.")
ALONE = message(
    "The packs are the cheapest that cover this class alone, with nothing in stock. What to buy for all dates is on the shopping list."
)
_STROKES = messages("{strokes}\u00a0stroke (about {weight})", "{strokes}\u00a0strokes (about {weight})")
# In English a number with a half is never one of a thing.
_HALF_STROKES = messages("{strokes}\u00a0strokes (about {weight})", "{strokes}\u00a0strokes (about {weight})")
CHOICES = message("What may be chosen is needed as if everybody chose it, at its most. The costs count the dearest at its most.")


def view_supplies(studio: Studio, plan: ClassPlan) -> SuppliesView | None:
    """Return what a class needs of what is bought; None where the studio lists no supplies."""
    cost = plan.cost
    if cost is None:
        return None
    return SuppliesView(
        groups=tuple(_groups(studio, cost)),
        till=_sum(studio, cost, cost.till),
        left=_money(studio, cost.left_value),
        jugs=tuple(Fact(_jug_name(jug), _serves(studio, made, jug)) for made in plan.made for jug in made.jugs),
        costs=tuple(_costs(studio, plan, cost)),
        notes=tuple(_notes(cost)),
    )


def home_cost(studio: Studio, batch: WorkedBatch) -> str:
    """Return in words what a home batch costs; nothing where it is not known."""
    cost = batch.cost
    if cost is None:
        return ""
    total = _sum(studio, cost, cost.total)
    if not cost.unpriced:
        return say("{sum} by the amounts that are used", sum=total)
    return say("{sum} by the amounts that are used, without {names}", sum=total, names=listed([within(name) for name in cost.unpriced]))


def batch_lines(studio: Studio, batch: WorkedBatch) -> list[str]:
    """Return the lines on supplies that `weigh` prints beneath a batch."""
    if batch.cost is None:
        return []
    lines = [
        f"One {jug.supply.written} of {within(jug.ingredient)} ({rough(jug.holds)}) fills "
        f"{containers_of(studio, batch.own.fill, jug.containers)}; this batch takes {jug.number} and leaves {rough(jug.left)} "
        f"({percent(jug.left_share, 0)} of one)."
        for jug in batch.jugs
    ]
    lines += [f"{sentence(one.ingredient)}: {strokes_and_weight(one)} of the pump; the scale decides." for one in batch.strokes]
    return [*lines, f"Materials: {_sum(studio, batch.cost, batch.cost.total)}.", *_unpriced(batch.cost)]


def class_lines(studio: Studio, plan: ClassPlan, made: MadeProduct) -> list[str]:
    """Return the lines on supplies that `weigh --class` prints: what is to be bought, and what all of the class costs."""
    cost = plan.cost
    if cost is None:
        return []
    lines = [f"{_jug_name(jug)}: {_serves(studio, made, jug)}" for jug in made.jugs]
    bought = [f"{within(row.name)} {row.packs}" for group in _groups(studio, cost) for row in group.rows if row.price]
    lines += [f"To buy for the whole class: {'; '.join(bought)}: {_sum(studio, cost, cost.till)}."] if bought else []
    each = _money(studio, cost.each_student or Fraction(0))
    return [*lines, f"Materials of the whole class: {_sum(studio, cost, cost.total)}, {each} for each student.", *_unpriced(cost)]


def strokes_and_weight(one: PumpStrokes) -> str:
    """Write strokes and what they weigh: `29 strokes (about 227 g)`; of a number with a half, its whole part decides about the form."""
    forms = _STROKES if one.strokes.denominator == 1 else _HALF_STROKES
    return say_count(*forms, floor(one.strokes), strokes=shortest(one.strokes, 1), weight=rough(one.weigh))


def _groups(studio: Studio, cost: Cost) -> list[BuyGroup]:
    groups = ((say(title), [_row(studio, need) for need in cost.needs if need.kind is kind]) for kind, title in TITLES.items())
    return [BuyGroup(title, tuple(rows)) for title, rows in groups if rows]


def _row(studio: Studio, need: Need) -> BuyRow:
    amount, name = quantity(need.kind, need.quantity), keep_together(sentence(say(need.name)))
    needed = say("at most {amount}", amount=amount) if need.if_chosen else amount
    bought = need.purchase
    if bought is None:
        return BuyRow(name, needed, say("no price known"), "", "")
    left = f"{quantity(need.kind, bought.left)}, {_money(studio, need.left_value)}"
    return BuyRow(name, needed, packs_in_words(bought), _money(studio, bought.price), left)


def _jug_name(jug: Jug) -> str:
    return f"{sentence(say(jug.ingredient))}, {decimals_spoken(jug.supply.written)} ({rough(jug.holds)})"


def _serves(studio: Studio, made: MadeProduct, jug: Jug) -> str:
    serves = say_count(
        "Serves {count}\u00a0student, {containers} with the spare ones.",
        "Serves {count}\u00a0students, {containers} with the spare ones.",
        jug.students or 0,
        containers=containers_of(studio, made.batch.own.fill, jug.containers),
    )
    takes = say(
        "This class takes {number} and leaves {weight}, {share} of one.",
        number=jug.number,
        weight=rough(jug.left),
        share=percent(jug.left_share, 0),
    )
    return " ".join((serves, takes, *_how_known(studio, jug)))


def _how_known(studio: Studio, jug: Jug) -> list[str]:
    """Return in words how the weight of a pack and that of a stroke are known."""
    supply, card = jug.supply, studio.ingredient(jug.supply.name)
    density = supply.density(card) if card and isinstance(supply.size, Volume) else None
    known = []
    if supply.weighs:
        known.append(say("It was weighed: {how}.", how=supply.measured))
    elif density:
        written = f"{shortest(density.grams_per_millilitre, 3)}{NBSP}g/mL"
        known.append(say("Its weight is {pack} at {density}.", pack=decimals_spoken(supply.written), density=written))
    if jug.strokes and jug.stroke:
        known.append(
            say_count(
                "The pump gives {weight} with a stroke, in all about {count}\u00a0stroke.",
                "The pump gives {weight} with a stroke, in all about {count}\u00a0strokes.",
                jug.strokes,
                weight=f"{shortest(jug.stroke.grams, 2)}{NBSP}g",
            )
        )
    return known


def _costs(studio: Studio, plan: ClassPlan, cost: Cost) -> list[Fact]:
    facts = [
        Fact(say(title), _money(studio, cost.of(kind))) for kind, title in TITLES.items() if any(need.kind is kind for need in cost.needs)
    ]
    if cost.choices:
        facts.insert(1, Fact(say("What may be chosen, the dearest at its most"), _money(studio, cost.choices)))
    price = say("{price} for each student", price=_money(studio, plan.studio_class.price))
    facts.append(Fact(say("Materials in all"), _sum(studio, cost, cost.total)))
    facts.append(Fact(say("For each student"), _sum(studio, cost, cost.each_student or Fraction(0))))
    facts.append(Fact(say("The price of the class"), price))
    facts += [Fact(say("One container of {name}", name=within(each.recipe)), _sum(studio, cost, each.value)) for each in cost.containers]
    homes = [(made, home) for made in plan.made for home in made.home]
    facts += [
        Fact(
            say("At home: {name}, {size}", name=within(made.batch.recipe.name), size=size_words(home.size)),
            home_cost(studio, home.batch),
        )
        for made, home in homes
    ]
    return facts


def _notes(cost: Cost) -> list[str]:
    notes = [say(ALONE), say(ROUNDED)]
    if any(need.if_chosen for need in cost.needs):
        notes.append(say(CHOICES))
    if any(need.purchase and not need.purchase.proven for need in cost.needs):
        notes.append(say(SEARCH_ENDED))
    return [*notes, *_unpriced(cost)]


def _unpriced(cost: Cost) -> Sequence[str]:
    return [say("No price known: {names}.", names=listed([within(name) for name in cost.unpriced]))] if cost.unpriced else []


def _sum(studio: Studio, cost: Cost, value: Fraction) -> str:
    """Write a sum; where the price of something is not known it is the least that it comes to."""
    price = _money(studio, value)
    return say("at least {price}", price=price) if cost.unpriced else price


def _money(studio: Studio, value: Fraction) -> str:
    return money(value, studio.profile.currency, studio.locale)
