"""The limits that a kind of product is judged by, from the tables: those that are meant for it, and those that several take up together.

A colour additive of the studio's own law with a most of its own is a limit like any other. Oils that make skin burn in the sun may take up
their limits only together: the sum of dose by limit is at most the whole (IFRA Standards, combination rule).

Decided: what counts towards a limit is worked out in reckon and kept on the filling (`Filling.towards`); check compares and speaks.
Why: the doses need it first, and there is one arithmetic.
"""

from collections.abc import Collection
from dataclasses import replace
from fractions import Fraction

from builder.model.dose.limit import CUSTOM, ColourRule, FieldRule, Limit, LimitRole, LimitRules, LimitWeight, PercentOf
from builder.model.label.region import ANY_REGIONS, ColourList, Region
from builder.model.recipe.ingredient import CERTIFICATE, Ingredient
from builder.model.recipe.product import Contact, Product
from builder.model.remembered import remembered
from builder.words.fold import fold

# What the certificate of a supplier comes before.
UNDER_CERTIFICATES = (LimitWeight.STANDARD, *CUSTOM)


def limits_for(product: Product, rules: LimitRules, cards: Collection[Ingredient] | None = None) -> tuple[Limit, ...]:
    """Return the limits that a kind of product is judged by.

    `cards` are all that can be in it: a limit that speaks of none of them is left out, and the certificates of their suppliers come before
    standards, handbooks and custom.
    """
    words = None if cards is None else frozenset().union(*(card.speaks_of for card in cards))

    def is_spoken_of(limit: Limit) -> bool:
        return words is None or not words.isdisjoint(limit.speaks_of)

    looked_at = rules.limits if words is None else speaking_of(rules.limits, words)
    # What lists of colours say is judged by the law's own list of colour additives.
    meant = [one for one in looked_at if one.role is not LimitRole.COLOUR and one.is_for(product)]
    certified = {card.key: card for card in cards or () if card.certificate and product.contact in card.certificate.at_most}
    if certified:
        besides = frozenset(certified)
        meant = [replace(one, besides=besides) if one.weight in UNDER_CERTIFICATES and not one.is_total_of_scent else one for one in meant]
    judged = [one for one in meant if one.is_judged(rules.youngest, rules.used_on)]
    together = [_together(one, judged) for one in meant if one.sums_up]
    colours = _of_colours(rules.colour_rules, rules.field_rules, rules.region, product)
    own = [_of_certificate(card, product) for card in certified.values()]
    return tuple(one for one in (*judged, *together, *colours, *own) if one is not None and is_spoken_of(one))


def speaking_of(limits: tuple[Limit, ...], words: frozenset[str]) -> list[Limit]:
    """Return the limits that one of some words counts towards, and those that sum others up, in their order."""
    by_word = _by_word(limits)
    return [limits[number] for number in sorted({number for word in (SUMS_UP, *(words & by_word.keys())) for number in by_word[word]})]


SUMS_UP = ""


@remembered(8)
def _by_word(limits: tuple[Limit, ...]) -> dict[str, list[int]]:
    """Index limits, by their numbers, under the words that they speak of; those that sum others up under no word."""
    index: dict[str, list[int]] = {SUMS_UP: []}
    for number, limit in enumerate(limits):
        for word in (*limit.speaks_of, *([SUMS_UP] if limit.sums_up else [])):
            index.setdefault(word, []).append(number)
    return index


@remembered(64)
def _of_colours(
    colour_rules: tuple[ColourRule, ...], field_rules: tuple[FieldRule, ...], region: Region, product: Product
) -> tuple[Limit | None, ...]:
    """Return the limits that the law of a region sets on colours in a kind of product."""
    which, kept = region.colours
    law_of = region.says("keeps the law of") or region.name
    if which is ColourList.US:
        return tuple(_of_colour(rule, product, law_of) for rule in colour_rules if rule.allows(product))
    return tuple(_of_field(rule, product, law_of) for rule in field_rules if which is ColourList.EU and (rule.in_uk or not kept))


def _together(limit: Limit, judged: list[Limit]) -> Limit | None:
    """Return the limit of all oils of one hazard together; its parts are their own limits."""
    parts = tuple(one for one in judged if one.hazard == limit.hazard and one.most and one.percent_of is PercentOf.PRODUCT)
    return replace(limit, most=Fraction(1), parts=parts) if parts else None


def _of_certificate(card: Ingredient, product: Product) -> Limit:
    """Return the limit that the certificate of a supplier sets on a card in a kind of product."""
    assert card.certificate is not None
    return Limit(
        ingredient=card.name,
        names=(CERTIFICATE + card.key,),
        role=LimitRole.CERTIFICATE,
        most=card.certificate.at_most[product.contact],
        percent_of=PercentOf.PRODUCT,
        counted_as="",
        factor=None,
        product_type=product.contact,
        contact=tuple(Contact),
        products=(),
        narrower="",
        hazard=None,
        region=ANY_REGIONS,
        weight=LimitWeight.STANDARD,
        source=card.certificate.source,
        at=card.certificate.at,
        known=card.certificate.known,
        note="",
    )


def _of_colour(rule: ColourRule, product: Product, law_of: str) -> Limit | None:
    """Return the limit that the list of colour additives sets on a colour additive in a kind of product, if any."""
    return _most_of(rule, product, rule.name, (fold(rule.label_name),), law_of)


def _of_field(rule: FieldRule, product: Product, law_of: str) -> Limit | None:
    """Return the limit that the list of colourants sets on one in a kind of product, if any."""
    return _most_of(rule, product, rule.common_name, rule.names, law_of)


def _most_of(rule: ColourRule | FieldRule, product: Product, name: str, names: tuple[str, ...], region: str) -> Limit | None:
    on_lips = product.contact == Contact.LIPS and rule.most_on_lips is not None
    most = rule.most_on_lips if on_lips else rule.most
    if most is None:
        return None
    return Limit(
        ingredient=name,
        names=names,
        role=LimitRole.COLOUR,
        most=most,
        percent_of=PercentOf.PRODUCT,
        counted_as="",
        factor=None,
        product_type=Contact.LIPS if on_lips else "cosmetics",
        contact=tuple(Contact),
        products=(),
        narrower="",
        hazard=None,
        region=region,
        weight=LimitWeight.LAW,
        source=rule.source,
        at=rule.at,
        known=rule.known,
        note="",
        place=rule.place,
    )
