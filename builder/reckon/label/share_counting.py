"""The share of an ingredient that counts towards a limit: at least, and at most.

A card that declares one name counts as weighed. A blend declares its parts in descending order, with its supplier's shares of them where
the card has those: what some of its parts come to together lies between the least and the most that the list and the shares allow (without
shares the i-th part alone is at most 1/i). A part that does not have a name itself counts by what it holds of it, from the low to the high
end of what is published, or as its supplier states. Of a ready-made base only what is certain counts, and nothing towards what is merely
usual: whoever sells it answers for what it is made of.
"""

from collections.abc import Mapping
from fractions import Fraction

from builder.model.dose.limit import CUSTOM, Limit, LimitRole, names_of
from builder.model.label.declaration import Range
from builder.model.recipe.essential_oil import Held
from builder.model.recipe.ingredient import ALUMINIUM, OIL, CountsAs, Ingredient, blend_of
from builder.model.remembered import remembered
from builder.reckon.label.shares import least_of, most_of
from builder.words.fold import fold

Factors = Mapping[tuple[str, str], Fraction]
_NOTHING, _WHOLE = (Fraction(0), Fraction(0)), (Fraction(1), Fraction(1))


@remembered(8192)
def share_counting(card: Ingredient, limit: Limit, factors: Factors) -> Range:
    """Return the share of a card that counts towards a limit, at least and at most."""
    if card.speaks_of.isdisjoint(limit.speaks_of) or card.key in limit.besides:
        return _NOTHING
    if limit.parts:
        parts = [(part, share_counting(card, part, factors)) for part in limit.parts]
        least, most = (sum((shares[end] / (part.most or 1) for part, shares in parts), Fraction(0)) for end in (0, 1))
        return least, most
    if limit.counted_as == ALUMINIUM and not limit.names:
        figure = card.figure(ALUMINIUM)
        return (figure.low / 100, figure.highest / 100) if figure else _NOTHING
    if limit.is_total_of_scent or limit.role in (LimitRole.COLOUR, LimitRole.CERTIFICATE):
        return _WHOLE
    if limit.hazard and not _may_bring(card, limit.hazard):
        return _NOTHING
    least, most = _of_names(card, limit, factors)
    if card.counts_as is CountsAs.BASE and limit.most:
        return _NOTHING if limit.weight in CUSTOM else (least, least)
    return least, most


def _may_bring(card: Ingredient, hazard: str) -> bool:
    """Tell whether a card brings a hazard; of one that does not say which oil it is, its own names decide."""
    return hazard in card.hazards or not card.oil


def _of_names(card: Ingredient, limit: Limit, factors: Factors) -> Range:
    names = names_of(card)
    if len(names) > 1 and blend_of(names) in limit.names:
        return _WHOLE
    shares = [_of_part(name, number, card, limit, factors) for number, name in enumerate(names)]
    polytopes = card.label_name.polytopes if card.label_name else ()
    least, most = least_of(polytopes, [low for low, _ in shares]), most_of(polytopes, [high for _, high in shares])
    stated = [card.stated[name] for name in limit.names if name in card.stated and name not in names]
    low, high = (sum((one.low, one.high)[end] for one in stated) for end in (0, 1))
    return min(least + low, Fraction(1)), min(most + high, Fraction(1))


def _of_part(name: str, number: int, card: Ingredient, limit: Limit, factors: Factors) -> Range:
    """Return what one part counts: a salt whose factor the table does not have counts as at most itself."""
    if name not in limit.names:
        if card.oils and any(OIL + fold(oil) in limit.names for oil in card.oils[number]):
            return _WHOLE
        holds: Mapping[str, Held] = card.holds[number] if card.holds else {}
        held = [holds[one] for one in limit.names if one in holds and one not in card.stated and limit.counts_what_is_held]
        return sum((one.low for one in held), Fraction(0)), min(sum((one.high for one in held), Fraction(0)), Fraction(1))
    counted_as = fold(limit.counted_as)
    if not counted_as or counted_as == name:
        return _WHOLE
    factor = factors.get((name, counted_as))
    return (1 / factor, 1 / factor) if factor else (Fraction(0), Fraction(1))
