"""Colours in a region of which no list is known here: neither of those that its law allows, nor of those that it prohibits.

Other lists are the yardstick then: a colour that none of them allows for the use is looked up by the studio.
"""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.dose.colours import colours_in, field_rule_of, goes_on_eyes
from builder.check.dose.limit_words import DEFER
from builder.check.figure_words import inside
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.words.fold import fold
from builder.words.listed import listed_once

_UNKNOWN = "none"


@rule_on(
    BATCH,
    FindingKind(
        "colour-unknown-here",
        CAUTION,
        "Nothing here knows what the law of the region says of a colour, and no list that is known allows it for this use.",
    ),
)
def find_colours_unknown_here(batch: Batch) -> Iterator[BatchFinding]:
    """Look up each colour of a batch, and of what its students may choose, in the lists of other regions where the region has none."""
    if batch.region.colours[0] != _UNKNOWN:
        return
    for card, place in colours_in(batch):
        unlisted = [name for name in card.eu_colour_names if not _is_allowed_in_the_eu(batch, name)]
        if unlisted and not all(_is_allowed_in_the_us(batch, name) for name in card.us_colour_names):
            yield batch.caution(
                "colour-unknown-here",
                place,
                f"What {batch.region.law} says of {inside(card)} as a colour is not known here{_where_to_look(batch)}. Neither US law "
                f"(21 CFR 73 and 74) nor EU law (Annex IV) lists {listed_once(unlisted)} for this use.",
                f"Look it up, or ask your supplier, and accept this with what you found; or take a colour that both list. "
                f"{_other_purpose(card)}{DEFER}",
                "",
            )


def _where_to_look(batch: Batch) -> str:
    rule = batch.region.rule("colours to look up")
    return f": {rule.says}" if rule else ""


def _other_purpose(card: Ingredient) -> str:
    return "Accept it too where it is not there for its colour. " if card.declared_as is DeclaredAs.INGREDIENT else ""


def _is_allowed_in_the_eu(batch: Batch, name: str) -> bool:
    """Tell whether the list of the EU has a colour for this use, or knows it as an ingredient like any other."""
    rule = field_rule_of(name, batch)
    return rule is not None and rule.allows(batch.worked.product, on_eyes=goes_on_eyes(batch))


def _is_allowed_in_the_us(batch: Batch, name: str) -> bool:
    rule = next((one for one in batch.colour_rules if fold(one.label_name) == fold(name).removesuffix(" lake")), None)
    return rule is not None and rule.is_listed and rule.allows(batch.worked.product) and not (goes_on_eyes(batch) and not rule.for_eyes)
