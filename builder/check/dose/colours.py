"""What the rules on lists of colours share: the colours of a batch, kinds of finding, and words.

Decided: where no list of colours of a region is known, a colour that none of the known lists allows for the use is a caution. Why:
silence would be a permission that nobody gave; a caution on every pigment would be a false alarm.
"""

from collections.abc import Iterator

from builder.check.batches import Batch
from builder.check.places import place_of_choice, place_of_line
from builder.model.dose.limit import FieldRule
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.place import Place
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.words.fold import fold

COLOUR_NOT_LISTED = FindingKind(
    "colour-not-listed", STOP | CAUTION, "A colour is not on the list of those that the law allows in cosmetics."
)
COLOUR_NOT_FOR_LIPS = FindingKind("colour-not-for-lips", STOP, "A colour is used on the lips, where the law does not allow it.")
COLOUR_NOT_FOR_EYES = FindingKind("colour-not-for-eyes", STOP, "A colour is used around the eyes, where the law does not allow it.")

LIPS_SWALLOW = "what is on the lips is swallowed."
NOT_SOLD = "a cosmetic coloured with what is not listed may not be sold."
NOT_FOR_ITS_COLOUR = "Accept this if it is not there for its colour."


def goes_on_eyes(batch: Batch) -> bool:
    """Tell whether a product is used around the eyes."""
    return BodyPart.EYE in batch.worked.recipe.goes_on(batch.worked.product.used_on)


def field_rule_of(name: str, batch: Batch) -> FieldRule | None:
    """Return what the list of the EU says of a colour by one of its names, its lakes too; None where the list does not have it."""
    return next((one for one in batch.field_rules if fold(name).removesuffix(" lake") in one.names), None)


def colours_in(batch: Batch) -> Iterator[tuple[Ingredient, Place]]:
    """Yield each colour with its place."""
    worked = batch.worked
    used = [(w.line.ingredient, place_of_line(w.line, worked.recipe)) for w in worked.grams.weighed if w.mass]
    for dose in batch.filling.doses:
        place = place_of_choice(dose.what, worked.recipe)
        used += [(batch.cards[fold(option)], place) for option in dose.offered if option is not None]
    for card, place in used:
        if card.declared_as is DeclaredAs.COLOUR or card.kind is IngredientKind.COLOURANT:
            yield card, place


def use_a_listed_one(how: str) -> str:
    """Return in words what to do about a colour that is not on a list; `how` says where the name of the list goes."""
    return f"Use a listed colour, or look it up in the list in force. If the card names the colour otherwise, write {how}."


def for_another_purpose(card: Ingredient) -> str:
    """Return in words that a card declares something as an ingredient and not as a colour."""
    return f"The card declares {card.name} as an ingredient, which it may be for a purpose other than its colour."
