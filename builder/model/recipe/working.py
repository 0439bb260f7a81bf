"""How one number of a batch came to be, with what went into it."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction


class SumRule(StrEnum):
    """How a result is worked out; its words are in `compose/recipe/wording.py`."""

    SHARE_OF_TOTAL = "share of total"
    REST_OF_TOTAL = "rest of total"
    SHARE_OF_OILS = "share of oils"
    PARTS = "parts"
    WEIGHTS = "weights"
    VOLUME_THROUGH_DENSITY = "volume through density"
    DROPS_THROUGH_DROP_MASS = "drops through drop mass"
    FAT_EQUIVALENTS = "fat equivalents"
    ACID_EQUIVALENTS = "acid equivalents"
    FAT_EQUIVALENTS_AS_WEIGHED = "fat equivalents as weighed"
    ACID_EQUIVALENTS_AS_WEIGHED = "acid equivalents as weighed"
    ALKALI_EQUIVALENTS_AS_WEIGHED = "alkali equivalents as weighed"
    ALKALI_EQUIVALENTS_NEEDED = "alkali equivalents needed"
    ALKALI_WEIGHT = "alkali weight"
    WATER_BY_CONCENTRATION = "water by concentration"
    WATER_BY_RATIO = "water by ratio"
    WATER_BY_PERCENT_OF_OILS = "water by percent of oils"
    WEIGHT_WITH_THE_OILS = "weight with the oils"
    WATER_IN_READY_MIXED_LYE = "water in ready-mixed lye"
    BATCH_FOR_CONTAINERS = "batch for containers"
    BATCH_FOR_PEOPLE = "batch for people"
    BATCH_FOR_MOULD = "batch for mould"
    BATCH_FOR_TOTAL = "batch for total"
    BATCH_FOR_OILS = "batch for oils"
    RAISED_FOR_ROUNDING = "raised for rounding"
    ROUNDED_TO_THE_SCALE = "rounded to the scale"
    SUPERFAT_AS_WEIGHED = "superfat as weighed"
    SUPERFAT_LOWEST = "superfat lowest"
    SUPERFAT_HIGHEST = "superfat highest"
    REQUIRED_HLB_OF_A_MIXTURE = "required HLB of a mixture"
    HLB_OF_A_MIXTURE = "HLB of a mixture"
    DROP_ESTIMATED = "drop estimated"
    MOST_UNDER_A_LIMIT = "most under a limit"
    PORTIONS = "portions"


@dataclass(frozen=True)
class Given:
    """One number that went into a working, in `unit`: what it is a number of (`of`), and whose figure it is.

    `source` is empty for the recipe's own, and may be `from_memory`. `name` is a message (`words/say.py`).
    """

    name: str
    value: Fraction
    unit: str
    source: str = ""
    of: str = ""
    from_memory: bool = False


@dataclass(frozen=True)
class Working:
    """How one result came to be."""

    rule: SumRule
    of: str
    given: tuple[Given, ...]
    result: Fraction
    unit: str
