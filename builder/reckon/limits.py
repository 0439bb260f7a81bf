"""The limits that a kind of product is judged by, from the tables: those that are meant for it, and those that several take up together.

A colour additive of the studio's own law with a most of its own is a limit like any other. Oils that make skin burn in the sun may take up
their limits only together: the sum of dose by limit is at most the whole (IFRA Standards, combination rule).
"""

from dataclasses import replace
from fractions import Fraction

from builder.model.limit import ColourRule, Limit, LimitWeight, PercentOf, Rules
from builder.model.place import fold
from builder.model.product import Product

LIST_ROLES = ("colour",)  # What lists of colours say is judged by the law's own list of colour additives.


def limits_for(product: Product, rules: Rules, words: frozenset[str] | None = None) -> tuple[Limit, ...]:
    """Give the limits that a kind of product is judged by.

    `words` are all by which something in it can be counted: a limit that speaks of none of them is left out.
    """

    def is_spoken_of(limit: Limit) -> bool:
        return words is None or not words.isdisjoint(limit.speaks_of)

    meant = [one for one in rules.limits if (one.sums_up or is_spoken_of(one)) and one.role not in LIST_ROLES and one.is_for(product)]
    judged = [one for one in meant if one.is_judged(rules.youngest, rules.used_on)]
    together = [_together(one, judged) for one in meant if one.sums_up]
    colours = [_of_colour(rule, product) for rule in rules.colour_rules if rules.region == "US" and rule.allows(product)]
    return tuple(one for one in (*judged, *together, *colours) if one is not None and is_spoken_of(one))


def _together(limit: Limit, judged: list[Limit]) -> Limit | None:
    """Give the limit of all oils of one hazard together; its parts are their own limits."""
    parts = tuple(one for one in judged if one.hazard == limit.hazard and one.most and one.percent_of is PercentOf.PRODUCT)
    return replace(limit, most=Fraction(1), parts=parts) if parts else None


def _of_colour(rule: ColourRule, product: Product) -> Limit | None:
    """Give the limit that a colour additive has in a kind of product, if any."""
    most = rule.most_on_lips if product.contact == "lips" and rule.most_on_lips is not None else rule.most
    if most is None:
        return None
    return Limit(
        ingredient=rule.name,
        names=(fold(rule.label_name),),
        role="colour",
        most=most,
        percent_of=PercentOf.PRODUCT,
        counted_as="",
        factor=None,
        product_type="lips" if most == rule.most_on_lips else "cosmetics",
        contact=("all",),
        products=(),
        narrower="",
        hazard="",
        region="US",
        weight=LimitWeight.LAW,
        source=rule.source,
        at=rule.at,
        known=rule.known,
        note="",
        place=rule.place,
    )
