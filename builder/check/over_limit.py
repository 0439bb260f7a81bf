"""Ingredients and doses against the table of usage limits, as weighed.

over-legal-limit, over-usual-limit, limit-not-proven, ingredient-banned, scent-over-usual.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.counted import ALUMINIUM, Counted, count_towards, factors_in
from builder.check.limit_words import DEFER, limit_in_words, percent, what_counts, where_it_stands, who_says, why_open
from builder.model.limit import Limit, LimitWeight

LIST_ROLES = ("colour",)  # What lists of colours say is judged by `colour_not_allowed.py`.
WORTH_ASKING = (LimitWeight.LAW, LimitWeight.OPINION)


def find_amounts_over_limits(batch: Batch) -> Iterator[BatchFinding]:
    """Compare each batch, with the students' choices at their most, with every limit that is meant for its kind of product.

    The weightiest comes first; a lighter one that says the same of the same ingredients is not repeated.
    """
    factors, cards = factors_in(batch.limits), batch.cards
    said: set[tuple[object, ...]] = set()
    for limit in sorted(batch.limits, key=lambda limit: _order(limit, batch)):
        if not limit.is_judged or limit.role in LIST_ROLES or not limit.is_for(batch.sheet.product):
            continue
        if limit.is_about_use and not limit.is_for_use(batch.sheet.recipe.used_on, batch.youngest):
            continue
        counted = count_towards(limit, batch.sheet, cards, factors)
        key = (limit.most, frozenset(one.card.key for one in counted))
        if counted and key not in said:
            found = list(_judge(batch, limit, counted))
            said |= {key} if found else set()
            yield from found


def is_own_law(limit: Limit, region: str, limits: Sequence[Limit]) -> bool:
    """Say whether a limit is law in a region; the UK has kept the EU's, but for what a row of its own says otherwise."""
    if limit.weight is not LimitWeight.LAW:
        return False
    if (region, limit.region) == ("UK", "EU"):
        return not any(other.region == "UK" and set(other.names) & set(limit.names) for other in limits)
    return limit.region in (region, "any")


def _order(limit: Limit, batch: Batch) -> tuple[bool, int]:
    return not is_own_law(limit, batch.region, batch.limits), list(LimitWeight).index(limit.weight)


def _who(limit: Limit, region: str) -> str:
    """Say what stands behind a limit, and of aluminium how its share is known and that the law leaves some colours out."""
    if limit.counted_as != ALUMINIUM:
        return who_says(limit, region)
    return (
        f"{who_says(limit, region)}. The share of aluminium is worked out from an ideal formula, and the supplier's analysis decides; some "
        "colours of Annex IV are exempt, and the text says from which day it applies"
    )


def _judge(batch: Batch, limit: Limit, counted: Sequence[Counted]) -> Iterator[BatchFinding]:
    assert limit.most is not None
    least, most = sum((one.least for one in counted), Fraction(0)), sum((one.most for one in counted), Fraction(0))
    place, what, who = counted[0].place, what_counts(counted), _who(limit, batch.region)
    own, where = is_own_law(limit, batch.region, batch.limits), where_it_stands(limit)
    if limit.most == 0:
        wrong = f"{what} falls under a ban ({where}). This is {who}."
        remedy = f"Use another ingredient. {DEFER}"
        if own:
            yield batch.stop("ingredient-banned", place, wrong, remedy, "")
        else:
            yield batch.caution("ingredient-banned", place, wrong, remedy, "")
        return
    passed = f"{limit_in_words(limit)} ({where})."
    case = f"{batch.name} ({percent(least)})"
    if limit.is_total_of_scent and least > limit.most:
        wrong = f"The scent comes to more than is usual, with what students may add: {passed} This is {who}."
        remedy = f"Use less, or accept this with your supplier's document for the scent: the strictest limit of its parts governs. {DEFER}"
        yield batch.caution("scent-over-usual", place, wrong, remedy, case)
    elif least > limit.most and own:
        remedy = f"Use less of it. {DEFER}"
        yield batch.stop("over-legal-limit", place, f"{what} passes a legal limit: {passed} This is {who}.", remedy, case)
    elif least > limit.most:
        remedy = f"Use less of it, or accept this with a reason. {DEFER}"
        yield batch.caution("over-usual-limit", place, f"{what} passes a limit: {passed} This is {who}.", remedy, case)
    elif most > limit.most and limit.weight in WORTH_ASKING:
        yield batch.caution(
            "limit-not-proven",
            place,
            f"{what} may pass a limit: {passed} This is {who}. {why_open(counted)}",
            f"Ask your supplier for the share, or use so little that even the most it can be is within the limit. {DEFER}",
            f"{batch.name} (from {percent(least)} to {percent(most)})",
        )
