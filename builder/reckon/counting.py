"""How much of a batch counts towards a limit: at least, and at most.

A card that declares one name counts as weighed. A blend declares its parts in descending order, with its supplier's shares of them where
the card has those: what some of its parts come to together lies between the least and the most that the list and the shares allow (without
shares the i-th part alone is at most 1/i). Of a ready-made base only what is certain counts, and nothing towards what is merely usual:
whoever sells it answers for what it is made of.
Students add what counts most of what they may: of each choice the one option, or the mix of options, that is worst.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from builder.model.batch_sheet import BatchSheet, Column, Counted, TowardsLimit
from builder.model.dose import Dose
from builder.model.ingredient import CountsAs, DeclaredAs, Ingredient
from builder.model.limit import ALUMINIUM, Limit, LimitWeight, PercentOf, Rules, blend_of, is_own_law, names_of
from builder.model.place import fold
from builder.model.quantity import Mass
from builder.reckon.limits import limits_for
from builder.reckon.shares import shares_at_most, weigh
from builder.reckon.worst_mix import worst_mix

ASKING_ROLES = ("acid", "labelling")
SCENTS = (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR)
Factors = Mapping[tuple[str, str], Fraction]
Cards = Mapping[str, Ingredient]
_NOTHING, _WHOLE = (Fraction(0), Fraction(0)), (Fraction(1), Fraction(1))


def reckon_towards(sheet: BatchSheet, cards: Cards, rules: Rules) -> tuple[TowardsLimit, ...]:
    """Give every limit that something of a batch, or of the students' choices, counts towards: by the first weighings that pass it."""
    factors = factors_in(rules.limits)
    found = []
    for limit in limits_for(sheet.product, rules):
        own = is_own_law(limit, rules.region, rules.limits)
        # Rounding alone is no reason to call a sound recipe unusual, so that practice is judged in grams.
        columns = (sheet.grams,) if limit.weight is LimitWeight.PRACTICE else sheet.columns
        counted = [TowardsLimit(limit, own, count_towards(limit, sheet, one, cards, factors), one.unit) for one in columns]
        found.append(_first_that_passes(limit, counted))
    return tuple(one for one in found if one.counted)


def _first_that_passes(limit: Limit, found: Sequence[TowardsLimit]) -> TowardsLimit:
    most = limit.most or Fraction(0)
    return next((one for one in found if one.least > most), next((one for one in found if one.most > most), found[0]))


def reckon_asked(sheet: BatchSheet, cards: Cards, rules: Rules) -> tuple[TowardsLimit, ...]:
    """Give the rows, whether they set a maximum or not, that ask for a pH or a label and that something of a batch counts towards."""
    factors = factors_in(rules.limits)
    rows = [one for one in rules.limits if one.role in ASKING_ROLES and not one.narrower and one.is_for(sheet.product)]
    found = ((row, count_towards(row, sheet, sheet.grams, cards, factors)) for row in rows)
    return tuple(TowardsLimit(row, is_own_law(row, rules.region, rules.limits), counted) for row, counted in found if counted)


def factors_in(limits: Sequence[Limit]) -> Factors:
    """Give what one part of an acid weighs as its salt, by the names of both, from the rows that restate another."""
    return {(name, fold(limit.counted_as)): limit.factor for limit in limits if limit.factor for name in limit.names}


def count_towards(limit: Limit, sheet: BatchSheet, column: Column, cards: Cards, factors: Factors) -> tuple[Counted, ...]:
    """Give what each ingredient of a batch as weighed in one unit, and of the students' choices, adds towards a limit; the most first."""
    found = list(count_batch(limit, column, factors))
    basis, added = basis_of(limit, column), Fraction(0)
    for dose in sheet.doses if basis else ():
        for card, mass in _worst_options(dose, limit, cards, factors):
            least, most = share_counting(card, limit, factors)
            share = mass / sheet.portions.fill
            added += share
            found.append(Counted(card, None, dose.what, share * least / basis, share * most / basis))
    # What is added makes the product larger, but not what it has of oils.
    whole = 1 + added if limit.percent_of is PercentOf.PRODUCT else Fraction(1)
    counted = (Counted(one.card, one.line, one.what, one.least / whole, one.most / whole) for one in found)
    return tuple(sorted(counted, key=lambda one: -one.most))


