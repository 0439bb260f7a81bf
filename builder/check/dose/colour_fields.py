"""Colours against the list of colourants of EU law (Annex IV), for a studio in the EU or the UK.

Where the list sets a most, it is a limit like any other (`over_limit.py`). Where no list is known
of a region, `colour_unknown_here.py` speaks.
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
    field_rule_of,
    for_another_purpose,
    goes_on_eyes,
    use_a_listed_one,
)
from builder.check.dose.limit_words import DEFER
from builder.check.rule import BATCH, rule_on
from builder.model.dose.limit import Field, FieldRule
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.product import Contact

_ANOTHER = f"Choose a colour that is allowed for this, such as iron oxides, or leave it uncoloured. {DEFER}"


@rule_on(
    BATCH,
    COLOUR_NOT_FOR_LIPS,
    COLOUR_NOT_FOR_EYES,
    FindingKind("colour-not-left-on", STOP, "A colour stays on the skin, and the law allows it only in what is rinsed off."),
    COLOUR_NOT_LISTED,
)
def find_colours_out_of_their_field(batch: Batch) -> Iterator[BatchFinding]:
    """Look up each colour of a batch, and of what its students may choose, in the list of the EU."""
    which, kept = batch.region.colours
    if which != "eu":
        return
    for card, place in colours_in(batch):
        for name in card.eu_colour_names:
            rule = field_rule_of(name, batch)
            if rule and kept and not rule.in_uk:
                continue  # What the law of the region says of it is not known here.
            yield from _judge(batch, card, place, name, rule)


def _judge(batch: Batch, card: Ingredient, place: Place, name: str, rule: FieldRule | None) -> Iterator[BatchFinding]:
    contact, on_eyes = batch.worked.product.contact, goes_on_eyes(batch)
    allowed = rule.allowed_for if rule else Field.NOT_LISTED
    where = f"{_law(batch)} ({rule.at if rule else 'Annex IV'})"
    if rule is None or allowed in (Field.NOT_LISTED, Field.ORDINARY):
        yield from _not_listed(batch, card, place, name, allowed, where)
    elif contact == Contact.LIPS and allowed in (Field.NOT_MUCOUS, Field.RINSE_OFF):
        wrong = f"{card.name} colours a product for the lips, and {where} allows {name} {_only(allowed)}: {LIPS_SWALLOW}"
        yield batch.stop("colour-not-for-lips", place, wrong, _ANOTHER, "")
    elif on_eyes and allowed in (Field.NOT_EYES, Field.NOT_MUCOUS, Field.RINSE_OFF):
        wrong = f"{card.name} colours a product for the eyes, and {where} allows {name} {_only(allowed)}."
        yield batch.stop("colour-not-for-eyes", place, wrong, _ANOTHER, "")
    elif contact == Contact.LEAVE_ON and (allowed is Field.RINSE_OFF or (allowed is Field.LIPS_AND_EYE_SHADOW and not on_eyes)):
        wrong = f"{card.name} stays on the skin in this product, and {where} allows {name} {_only(allowed)}."
        yield batch.stop("colour-not-left-on", place, wrong, _ANOTHER, "")


def _not_listed(batch: Batch, card: Ingredient, place: Place, name: str, allowed: Field, where: str) -> Iterator[BatchFinding]:
    wrong = f"{name} is no colourant that {where} lists, and {NOT_SOLD}"
    remedy = f"{use_a_listed_one('its colour index number under `colour name: {eu: ...}`')} {DEFER}"
    if card.declared_as is DeclaredAs.COLOUR and allowed is not Field.ORDINARY:
        yield batch.stop("colour-not-listed", place, wrong, remedy, "")
    elif card.declared_as is not DeclaredAs.COLOUR:
        yield batch.caution("colour-not-listed", place, f"{wrong} {for_another_purpose(card)}", f"{NOT_FOR_ITS_COLOUR} {remedy}", "")


def _only(allowed: Field) -> str:
    return {
        Field.NOT_EYES: "anywhere but around the eyes",
        Field.NOT_MUCOUS: "only away from lips, mouth and eyes",
        Field.RINSE_OFF: "only in what is rinsed off",
        Field.LIPS_AND_EYE_SHADOW: "only in products for the lips and in eye shadow",
    }[allowed]


def _law(batch: Batch) -> str:
    region = batch.region
    if rule := region.rule("keeps the law of"):
        law = batch.labelling.named(rule.says).law
        return f"{law}, which {region.in_words} has kept as its own as far as is remembered"
    return region.law
