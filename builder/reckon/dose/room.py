"""The room that a batch leaves to its students under each limit, and what one gram of each option takes of it.

What students add makes the product larger: a portion of `fill` grams that holds the share B of what counts, with x grams of options of
which the share c counts, is within the limit L where (B fill + sum c x) / (fill + sum x) <= L, that is sum (c - L) x <= (L - B) fill. An
option of which less counts than the limit takes nothing, since a student may leave it out. Oils are not diluted so: of them it is
sum c x <= (L - B) oils.

Decided: a limit lowers the most of an option; it is a finding only where nothing is left, or where the batch itself passes it. Why: what
is printed is then within every limit, whatever is mixed.

Decided: accepting `over-usual-limit` or `scent-over-usual` in a recipe lets such a limit, where it is no law of the region, lower
nothing. Why: the supplier's document may say more than the table; law stays law.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.model.dose.dose import Lowered
from builder.model.dose.limit import Limit, LimitRules, LimitWeight, PercentOf, held_of, is_own_law
from builder.model.recipe.column import Column
from builder.model.recipe.ingredient import Cards
from builder.model.recipe.quantity import Mass
from builder.model.recipe.worked_batch import WorkedBatch
from builder.reckon.dose.counting import basis_of, count_batch, factors_in
from builder.reckon.dose.limits import limits_for
from builder.reckon.label.share_counting import share_counting

MAY_BIND = (LimitWeight.LAW, LimitWeight.OPINION, LimitWeight.STANDARD)


@dataclass(frozen=True)
class Room:
    """What one limit leaves: `room` in grams of what counts, `takes` by option what one gram of it takes. `holds`: in the batch already."""

    lowered: Lowered
    room: Fraction
    takes: Mapping[str, Fraction]
    holds: Fraction


def rooms_under_limits(batch: WorkedBatch, portion: Mass, column: Column, cards: Cards, rules: LimitRules) -> Iterator[Room]:
    """Yield the room in a portion, of a batch as weighed in one unit, under each limit that some option takes of.

    A ban is no question of how much. A limit that is no law of the region does not bind where the recipe accepts that it is passed. What a
    blend or an oil may hold binds like what is certain where law, an opinion or a standard says so and the batch itself is within; what an
    oil may hold does not for the sake of the law of another region.
    """
    recipe, factors = batch.recipe, factors_in(rules.limits)
    names = dict.fromkeys(option for choice in recipe.choices for option in choice.options if option is not None)
    options = {cards[name.key].name: cards[name.key] for name in names}
    for limit in limits_for(batch.product, rules, options.values()):
        counting = {name: share_counting(card, limit, factors) for name, card in options.items()}
        basis = basis_of(limit, column)
        if limit.most is None or _is_ban(limit) or not basis or not any(most for _, most in counting.values()):
            continue
        own = is_own_law(limit, rules.region, rules.limits)
        if not own and _passing(limit) in recipe.accepts:
            continue
        held = count_batch(limit, column, factors)
        by_holding = any(held_of(card, limit) for card in options.values())
        diluted = limit.most if limit.percent_of is PercentOf.PRODUCT else Fraction(0)
        for end, holds in enumerate((sum(one.least for one in held), sum(one.most for one in held))):
            takes = {name: max(shares[end] - diluted, Fraction(0)) for name, shares in counting.items()}
            proven, left = end == 0, (limit.most - holds) * basis
            asked = limit.weight in MAY_BIND and (own or limit.weight is not LimitWeight.LAW or not by_holding)
            may_bind = asked and left > 0 and "limit-not-proven" not in recipe.accepts
            if (proven or may_bind) and any(takes.values()):
                room = max(left, Fraction(0)) * portion.grams
                yield Room(Lowered(limit, own, proven, passed_already=left < 0), room, takes, Fraction(holds))


def _is_ban(limit: Limit) -> bool:
    """Tell whether it bans something by name; of no scent at all, as for small children, there is simply no room."""
    return limit.most == 0 and not limit.is_total_of_scent


def _passing(limit: Limit) -> str:
    """Return the name of the finding that a limit is passed."""
    return "scent-over-usual" if limit.is_total_of_scent else "over-usual-limit"
