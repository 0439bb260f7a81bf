"""Ingredients and doses against the table of usage limits, as weighed.

Decided: rows of limits for children or for a part of the body are judged where the recipe (`used on`, `youngest user`) or the class
(`youngest`) says so. Why: whoever takes a class uses what they made.

Decided: constituents count from the low to the high end of all works: over a law at the low end stops, at the high end asks for the
certificate and lowers the dose; what an oil may hold is not asked for the law of another region. Why: the bottle is not the book; usual
recipes stay silent.

Decided: of several limits on the same ingredients the one passed most often over is said; handbooks and practice are judged by exact
amounts. Why: the strictest row wins, and a scale's division makes no recipe unusual.

Decided: who should not use an ingredient stands in `limits_by_people.csv`, beside the collections of limits; custom says "should not be
used", and only law, opinion and standard stop for children. Why: a card's words reach nobody; a custom is no ban.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.dose.limit_words import (
    DEFER,
    free_of,
    holds_it,
    limit_in_words,
    span_in_words,
    what_counts,
    what_is_held,
    where_it_stands,
    who_says,
    why_open,
)
from builder.check.places import place_of_counted
from builder.check.rule import BATCH, rule_on
from builder.model.dose.limit import CUSTOM, Limit, LimitWeight
from builder.model.dose.towards import TowardsLimit
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.label.labelling import Labelling
from builder.model.recipe.ingredient import ALUMINIUM

# For what merely may pass a limit a supplier is asked where more than custom is behind it.
WORTH_ASKING = (LimitWeight.LAW, LimitWeight.OPINION, LimitWeight.STANDARD)
# Where children use the product these hold it back.
WEIGHTY_FOR_CHILDREN = (LimitWeight.OPINION, LimitWeight.STANDARD)


# A ban is stricter than any figure.
_BEYOND = Fraction(10**9)


@dataclass(frozen=True)
class _Judged:
    """What one limit comes to: the cards that count, how many times the limit is reached, and the finding."""

    cards: frozenset[str]
    times: Fraction
    found: BatchFinding

    @property
    def key(self) -> tuple[object, ...]:
        """Return what is said once, by the strictest limit: all scent, or one state of the same ingredients."""
        name = self.found.finding.name
        return (name,) if name == "scent-over-usual" else (name, self.cards)


@rule_on(
    BATCH,
    FindingKind("limit-not-proven", CAUTION, "What is known of an ingredient leaves open whether a limit is passed."),
    FindingKind("scent-over-usual", CAUTION, "There is more scent in the product than is usual."),
    FindingKind("not-for-children", STOP, "An ingredient is over its limit for children, and children make or use the product."),
    FindingKind("ingredient-banned", STOP | CAUTION, "An ingredient, or what it holds, falls under a ban."),
    FindingKind("over-legal-limit", STOP, "More of an ingredient is in the product than the law of the region allows."),
    FindingKind(
        "over-usual-limit", CAUTION, "More of an ingredient is in the product than other law, a standard, an opinion or practice allows."
    ),
)
def find_amounts_over_limits(batch: Batch) -> Iterator[BatchFinding]:
    """Compare each batch, with the students' choices at their worst, with every limit that is meant for its kind of product.

    Of several limits that the same ingredients pass in the same way the strictest is said; where one of them stops, the others that only
    caution are not said.
    """
    strictest: dict[tuple[object, ...], _Judged] = {}
    for towards in sorted(batch.filling.towards, key=_order):
        one = _judge(batch, towards)
        if one and (one.key not in strictest or one.times > strictest[one.key].times):
            strictest[one.key] = one
    stopped = {one.cards for one in strictest.values() if one.found.finding.stops}
    for one in strictest.values():
        if one.found.finding.stops or one.key == ("scent-over-usual",) or one.cards not in stopped:
            yield one.found


def _order(towards: TowardsLimit) -> tuple[bool, int]:
    return not towards.own_law, list(LimitWeight).index(towards.limit.weight)


def _who(limit: Limit, labelling: Labelling) -> str:
    """Return in words what stands behind a limit, and of aluminium how its share is known and that the law leaves some colours out."""
    if limit.counted_as != ALUMINIUM:
        return who_says(limit, labelling)
    return (
        f"{who_says(limit, labelling)}. The share of aluminium is worked out from an ideal formula, and the supplier's analysis decides; "
        "some colours of Annex IV are exempt, and the text says from which day it applies"
    )


def _judge(batch: Batch, towards: TowardsLimit) -> _Judged | None:
    found = _finding(batch, towards)
    if found is None:
        return None
    most = towards.limit.most or Fraction(0)
    reached = towards.least if towards.least > most else towards.most
    return _Judged(frozenset(one.card.key for one in towards.counted), reached / most if most else _BEYOND + reached, found)


def _finding(batch: Batch, towards: TowardsLimit) -> BatchFinding | None:
    limit, counted, least, most = towards.limit, towards.counted, towards.least, towards.most
    assert limit.most is not None
    cards = {one.card.key for one in counted}
    if most <= limit.most or (limit.parts and len(cards) < 2):
        return None  # What one ingredient takes by itself, its own limit says.
    place, own = place_of_counted(counted[0], batch.worked.recipe), towards.own_law
    what, verb = what_counts(counted), "passes" if len(cards) == 1 else "together pass"
    behind = f"({where_it_stands(limit)}). This is {_who(limit, batch.labelling)}.{what_is_held(counted, limit)}"
    passed = f"{limit_in_words(limit)} {behind}"
    case = f"{batch.weighed_in(towards.unit)} ({span_in_words(least, most)})"
    # What a blend declares is in it, however little.
    certain = least > limit.most or (limit.most == 0 and not holds_it(counted, limit))
    for_children = limit.below_age is not None and (own or limit.weight in WEIGHTY_FOR_CHILDREN)
    if limit.is_total_of_scent:
        wrong = f"The scent comes to more than is usual, with what students may add: {passed}"
        less = "Use less" if limit.most else "Leave it out"
        remedy = f"{less}, or accept this with your supplier's document for the scent: the strictest limit of its parts governs. {DEFER}"
        return batch.caution("scent-over-usual", place, wrong, remedy, case)
    if certain and for_children:
        wrong = f"{what} {verb if limit.most else 'is not'} {'a limit ' if limit.most else ''}for {limit.narrower}: {passed}"
        less = "Use less of it" if limit.most else "Leave it out"
        remedy = f"{less}, or make it for older people and write `youngest user:` into the recipe. {DEFER}"
        return batch.stop("not-for-children", place, wrong, remedy, case)
    if certain and limit.most == 0:
        ban = "should not be used here" if limit.weight in CUSTOM else "falls under a ban"
        older = ", or make it for older people and write `youngest user:` into the recipe" if limit.below_age is not None else ""
        wrong, remedy = f"{what} {ban} {behind}", f"Use another ingredient{older}. {DEFER}"
        if own:
            return batch.stop("ingredient-banned", place, wrong, remedy, "")
        return batch.caution("ingredient-banned", place, wrong, remedy, "")
    if certain and own:
        return batch.stop("over-legal-limit", place, f"{what} {verb} a legal limit: {passed}", f"Use less of it. {DEFER}", case)
    if certain:
        remedy = f"Use less of it, or accept this with a reason. {free_of(limit)}{DEFER}"
        return batch.caution("over-usual-limit", place, f"{what} {verb} a limit: {passed}", remedy, case)
    if not own and (limit.weight not in WORTH_ASKING or (limit.weight is LimitWeight.LAW and holds_it(counted, limit))):
        return None  # What an oil may hold is not asked for the sake of the law of another region.
    wrong = f"{what} may {'fall under a ban' if limit.most == 0 else 'pass a limit'}: {passed} {why_open(counted, limit)}"
    remedy = f"Ask your supplier for the share, or use so little that even the most it can be is within the limit. {DEFER}"
    return batch.caution("limit-not-proven", place, wrong, remedy, case)
