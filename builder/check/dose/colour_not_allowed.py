"""Colours against the list of colour additives of US law, for a studio in the US.

Where the list sets a most, it is a limit like any other (`over_limit.py`).
"""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.dose.colours import (
    COLOUR_NOT_FOR_EYES,
    COLOUR_NOT_FOR_LIPS,
    COLOUR_NOT_LISTED,
    LIPS_SWALLOW,
    NOT_FOR_ITS_COLOUR,
    NOT_SOLD,
    colours_in,
    for_another_purpose,
    goes_on_eyes,
    use_a_listed_one,
)
from builder.check.dose.limit_words import DEFER
from builder.check.rule import BATCH, rule_on
from builder.model.dose.limit import ColourRule
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import Place
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.rules.basis import from_memory
from builder.words.fold import fold

_LISTS = "the list of colour additives for cosmetics (21 CFR 73 and 74, as in the table of 2019)"


@rule_on(
    BATCH,
    COLOUR_NOT_FOR_LIPS,
    COLOUR_NOT_FOR_EYES,
    FindingKind("colour-certificate-missing", CAUTION, "A colour that the law wants certified batch by batch names no certified lot."),
    COLOUR_NOT_LISTED,
)
def find_colours_not_allowed(batch: Batch) -> Iterator[BatchFinding]:
    """Look up each colour of a batch and of what its students may choose."""
    if batch.region.colours[0] != "us":
        return
    for card, place in colours_in(batch):
        for name in card.us_colour_names:
            rule = next((rule for rule in batch.colour_rules if fold(rule.label_name) == fold(name).removesuffix(" lake")), None)
            if rule is None or not rule.is_listed or not (rule.contact or rule.allows(batch.worked.product)):
                yield _not_listed(batch, card, place, name, rule)
            elif not rule.allows(batch.worked.product):
                yield batch.stop(
                    "colour-not-for-lips",
                    place,
                    f"{card.name} colours a product for the lips, and US law allows {name} only outside of them "
                    f"({_where(rule)}): {LIPS_SWALLOW}",
                    f"Choose a colour that is listed for the lips, such as iron oxides or mica, or leave it uncoloured. {DEFER}",
                    "",
                )
            else:
                yield from _certificate_and_eyes(batch, card, place, name, rule)


def _certificate_and_eyes(batch: Batch, card: Ingredient, place: Place, name: str, rule: ColourRule) -> Iterator[BatchFinding]:
    if not rule.for_eyes and goes_on_eyes(batch):
        wrong = f"{card.name} colours a product for the eyes, and US law does not list {name} for the area of the eye ({_where(rule)})."
        yield batch.stop("colour-not-for-eyes", place, wrong, f"Choose a colour that is listed for the eyes. {DEFER}", "")
    if rule.certified and not card.colour_certificate and not batch.worked.is_true_soap:
        yield batch.caution(
            "colour-certificate-missing",
            place,
            f"US law wants each batch of {name} certified ({_where(rule)}), and the card of {card.name} names no certified lot.",
            "Ask your supplier for the lot number of the certified batch, and write it on the card: `colour certificate: lot ...`. What is "
            f"sold as a dye for crafts or as a food colour may not be certified. {DEFER}",
            "",
        )


def _not_listed(batch: Batch, card: Ingredient, place: Place, name: str, rule: ColourRule | None) -> BatchFinding:
    only = f" for this use (it is listed for: {rule.narrower}; {_where(rule)})" if rule and rule.is_listed else ""
    wrong = f"{name} is not on {_LISTS} of US law{only}, and {NOT_SOLD}"
    remedy = f"{use_a_listed_one('the listed name under `colour name:`')} {DEFER}"
    if batch.worked.is_true_soap:
        soap = "Soap that is labelled, sold and represented only as soap is no cosmetic (21 CFR 701.20), so the list does not reach it."
        remedy = f"Accept this if the soap is sold as nothing but soap: one claim for the skin makes it a cosmetic. {DEFER}"
        return batch.caution("colour-not-listed", place, f"{wrong} {soap}", remedy, "")
    if any(line.ingredient.kind is IngredientKind.SOAP_BASE for line in batch.worked.lines):
        wrong += (
            " A melted base passes as nothing but soap (21 CFR 701.20) only where its declared list, with its supplier's shares, proves "
            "that it is: soaps at least half of what is not water, and no detergent."
        )
    if card.declared_as is DeclaredAs.COLOUR:
        return batch.stop("colour-not-listed", place, wrong, remedy, "")
    return batch.caution("colour-not-listed", place, f"{wrong} {for_another_purpose(card)}", f"{NOT_FOR_ITS_COLOUR} {remedy}", "")


def _where(rule: ColourRule) -> str:
    return f"{rule.name}, {rule.at}{from_memory(rule.known)}"
