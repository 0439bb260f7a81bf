"""Colours against the list of colour additives of US law, for a studio in the US.

colour-not-listed, colour-not-for-lips; over-legal-limit where the list sets a most.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.limit_words import DEFER, percent
from builder.check.places import place_of_line
from builder.model.figure import Known
from builder.model.ingredient import DeclaredAs, Ingredient
from builder.model.limit import ColourRule
from builder.model.place import Place, fold
from builder.model.product import Product

_LISTS = "the list of colour additives for cosmetics (21 CFR 73 and 74)"


def find_colours_not_allowed(batch: Batch) -> Iterator[BatchFinding]:
    """Look up each colour of a batch and of what its students may choose."""
    if batch.region != "US":
        return
    for card, place, share in _colours(batch):
        for name in _names(card):
            rule = next((rule for rule in batch.colour_rules if fold(rule.label_name) == fold(name).removesuffix(" lake")), None)
            if rule is None or not rule.is_listed or not (rule.contact or rule.allows(batch.sheet.product)):
                yield _not_listed(batch, card, place, name, rule)
            elif not rule.allows(batch.sheet.product):
                yield batch.stop(
                    "colour-not-for-lips",
                    place,
                    f"{card.name} colours a product for the lips, and US law allows {name} only outside of them "
                    f"({_where(rule)}): what is on the lips is swallowed.",
                    f"Choose a colour that is listed for the lips, such as iron oxides or mica, or leave it uncoloured. {DEFER}",
                    "",
                )
            else:
                yield from _over(batch, card, place, share, rule)


def is_soap(product: Product) -> bool:
    """Say whether a kind of product goes by the name of soap."""
    return fold(product.identity).endswith("soap")


def _over(batch: Batch, card: Ingredient, place: Place, share: Fraction, rule: ColourRule) -> Iterator[BatchFinding]:
    most = rule.most_on_lips if batch.sheet.product.contact == "lips" and rule.most_on_lips is not None else rule.most
    if most is not None and share > most:
        wrong = (
            f"{card.name} comes to more than US law allows of this colour here: at most {percent(most)} of the product ({_where(rule)})."
        )
        yield batch.stop("over-legal-limit", place, wrong, f"Use less of it. {DEFER}", f"{batch.name} ({percent(share)})")


def _not_listed(batch: Batch, card: Ingredient, place: Place, name: str, rule: ColourRule | None) -> BatchFinding:
    only = f" for this use (it is listed for: {rule.narrower}; {_where(rule)})" if rule and rule.is_listed else ""
    wrong = f"{name} is not on {_LISTS} of US law{only}, and a cosmetic coloured with what is not listed may not be sold."
    remedy = (
        "Use a listed colour, or look it up in the list in force. If the card names the colour otherwise, write the listed name under "
        f"`colour name:`. {DEFER}"
    )
    if is_soap(batch.sheet.product):
        soap = "Soap that is labelled, sold and represented only as soap is no cosmetic (21 CFR 701.20), so the list does not reach it."
        remedy = f"Accept this if the soap is sold as nothing but soap: one claim for the skin makes it a cosmetic. {DEFER}"
        return batch.caution("colour-not-listed", place, f"{wrong} {soap}", remedy, "")
    if card.declared_as is DeclaredAs.COLOUR:
        return batch.stop("colour-not-listed", place, wrong, remedy, "")
    other = f"The card declares {card.name} as an ingredient, which it may be for a purpose other than its colour."
    return batch.caution("colour-not-listed", place, f"{wrong} {other}", f"Accept this if it is not there for its colour. {remedy}", "")


def _where(rule: ColourRule) -> str:
    memory = "; from memory, to be looked up again" if rule.known is Known.MEMORY else ""
    return f"{rule.name}, 21 CFR {rule.section}{memory}"


def _names(card: Ingredient) -> tuple[str, ...]:
    if "us" in card.colour_name:
        return tuple(card.colour_name["us"].split(", "))
    return card.label_name.inci if card.label_name else ()


def _colours(batch: Batch) -> Iterator[tuple[Ingredient, Place, Fraction]]:
    """Give each colour with its place and its share of the product."""
    sheet = batch.sheet
    used = [(w.line.ingredient, place_of_line(w.line, sheet.recipe), w.mass / sheet.grams.total) for w in sheet.grams.weighed if w.mass]
    for dose in sheet.doses:
        place = next(choice.place for choice in sheet.recipe.choices if choice.what == dose.what)
        share = dose.at_most / (sheet.portions.fill + dose.at_most)
        used += [(batch.cards[fold(option)], place, share) for option in dose.options if option is not None]
    for card, place, share in used:
        if card.declared_as is DeclaredAs.COLOUR or card.kind == "colourant":
            yield card, place, share
