"""How much of a batch counts towards a limit: at least, and at most.

A card that declares one name counts as weighed. A blend declares its parts in descending order without shares: what some of its k parts
can come to together lies between the least and the most that they are of its first one, two, ... k parts in equal shares, so that the i-th
alone is at most 1/i. Of a ready-made base only what is certain counts: whoever sells it answers for what it is made of.
Students add at most the printed dose of each choice, of the option that counts most.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.check.places import place_of_line
from builder.model.batch_sheet import BatchSheet, Dose
from builder.model.ingredient import CountsAs, DeclaredAs, Ingredient
from builder.model.limit import Limit, PercentOf, blend_of, names_of
from builder.model.place import Place, fold

ALUMINIUM = "aluminium"
SCENTS = (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR)
Factors = Mapping[tuple[str, str], Fraction]
Cards = Mapping[str, Ingredient]


@dataclass(frozen=True)
class Counted:
    """What one card, with its place in the recipe, adds towards a limit, as shares of the product or of its oils."""

    card: Ingredient
    place: Place
    least: Fraction
    most: Fraction


def factors_in(limits: Sequence[Limit]) -> Factors:
    """Give what one part of an acid weighs as its salt, by the names of both, from the rows that restate another."""
    return {(name, fold(limit.counted_as)): limit.factor for limit in limits if limit.factor for name in limit.names}


def count_towards(limit: Limit, sheet: BatchSheet, cards: Cards, factors: Factors) -> tuple[Counted, ...]:
    """Give what each ingredient of a batch in grams, and of the students' choices, adds towards a limit; the most first."""
    column = sheet.grams
    if not column.total or (limit.percent_of is PercentOf.OILS and not column.oils):
        return ()
    found = []
    for weighed in column.weighed:
        share = weighed.mass / column.total * (weighed.line.strength or 1)
        least, most = counts_of(weighed.line.ingredient, limit, factors)
        if share and most:
            found.append((weighed.line.ingredient, place_of_line(weighed.line, sheet.recipe), share * least, share * most))
    added = Fraction(0)
    for dose in sheet.doses:
        share = dose.at_most / sheet.portions.fill
        best = max(_options(dose, limit, cards, factors), key=lambda option: option[2], default=None)
        if share and best:
            card, least, most = best
            added += share
            place = next(choice.place for choice in sheet.recipe.choices if choice.what == dose.what)
            found.append((card, place, share * least, share * most))
    whole = column.oils / column.total if limit.percent_of is PercentOf.OILS else 1 + added
    counted = [Counted(card, place, least / whole, most / whole) for card, place, least, most in found]
    return tuple(sorted(counted, key=lambda one: -one.most))


def _options(dose: Dose, limit: Limit, cards: Cards, factors: Factors) -> Iterator[tuple[Ingredient, Fraction, Fraction]]:
    for option in dose.options:
        if option is not None:
            card = cards[fold(option)]
            least, most = counts_of(card, limit, factors)
            if most:
                yield card, least, most


def counts_of(card: Ingredient, limit: Limit, factors: Factors) -> tuple[Fraction, Fraction]:
    """Give the share of a card that counts towards a limit, at least and at most."""
    nothing, whole = (Fraction(0), Fraction(0)), (Fraction(1), Fraction(1))
    if limit.counted_as == ALUMINIUM and not limit.names:
        figure = card.figure(ALUMINIUM)
        return (figure.low / 100, figure.highest / 100) if figure else nothing
    if limit.is_total_of_scent:
        return whole if card.declared_as in SCENTS else nothing
    names = names_of(card)
    if not names or (limit.hazard and limit.hazard not in card.hazards):
        return nothing
    if len(names) > 1 and blend_of(names) in limit.names:
        return whole
    parts = [_of_name(name, limit, factors) for name in names]
    least = min(sum((low for low, _ in parts[:first]), Fraction(0)) / first for first in range(1, len(parts) + 1))
    most = max(sum((high for _, high in parts[:first]), Fraction(0)) / first for first in range(1, len(parts) + 1))
    return (least, least) if card.counts_as is CountsAs.BASE and limit.most else (least, most)


def _of_name(name: str, limit: Limit, factors: Factors) -> tuple[Fraction, Fraction]:
    """Give what one part of a pure name counts: a salt whose factor the table does not have counts as at most itself."""
    if name not in limit.names:
        return Fraction(0), Fraction(0)
    counted_as = fold(limit.counted_as)
    if not counted_as or counted_as == name:
        return Fraction(1), Fraction(1)
    factor = factors.get((name, counted_as))
    return (1 / factor, 1 / factor) if factor else (Fraction(0), Fraction(1))
