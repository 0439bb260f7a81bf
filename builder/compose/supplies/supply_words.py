"""What to buy and what it costs, in words. Only sheets for the staff, and home sheets where the studio asks for it, show any of this.

Decided: only staff sheets, bench cards (strokes) and home sheets import the words of costs; public home sheets never show them. Why:
nothing of cost on the web site by construction; a test reads the imports.
"""

from collections.abc import Sequence
from fractions import Fraction

from builder.compose.dates.dates import money
from builder.compose.recipe.portion_words import container_name, containers_of
from builder.compose.recipe.wording import NBSP, counted, listed, percent, sentence, shortest, within
from builder.compose.supplies.pack_words import packs_in_words, quantity, rough
from builder.compose.views.teacher import BuyGroup, BuyRow, Fact, SuppliesView
from builder.model.recipe.quantity import Volume
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.supplies.cost import Cost, Jug, Need, PumpStrokes
from builder.model.supplies.supply import SupplyKind
from builder.model.teaching.class_plan import ClassPlan, MadeProduct

TITLES = {
    SupplyKind.INGREDIENT: "Ingredients",
    SupplyKind.CONTAINER: "Containers",
    SupplyKind.ITEM: "Used up in class",
}
ROUNDED = "Each sum is rounded to the cent by itself; the totals are those of the exact sums."
ALONE = "The packs are the cheapest that cover this class alone, with nothing in stock. What to buy for all dates is on the shopping list."
CHOICES = "What may be chosen is needed as if everybody chose it, at its most. The costs count the dearest at its most."


def view_supplies(studio: Studio, plan: ClassPlan) -> SuppliesView | None:
    """Give what a class needs of what is bought; None where the studio lists no supplies."""
    cost = plan.cost
    if cost is None:
        return None
    return SuppliesView(
        groups=tuple(_groups(studio, cost)),
        till=f"{_least(cost)}{_money(studio, cost.till)}",
        left=_money(studio, cost.left_value),
        jugs=tuple(Fact(_jug_name(jug), _serves(studio, made, jug)) for made in plan.made for jug in made.jugs),
        costs=tuple(_costs(studio, plan, cost)),
        notes=tuple(_notes(cost)),
    )


def home_cost(studio: Studio, batch: WorkedBatch) -> str:
    """Say what a home batch costs; nothing where it is not known."""
    cost = batch.cost
    if cost is None:
        return ""
    unpriced = f", without {listed([within(name) for name in cost.unpriced])}" if cost.unpriced else ""
    return f"{_least(cost)}{_money(studio, cost.total)} by the amounts that are used{unpriced}"


def batch_lines(studio: Studio, batch: WorkedBatch) -> list[str]:
    """Give the lines on supplies that `weigh` prints beneath a batch."""
    if batch.cost is None:
        return []
    name = container_name(studio, batch.own.fill)
    lines = [
        f"One {jug.supply.written} of {within(jug.ingredient)} ({rough(jug.holds)}) fills {containers_of(jug.containers, name)};"
        f" this batch takes {jug.number} and leaves {rough(jug.left)} ({percent(jug.left_share, 0)} of one)."
        for jug in batch.jugs
    ]
    lines += [f"{sentence(one.ingredient)}: {strokes_and_weight(one)} of the pump; the scale decides." for one in batch.strokes]
    return [*lines, f"Materials: {_least(batch.cost)}{_money(studio, batch.cost.total)}.", *_unpriced(batch.cost)]


def class_lines(studio: Studio, plan: ClassPlan, made: MadeProduct) -> list[str]:
    """Give the lines on supplies that `weigh --class` prints: what is to be bought, and what all of the class costs."""
    cost = plan.cost
    if cost is None:
        return []
    lines = [f"{_jug_name(jug)}: {_serves(studio, made, jug)}" for jug in made.jugs]
    bought = [f"{within(row.name)} {row.packs}" for group in _groups(studio, cost) for row in group.rows if row.price]
    lines += [f"To buy for the whole class: {'; '.join(bought)}: {_least(cost)}{_money(studio, cost.till)}."] if bought else []
    each = _money(studio, cost.each_student or Fraction(0))
    return [*lines, f"Materials of the whole class: {_least(cost)}{_money(studio, cost.total)}, {each} for each student.", *_unpriced(cost)]


