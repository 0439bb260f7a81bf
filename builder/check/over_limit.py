"""Ingredients and doses against the table of usage limits, as weighed.

over-legal-limit, over-usual-limit, limit-not-proven, ingredient-banned, scent-over-usual.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.limit_words import DEFER, limit_in_words, percent, what_counts, where_it_stands, who_says, why_open
from builder.check.places import place_of_counted
from builder.model.batch_sheet import TowardsLimit
from builder.model.limit import ALUMINIUM, Limit, LimitWeight

WORTH_ASKING = (LimitWeight.LAW, LimitWeight.OPINION)


def find_amounts_over_limits(batch: Batch) -> Iterator[BatchFinding]:
    """Compare each batch, with the students' choices at their worst, with every limit that is meant for its kind of product.

    The weightiest comes first; a lighter one that says the same of the same ingredients is not repeated. Of the totals of scent the
    strictest is said.
    """
    said: set[tuple[object, ...]] = set()
    for towards in sorted(batch.sheet.towards, key=_order):
        limit = towards.limit
        of_scent = limit.is_total_of_scent
        key = (of_scent,) if of_scent else (limit.most, frozenset(one.card.key for one in towards.counted))
        if key not in said:
            found = list(_judge(batch, towards))
            said |= {key} if found else set()
            yield from found


def _order(towards: TowardsLimit) -> tuple[bool, int, Fraction]:
    limit = towards.limit
    strictest_first = (limit.most or Fraction(0)) if limit.is_total_of_scent else Fraction(0)
    return not towards.own_law, list(LimitWeight).index(limit.weight), strictest_first


def _who(limit: Limit, region: str) -> str:
    """Say what stands behind a limit, and of aluminium how its share is known and that the law leaves some colours out."""
    if limit.counted_as != ALUMINIUM:
        return who_says(limit, region)
    return (
        f"{who_says(limit, region)}. The share of aluminium is worked out from an ideal formula, and the supplier's analysis decides; some "
        "colours of Annex IV are exempt, and the text says from which day it applies"
    )


def _judge(batch: Batch, towards: TowardsLimit) -> Iterator[BatchFinding]:
    limit, counted, least, most = towards.limit, towards.counted, towards.least, towards.most
    assert limit.most is not None
    if limit.parts and len({one.card.key for one in counted}) < 2:
        return  # What one ingredient takes by itself, its own limit says.
    what, who, own, where = what_counts(counted), _who(limit, batch.region), towards.own_law, where_it_stands(limit)
    place = place_of_counted(counted[0], batch.sheet.recipe)
    verb = "passes" if len({one.card.key for one in counted}) == 1 else "together pass"
    if limit.most == 0 and not limit.is_total_of_scent:
        wrong = f"{what} falls under a ban ({where}). This is {who}."
        remedy = f"Use another ingredient. {DEFER}"
        if own:
            yield batch.stop("ingredient-banned", place, wrong, remedy, "")
        else:
            yield batch.caution("ingredient-banned", place, wrong, remedy, "")
        return
    passed = f"{limit_in_words(limit)} ({where})."
    case = f"{batch.weighed_in(towards.unit)} ({percent(least)})"
    if limit.is_total_of_scent and least > limit.most:
        wrong = f"The scent comes to more than is usual, with what students may add: {passed} This is {who}."
        less = "Use less" if limit.most else "Leave it out"
        remedy = f"{less}, or accept this with your supplier's document for the scent: the strictest limit of its parts governs. {DEFER}"
        yield batch.caution("scent-over-usual", place, wrong, remedy, case)
    elif least > limit.most and own:
        remedy = f"Use less of it. {DEFER}"
        yield batch.stop("over-legal-limit", place, f"{what} {verb} a legal limit: {passed} This is {who}.", remedy, case)
    elif least > limit.most:
        remedy = f"Use less of it, or accept this with a reason. {DEFER}"
        yield batch.caution("over-usual-limit", place, f"{what} {verb} a limit: {passed} This is {who}.", remedy, case)
    elif most > limit.most and limit.weight in WORTH_ASKING:
        yield batch.caution(
            "limit-not-proven",
            place,
            f"{what} may pass a limit: {passed} This is {who}. {why_open(counted)}",
            f"Ask your supplier for the share, or use so little that even the most it can be is within the limit. {DEFER}",
            f"{batch.weighed_in(towards.unit)} (from {percent(least)} to {percent(most)})",
        )
