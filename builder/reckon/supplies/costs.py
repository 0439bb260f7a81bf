"""What the materials of a class or a batch cost, and which whole packs it takes.

What is used is costed by its share of the packs that would be bought for it; what is used and what is left then add up to what the till
takes. A mould is used again, so that it costs nothing unless a price is given for it.

Decided: what is used costs its share of the packs bought for that class; used and left add up to the till. Why: no second price; ten
grams from a dear small pack are as dear as they are.

Decided: money is a fraction, rounded half to even where it is written; rounded parts may miss their total by a cent, and the sheet says
so. Why: no cent is made up to please a column.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from builder.model.dose.dose import Dose
from builder.model.lye.lye_solution import LyeSolution
from builder.model.recipe.filling import Filling
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Mass, sum_masses
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.supplies.cost import ContainerCost, Cost, Need
from builder.model.supplies.supply import SupplyKind
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.reckon.supplies.packs_by_kind import Key, PacksByKind, ingredient_key, packs_of

Amounts = Sequence[tuple[Ingredient, Mass]]


def cost_of_batch(studio: Studio, batch: WorkedBatch) -> Cost:
    """Return what a batch costs with the containers that it fills."""
    amounts = [*_weighed(batch, 1), *_of_bottles(studio, batch)]
    return _cost(studio, [_Product(batch.recipe.name, batch.own, amounts, batch.own.portions.yields)], {}, None)


def cost_of_class(studio: Studio, plan: ClassPlan) -> Cost:
    """Return what a class costs: all its batches, what everybody may add, containers, and what is used up."""
    products = [product for made in plan.made for product in _fillings(studio, made)]
    return _cost(studio, products, _items(studio, plan), plan.students)


@dataclass(frozen=True)
class _Product:
    """One recipe in one kind of container: what its batches take for it, and how many of it they fill."""

    name: str
    filling: Filling
    amounts: Amounts
    containers: int


def _fillings(studio: Studio, made: MadeProduct) -> Iterable[_Product]:
    """Yield one product for each kind of container; each bears its share, by filled weight, of what all batches take."""
    amounts = _in_all(studio, made)
    own, name = made.batch.own, made.batch.recipe.name
    filled = sum_masses(one.filling.fill.weight * one.in_all for one in made.containers)
    for one in made.containers:
        filling, share = one.filling, one.filling.fill.weight * one.in_all / filled
        called = name if filling is own else f"{name}, {filling.fill.container}"
        yield _Product(called, filling, [(card, mass * share) for card, mass in amounts], one.in_all)


@dataclass
class _Sum:
    name: str
    used: Fraction = Fraction(0)
    if_chosen: Fraction = Fraction(0)


@dataclass(frozen=True)
class _Item:
    """What is used up of one item in all, and for each container."""

    name: str
    in_all: Fraction
    each_container: Fraction


@dataclass
class _Sums:
    by_key: dict[Key, _Sum] = field(default_factory=dict)

    def of(self, key: Key, name: str) -> _Sum:
        return self.by_key.setdefault(key, _Sum(name))


def _cost(studio: Studio, products: Sequence[_Product], items: dict[Key, _Item], students: int | None) -> Cost:
    by_kind, sums = packs_of(studio), _Sums()
    for product in products:
        for card, mass in product.amounts:
            sums.of(ingredient_key(card), card.name).used += mass.grams
        for dose in product.filling.doses:
            for card, most in _options(studio, dose):
                sums.of(ingredient_key(card), card.name).if_chosen += most.grams * product.containers
        key, name = _container(studio, product)
        if _counts(studio, by_kind, product, key):
            sums.of(key, name).used += product.containers
    for key, item in items.items():
        sums.of(key, item.name).used += item.in_all
    needs = {key: by_kind.need(key, one.name, one.used, one.if_chosen) for key, one in sums.by_key.items()}
    choices = {id(product): sum((_dearest(studio, dose, needs) for dose in product.filling.doses), Fraction(0)) for product in products}
    return Cost(
        needs=tuple(needs.values()),
        choices=sum((choices[id(product)] * product.containers for product in products), Fraction(0)),
        containers=tuple(_each(studio, product, choices[id(product)], needs, items) for product in products if product.containers),
        students=students,
    )


def _each(studio: Studio, product: _Product, choices: Fraction, needs: dict[Key, Need], items: dict[Key, _Item]) -> ContainerCost:
    ingredients = sum((_worth(needs, ingredient_key(card), mass.grams) for card, mass in product.amounts), Fraction(0))
    container = _worth(needs, _container(studio, product)[0], Fraction(1))
    used_up = sum((_worth(needs, key, item.each_container) for key, item in items.items()), Fraction(0))
    return ContainerCost(product.name, ingredients / product.containers + choices + container + used_up)


def _worth(needs: dict[Key, Need], key: Key, quantity: Fraction) -> Fraction:
    purchase = needs[key].purchase if key in needs else None
    return purchase.worth(quantity) if purchase else Fraction(0)


def _dearest(studio: Studio, dose: Dose, needs: dict[Key, Need]) -> Fraction:
    """Return what the dearest option of a choice costs for one portion, at its most."""
    worth = (_worth(needs, ingredient_key(card), most.grams) for card, most in _options(studio, dose))
    return max(worth, default=Fraction(0))


def _options(studio: Studio, dose: Dose) -> Iterable[tuple[Ingredient, Mass]]:
    """Return each option with its most for one portion."""
    found = ((studio.ingredient(one.option), one.to_have_ready) for one in dose.each)
    return ((card, most) for card, most in found if card is not None)


def _container(studio: Studio, product: _Product) -> tuple[Key, str]:
    name = product.filling.fill.container
    container = studio.container(name)
    return (SupplyKind.CONTAINER, name.key), container.name if container else name.text


def _counts(studio: Studio, by_kind: PacksByKind, product: _Product, key: Key) -> bool:
    container = studio.container(product.filling.fill.container)
    return key in by_kind.packs or container is None or not container.is_mould


def _in_all(studio: Studio, made: MadeProduct) -> Amounts:
    """Return what all batches of a product take, the lye as the studio mixes it ahead."""
    amounts = [one for planned in made.batches for one in _weighed(planned.batch, planned.copies)]
    return [*amounts, *(one for lye in made.ready_mixed for one in _of_solution(studio, lye))]


def _of_solution(studio: Studio, lye: LyeSolution) -> Amounts:
    """Return what a ready-mixed lye takes: what staff stir together, or the solution itself where it is bought."""
    if not lye.bought:
        return _cards(studio, (*lye.alkalis, *lye.liquids))
    ((alkali, _),) = lye.alkalis
    return [(card.solution(lye.strength), lye.solution) for card, _ in _cards(studio, ((alkali, lye.solution),))]


def _weighed(batch: WorkedBatch, copies: int) -> Amounts:
    """Return what is weighed for so many copies of a batch, but for ready-mixed lye."""
    return [(w.line.ingredient, w.mass * copies) for w in batch.grams.weighed if w.line.strength is None]


def _of_bottles(studio: Studio, batch: WorkedBatch) -> Amounts:
    """Return what a batch takes of ready-mixed lye: the solution as it is bought, or the solid and the water of which it is mixed."""
    amounts: list[tuple[Ingredient, Mass]] = []
    pure = {purity.alkali: purity.typical for purity in batch.grams.lye.purities} if batch.grams.lye else {}
    for w in batch.grams.weighed:
        if w.line.strength is None:
            continue
        if batch.recipe.lye and batch.recipe.lye.bought:
            amounts.append((w.line.ingredient.solution(w.line.strength), w.mass))
        else:
            solid = w.mass * w.line.strength / pure.get(w.line.ingredient.name, Fraction(1))
            amounts += _cards(studio, ((w.line.ingredient.name, solid), ("water", w.mass - solid)))
    return amounts


def _cards(studio: Studio, amounts: Iterable[tuple[str, Mass]]) -> Amounts:
    """Look up the cards of amounts by name."""
    cards = ((studio.ingredient(name), mass) for name, mass in amounts)
    return [(card, mass) for card, mass in cards if card is not None]


def _items(studio: Studio, plan: ClassPlan) -> dict[Key, _Item]:
    containers = sum(one.in_all for made in plan.made for one in made.containers)
    found: dict[Key, _Item] = {}
    for supply in studio.supplies:
        use = supply.use
        if use is None or (use.classes and plan.studio_class.key not in {name.text for name in use.classes}):
            continue
        in_all = use.each_student * plan.students + use.each_group * plan.groups + use.each_class + use.each_container * containers
        found.setdefault((supply.kind, supply.name.key), _Item(supply.name.text, in_all, use.each_container))
    return found