def strokes_and_weight(one: PumpStrokes) -> str:
    """Write strokes and what they weigh: `29 strokes (about 227 g)`."""
    halves = shortest(one.strokes, 1)
    return f"{halves}{NBSP}{'stroke' if one.strokes == 1 else 'strokes'} (about {rough(one.weigh)})"


def _groups(studio: Studio, cost: Cost) -> list[BuyGroup]:
    groups = ((title, [_row(studio, need) for need in cost.needs if need.kind is kind]) for kind, title in TITLES.items())
    return [BuyGroup(title, tuple(rows)) for title, rows in groups if rows]


def _row(studio: Studio, need: Need) -> BuyRow:
    most = "at most " if need.if_chosen else ""
    needed = f"{most}{quantity(need.kind, need.quantity)}"
    bought = need.purchase
    if bought is None:
        return BuyRow(sentence(need.name), needed, "no price known", "", "")
    left = f"{quantity(need.kind, bought.left)}, {_money(studio, need.left_value)}"
    return BuyRow(sentence(need.name), needed, packs_in_words(bought), _money(studio, bought.price), left)


def _jug_name(jug: Jug) -> str:
    return f"{sentence(jug.ingredient)}, {jug.supply.written} ({rough(jug.holds)})"


def _serves(studio: Studio, made: MadeProduct, jug: Jug) -> str:
    name = container_name(studio, made.batch.own.fill)
    serves = f"Serves {counted(jug.students or 0, 'student', 'students')}, {containers_of(jug.containers, name)} with the spare ones"
    takes = f"This class takes {jug.number} and leaves {rough(jug.left)}, {percent(jug.left_share, 0)} of one."
    return " ".join((f"{serves}.", takes, *_how_known(studio, jug)))


def _how_known(studio: Studio, jug: Jug) -> list[str]:
    """Say how the weight of a pack and that of a stroke are known."""
    supply, card = jug.supply, studio.ingredient(jug.supply.name)
    density = supply.density(card) if card and isinstance(supply.size, Volume) else None
    known = []
    if supply.weighs:
        known.append(f"It was weighed: {supply.measured}.")
    elif density:
        known.append(f"Its weight is {supply.written} at {shortest(density.grams_per_millilitre, 3)}{NBSP}g/mL.")
    if jug.strokes and jug.stroke:
        strokes = counted(jug.strokes, "stroke", "strokes")
        known.append(f"The pump gives {shortest(jug.stroke.grams, 2)}{NBSP}g with a stroke, in all about {strokes}.")
    return known


def _costs(studio: Studio, plan: ClassPlan, cost: Cost) -> list[Fact]:
    facts = [Fact(title, _money(studio, cost.of(kind))) for kind, title in TITLES.items() if any(need.kind is kind for need in cost.needs)]
    if cost.choices:
        facts.insert(1, Fact("What may be chosen, the dearest at its most", _money(studio, cost.choices)))
    least = _least(cost)
    facts.append(Fact("Materials in all", f"{least}{_money(studio, cost.total)}"))
    facts.append(Fact("For each student", f"{least}{_money(studio, cost.each_student or Fraction(0))}"))
    facts.append(Fact("The price of the class", f"{_money(studio, plan.studio_class.price)} for each student"))
    facts += [Fact(f"One container of {within(each.recipe)}", f"{least}{_money(studio, each.value)}") for each in cost.containers]
    homes = [(made, home) for made in plan.made for home in made.home]
    facts += [
        Fact(f"At home: {within(made.batch.recipe.name)}, {home.size.written}", home_cost(studio, home.sheet)) for made, home in homes
    ]
    return facts


def _notes(cost: Cost) -> list[str]:
    notes = [ALONE, ROUNDED]
    if any(need.if_chosen for need in cost.needs):
        notes.append(CHOICES)
    if any(need.purchase and not need.purchase.proven for need in cost.needs):
        notes.append("There are too many ways to combine the packs to try them all: cheaper ones may exist.")
    return [*notes, *_unpriced(cost)]


def _unpriced(cost: Cost) -> Sequence[str]:
    return [f"No price known: {listed([within(name) for name in cost.unpriced])}."] if cost.unpriced else []


def _least(cost: Cost) -> str:
    return "at least " if cost.unpriced else ""


def _money(studio: Studio, value: Fraction) -> str:
    return money(value, studio.profile.currency, studio.region.locale)
