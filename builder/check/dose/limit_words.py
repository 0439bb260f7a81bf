"""The words in which a finding speaks of a limit: who says it, how much, where it stands, and how that is known."""

from collections.abc import Sequence
from fractions import Fraction

from builder.model.dose.limit import Limit, LimitRole, LimitWeight, PercentOf, held_of, names_of
from builder.model.dose.towards import Counted
from builder.model.hazard import Hazard
from builder.model.label.labelling import Labelling
from builder.model.label.region import ANY_REGIONS
from builder.model.recipe.figure import Known, SourceKind
from builder.model.recipe.ingredient import Ingredient
from builder.rules.basis import PRACTICE, from_memory
from builder.words.listed import listed_once
from builder.words.percent import percent

DEFER = "What decides is the text in force where the product is sold or given away, and your supplier's documents."


def what_counts(counted: Sequence[Counted]) -> str:
    """Name the cards that count."""
    return listed_once(one.card.name for one in counted)


def who_says(limit: Limit, labelling: Labelling) -> str:
    """Return in words what stands behind a limit, seen from the studio's region."""
    here, there = labelling.region, labelling.named(limit.region)
    law, country = ("the law", "any region") if limit.region == ANY_REGIONS else (there.law, there.in_words)
    match limit.weight:
        case LimitWeight.LAW if here.has_kept(limit.region) and here.has_not_kept(limit.since):
            return f"{law} since {limit.since}, after {here.in_words} had kept the law as it stood; look up whether it has followed"
        case LimitWeight.LAW if here.has_kept(limit.region):
            return f"{law}, which {here.in_words} has kept as its own; look up whether it has followed the latest change"
        case LimitWeight.LAW if here.has_as_law(limit.region):
            return f"{law}, the law of the studio's region"
        case LimitWeight.LAW:
            return f"{law}, which is not the law of the studio's region"
        case LimitWeight.OPINION:
            return f"an opinion given in {country}, which is no law"
        case LimitWeight.GUIDANCE:
            return f"official guidance in {country}, which is no law"
        case LimitWeight.STANDARD if limit.role is LimitRole.CERTIFICATE:
            return "what the supplier's certificate allows"
        case LimitWeight.STANDARD:
            return "a standard of the trade, which is no law"
        case LimitWeight.HANDBOOK:
            return "the advice of a handbook, which is no law"
    assert limit.weight is LimitWeight.PRACTICE
    if limit.source.key == "common-practice":
        return PRACTICE
    return f"usual practice{' in a handbook' if limit.source.kind is SourceKind.HANDBOOK else ''}, which is no law"


def span_in_words(least: Fraction, most: Fraction) -> str:
    """Return how much of a product counts: a percentage, or from the least to the most."""
    return percent(least) if percent(least) == percent(most) else f"from {percent(least)} to {percent(most)}"


def holds_it(counted: Sequence[Counted], limit: Limit) -> bool:
    """Tell whether something counts for what it holds, and not for what it is declared as."""
    return any(held_of(one.card, limit) for one in counted)


def what_is_held(counted: Sequence[Counted], limit: Limit) -> str:
    """Return in words what the cards hold of what a limit speaks of, who says so, and that the supplier's certificate comes first."""
    said = {one.card.key: _held(one.card, limit) for one in counted}
    words = "; ".join(text for text in said.values() if text)
    return f" {words}. The supplier's certificate comes before these figures." if words else ""


def _held(card: Ingredient, limit: Limit) -> str:
    return "; ".join(
        f"{card.name} holds {span_in_words(one.low, one.high)} {one.name} "
        f"({'; '.join(one.works)}{'; partly from memory' if one.known is Known.MEMORY else ''})"
        for one in held_of(card, limit)
    )


def free_of(limit: Limit) -> str:
    """Return in words how a card says that its oil does not bring the hazard that a limit is about."""
    if limit.hazard is not Hazard.PHOTOTOXIC:
        return ""
    return "If your oil is distilled or free of furocoumarins, say so on a card of its own (`oil:`). "


def why_open(counted: Sequence[Counted], limit: Limit) -> str:
    """Return in words why it is not known how much counts."""
    if any(one.card.label_name and one.card.label_name.shares for one in counted):
        return "The shares that are known of a blend leave open how much there is: the supplier's own figure decides."
    if holds_it(counted, limit):
        return "An oil differs from year to year, and the high end of what is published counts."
    if any(len(names_of(one.card)) > 1 for one in counted):
        return "A blend gives the order of its parts and not their shares, so how much there is remains open: the supplier's share decides."
    return "A salt or ester counts as less than it weighs, and the table does not have by how much: the supplier can say."


def limit_in_words(limit: Limit) -> str:
    """Return in words how much a limit allows."""
    if limit.parts:
        return "all of them together at most 100 %, each counted in percent of its own limit"
    of = "the product" if limit.percent_of is PercentOf.PRODUCT else "the oils"
    counted = f", counted as {limit.counted_as.lower()}" if limit.counted_as else ""
    return f"at most {percent(limit.most or Fraction(0))} of {of}{counted}"


def where_it_stands(limit: Limit) -> str:
    """Return in words where a limit stands, for which products, and that it has to be looked up again where it is known from memory."""
    return f"{limit.ingredient}, {limit.product_type}: {limit.at}{from_memory(limit.known)}"
