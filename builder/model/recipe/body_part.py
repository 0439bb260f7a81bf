"""The parts of the body of which rules, cards and recipes speak."""

from enum import StrEnum


class BodyPart(StrEnum):
    """Where a product is used."""

    FACE = "face"
    EYE = "eye"
    HAND = "hand"
    BODY = "body"
    HAIR = "hair"


# Words in the name of a recipe that say where its product is used.
NAMES_OF_PARTS = {one.value: one for one in BodyPart} | {"facial": BodyPart.FACE, "eyes": BodyPart.EYE, "hands": BodyPart.HAND}
