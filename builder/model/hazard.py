"""The hazards that cards, rules and warnings know by name.

A caution of a studio may name a hazard of its own, which no card and no rule knows: it comes to a sheet where a lesson calls it. So what a
part or a caution brings is text, and what cards bring and rules ask for is one of these.
"""

from enum import StrEnum


class Hazard(StrEnum):
    """What can hurt. Those down to `OILY_CLOTHS` are brought by ingredients, those below by what is done with them."""

    CAUSTIC = "caustic"
    IRRITANT_ACID = "irritant acid"
    DUST = "dust"
    FLAMMABLE = "flammable"
    NEAT_ESSENTIAL_OIL = "neat essential oil"
    NEAT_PRESERVATIVE = "neat preservative"
    PHOTOTOXIC = "phototoxic"
    SLIPPERY = "slippery"
    STAINS = "stains"
    SPOILS = "spoils"
    HARMFUL_TO_PETS = "harmful to pets"
    SENSITISER = "sensitiser"
    HARMS_EYES = "harms eyes"
    OILY_CLOTHS = "oily cloths"
    DRY_LYE = "dry lye"
    RAW_SOAP = "raw soap"
    HOT = "hot"
    HOT_FAT = "hot fat"
    BLADE = "blade"
    GLASS = "glass"
    MICROWAVE = "microwave"
    FOOD_LOOK_ALIKE = "food look-alike"
    CHILDREN_AND_ANIMALS = "children and animals"


_ALL = tuple(Hazard)
OF_INGREDIENTS = _ALL[: _ALL.index(Hazard.OILY_CLOTHS) + 1]
