"""How much of a batch counts towards a limit: at least, and at most.

Students add what counts most of what they may: of each choice the one option, or the mix of options, that is worst.

Decided: aluminium is counted from the ideal formula of a clay. Why: suppliers seldom state it; the finding says so.

Decided: furocoumarins count where a supplier states them; otherwise the limits on whole oils and their combination rule hold. Why:
published spans differ a hundredfold, and nearly every pressed oil would be suspect.

Decided: a limit that names the least pH of an acid counts the acid, and none where lye or bicarbonate has made a salt of all of it. Why:
it is there for the acid that peels.

Decided: a ban by opinion or custom means the ingredient itself, a ban by law what it holds too. Why: lavender holds traces of camphor.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from builder.model.dose.dose import Dose
from builder.model.dose.limit import CUSTOM, Limit, LimitRole, LimitRules, PercentOf, is_own_law
from builder.model.dose.towards import Counted, TowardsLimit
from builder.model.recipe.column import Column
from builder.model.recipe.filling import Filling
from builder.model.recipe.ingredient import SCENTS, Cards, Ingredient
from builder.model.recipe.quantity import Mass
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.reckon.dose.limits import limits_for, speaking_of
from builder.reckon.dose.worst_mix import worst_mix
from builder.reckon.label.share_counting import Factors, share_counting
from builder.rules.fizz import acid_left
from builder.words.fold import fold

ASKING_ROLES = (LimitRole.ACID, LimitRole.LABELLING)


def reckon_towards(batch: WorkedBatch, filling: Filling, cards: Cards, rules: LimitRules) -> tuple[TowardsLimit, ...]:
    """Return every limit that something of a filled batch counts towards, choices included: by the first weighings that pass it."""
    factors, meant = factors_in(rules.limits), _as_meant(batch.grams)
    found, lye = [], batch.grams.lye
    spent = acid_left(batch.lines) == 0 if lye is None else lye.asked < 1
    for limit in limits_for(batch.product, rules, batch.cards_in(cards)):
        if spent and limit.role is LimitRole.ACID and limit.lowest_ph is not None:
            continue
        own = is_own_law(limit, rules.region, rules.limits)
        # Rounding alone is no reason to call a sound recipe unusual, so that custom is judged by what the recipe means.
        columns = (meant,) if limit.weight in CUSTOM else batch.columns
        counted = [TowardsLimit(limit, own, count_towards(limit, filling, one, cards, factors), one.unit) for one in columns]
        found.append(_first_that_passes(limit, counted))
    return tuple(one for one in found if one.counted)


def _as_meant(column: Column) -> Column:
    """Return a column as if each line could be weighed exactly."""
    weighed = tuple(replace(one, mass=one.line.exact) for one in column.weighed)
    more = [(one.line.exact - one.mass, one.line.ingredient.counts_as.is_oil) for one in column.weighed]
    total = sum((mass for mass, _ in more), column.total)
    return replace(column, weighed=weighed, total=total, oils=sum((mass for mass, is_oil in more if is_oil), column.oils))


def _first_that_passes(limit: Limit, found: Sequence[TowardsLimit]) -> TowardsLimit:
    most = limit.most or Fraction(0)
    return next((one for one in found if one.least > most), next((one for one in found if one.most > most), found[0]))


def reckon_asked(batch: WorkedBatch, filling: Filling, cards: Cards, rules: LimitRules) -> tuple[TowardsLimit, ...]:
    """Return the rows, whether they set a maximum or not, that ask for a pH or a label and that something of a batch counts towards."""
    factors, words = factors_in(rules.limits), frozenset().union(*(card.speaks_of for card in batch.cards_in(cards)))
    rows = [
        one
        for one in speaking_of(rules.limits, words)
        if one.role in ASKING_ROLES and not words.isdisjoint(one.speaks_of) and not one.narrower and one.is_for(batch.product)
    ]
    found = ((row, count_towards(row, filling, batch.grams, cards, factors)) for row in rows)
    return tuple(TowardsLimit(row, is_own_law(row, rules.region, rules.limits), counted) for row, counted in found if counted)


def scents_without_limit(batch: WorkedBatch, cards: Cards, rules: LimitRules) -> tuple[Ingredient, ...]:
    """Return the scents, those to choose from included, of which no limit for this use speaks but those on all scent together."""
    factors, scents = factors_in(rules.limits), [card for card in batch.cards_in(cards) if card.declared_as in SCENTS]
    limits = [one for one in limits_for(batch.product, rules, scents) if not one.is_total_of_scent] if scents else []
    return tuple(card for card in scents if not any(share_counting(card, limit, factors)[1] for limit in limits))


@remembered(8)
def factors_in(limits: Sequence[Limit]) -> Factors:
    """Return what one part of an acid weighs as its salt, by the names of both, from the rows that restate another."""
    return {(name, fold(limit.counted_as)): limit.factor for limit in limits if limit.factor for name in limit.names}


def count_towards(limit: Limit, filling: Filling, column: Column, cards: Cards, factors: Factors) -> tuple[Counted, ...]:
    """Return what each ingredient of a batch as weighed in one unit, and of the students' choices, adds towards a limit; the most first."""
    found = list(count_batch(limit, column, factors))
    basis, added = basis_of(limit, column), Fraction(0)
    for dose in filling.doses if basis else ():
        for card, mass in _worst_options(dose, limit, cards, factors):
            least, most = share_counting(card, limit, factors)
            share = mass / filling.portions.fill
            added += share
            found.append(Counted(card, None, dose.what, share * least / basis, share * most / basis))
    # What is added makes the product larger, but not what it has of oils.
    whole = 1 + added if limit.percent_of is PercentOf.PRODUCT else Fraction(1)
    counted = (Counted(one.card, one.line, one.what, one.least / whole, one.most / whole) for one in found)
    return tuple(sorted(counted, key=lambda one: -one.most))


def count_batch(limit: Limit, column: Column, factors: Factors) -> tuple[Counted, ...]:
    """Return what each ingredient of a batch adds towards a limit before students add anything."""
    basis = basis_of(limit, column)
    if not basis:
        return ()
    found = []
    for weighed in column.weighed:
        share = weighed.mass / column.total * (weighed.line.strength or 1) / basis
        least, most = share_counting(weighed.line.ingredient, limit, factors)
        if share and most:
            found.append(Counted(weighed.line.ingredient, weighed.line, "", share * least, share * most))
    return tuple(found)


def basis_of(limit: Limit, column: Column) -> Fraction:
    """Return the share of a batch of which a limit is a percentage: all of it, or its oils; nothing of an empty one."""
    if not column.total:
        return Fraction(0)
    return column.oils / column.total if limit.percent_of is PercentOf.OILS else Fraction(1)


def _worst_options(dose: Dose, limit: Limit, cards: Cards, factors: Factors) -> list[tuple[Ingredient, Mass]]:
    """Return what of a choice counts most towards a limit, by what is certain and, where nothing is, by what may be."""
    options = {one.option: cards[fold(one.option)] for one in dose.each}
    counting = {name: share_counting(card, limit, factors) for name, card in options.items()}
    diluted = (limit.most or Fraction(0)) if limit.percent_of is PercentOf.PRODUCT else Fraction(0)
    for end in (0, 1):
        takes = {name: max(shares[end] - diluted, Fraction(0)) for name, shares in counting.items()}
        if any(takes.values()):
            return [(options[name], mass) for name, mass in worst_mix(dose, takes).items()]
    return []