def count_batch(limit: Limit, column: Column, factors: Factors) -> tuple[Counted, ...]:
    """Give what each ingredient of a batch adds towards a limit before students add anything."""
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
    """Give the share of a batch of which a limit is a percentage: all of it, or its oils; nothing of an empty one."""
    if not column.total:
        return Fraction(0)
    return column.oils / column.total if limit.percent_of is PercentOf.OILS else Fraction(1)


def _worst_options(dose: Dose, limit: Limit, cards: Cards, factors: Factors) -> list[tuple[Ingredient, Mass]]:
    """Give what of a choice counts most towards a limit, by what is certain and, where nothing is, by what may be."""
    options = {one.option: cards[fold(one.option)] for one in dose.each}
    counting = {name: share_counting(card, limit, factors) for name, card in options.items()}
    diluted = (limit.most or Fraction(0)) if limit.percent_of is PercentOf.PRODUCT else Fraction(0)
    for end in (0, 1):
        takes = {name: max(shares[end] - diluted, Fraction(0)) for name, shares in counting.items()}
        if any(takes.values()):
            return [(options[name], mass) for name, mass in worst_mix(dose, takes).items()]
    return []


def share_counting(card: Ingredient, limit: Limit, factors: Factors) -> tuple[Fraction, Fraction]:
    """Give the share of a card that counts towards a limit, at least and at most."""
    if limit.parts:
        parts = [(part, share_counting(card, part, factors)) for part in limit.parts]
        least, most = (sum((shares[end] / (part.most or 1) for part, shares in parts), Fraction(0)) for end in (0, 1))
        return least, most
    if limit.counted_as == ALUMINIUM and not limit.names:
        figure = card.figure(ALUMINIUM)
        return (figure.low / 100, figure.highest / 100) if figure else _NOTHING
    if limit.is_total_of_scent:
        return _WHOLE if card.declared_as in SCENTS else _NOTHING
    if limit.role == "colour":
        return _WHOLE if limit.names[0] in {fold(name).removesuffix(" lake") for name in card.us_colour_names} else _NOTHING
    names = names_of(card)
    if not names or (limit.hazard and limit.hazard not in card.hazards):
        return _NOTHING
    if len(names) > 1 and blend_of(names) in limit.names:
        return _WHOLE
    lows, highs = zip(*(_of_name(name, limit, factors) for name in names), strict=True)
    least, most = _least_of(card, lows), _most_of(card, highs)
    if card.counts_as is CountsAs.BASE and limit.most:
        return _NOTHING if limit.weight is LimitWeight.PRACTICE else (least, least)
    return least, most


def _most_of(card: Ingredient, worth: Sequence[Fraction]) -> Fraction:
    """Give the most that the parts of a card can come to together, where one part of each is worth so much."""
    cells = card.label_name.cells if card.label_name else ()
    return max(weigh(shares_at_most(cell, worth), worth) for cell in cells) if any(worth) else Fraction(0)


def _least_of(card: Ingredient, worth: Sequence[Fraction]) -> Fraction:
    return -_most_of(card, [-one for one in worth])


def _of_name(name: str, limit: Limit, factors: Factors) -> tuple[Fraction, Fraction]:
    """Give what one part of a pure name counts: a salt whose factor the table does not have counts as at most itself."""
    if name not in limit.names:
        return _NOTHING
    counted_as = fold(limit.counted_as)
    if not counted_as or counted_as == name:
        return _WHOLE
    factor = factors.get((name, counted_as))
    return (1 / factor, 1 / factor) if factor else (Fraction(0), Fraction(1))
