"""The kinds of amount, the units of each, and what one of each unit is worth in the unit that the sums use."""

import re
from enum import StrEnum
from fractions import Fraction

from builder import units
from builder.model.finding_kind import STOP, FindingKind
from builder.read.text.text_error import AmountError, quoted
from builder.words.fold import fold
from builder.words.nearest import did_you_mean

FINDS = (FindingKind("unit-unknown", STOP, "A unit does not exist."),)


class Kind(StrEnum):
    """What an amount measures, in the words of a message."""

    WEIGHT = "a weight"
    VOLUME = "a volume"
    LENGTH = "a length"
    TIME = "a length of time"
    TEMPERATURE = "a temperature"
    SHARE = "a percentage"
    PARTS = "a number of parts"
    DROPS = "a number of drops"
    COUNT = "a number of things"
    DENSITY = "a density"


EXAMPLES = {
    Kind.WEIGHT: '"250 g" or "8.8 oz"',
    Kind.VOLUME: '"120 mL" or "4 fl oz"',
    Kind.LENGTH: '"30 cm" or "12 in"',
    Kind.TIME: '"90 min" or "1 h 30 min"',
    Kind.TEMPERATURE: '"70 degC" or "160 degF"',
    Kind.SHARE: '"3 %"',
    Kind.PARTS: '"2 parts"',
    Kind.DROPS: '"12 drops"',
    Kind.COUNT: '"2 containers" or "12 bars"',
    Kind.DENSITY: '"0.98 g/mL"',
}
_THINGS = (
    "bag", "balm", "bar", "bomb", "bottle", "box", "cake", "container", "cube", "jar", "melt", "packet", "piece", "portion", "pot", "pouch",
    "puck", "sachet", "salve", "scrub", "soap", "steamer", "stick", "tin", "tub", "tube",
)  # fmt: skip
_OTHER_UNITS = {
    "%": Kind.SHARE,
    "percent": Kind.SHARE,
    "per cent": Kind.SHARE,
    "part": Kind.PARTS,
    "parts": Kind.PARTS,
    "drop": Kind.DROPS,
    "drops": Kind.DROPS,
    "g/ml": Kind.DENSITY,
}
KIND_OF_UNIT: dict[str, Kind] = {
    **dict.fromkeys(units.MASS_UNITS, Kind.WEIGHT),
    **dict.fromkeys(units.VOLUME_UNITS, Kind.VOLUME),
    **dict.fromkeys(units.LENGTH_UNITS, Kind.LENGTH),
    **dict.fromkeys(units.TIME_UNITS, Kind.TIME),
    **dict.fromkeys(units.TEMPERATURE_UNITS, Kind.TEMPERATURE),
    **_OTHER_UNITS,
    **dict.fromkeys(
        (word for thing in _THINGS for word in (thing, f"{thing}es" if thing.endswith(("ch", "x")) else f"{thing}s")), Kind.COUNT
    ),
}
_SHOWN = {"ml": "mL", "cl": "cL", "l": "L", "g/ml": "g/mL", "degc": "degC", "degf": "degF", "°c": "°C", "°f": "°F"}
_FULL_STOP = re.compile(r"(?<=[a-z])\.(?=\s|$)")
_SAME_SIGN = str.maketrans({"º": "°", "˚": "°", "℃": "°c", "℉": "°f"})


def find_unit(written: str, wanted: tuple[Kind, ...]) -> str:
    """Return the unit that answers to a text, folded. Raises AmountError, which tells the nearest unit."""
    unit = _FULL_STOP.sub("", fold(written.translate(_SAME_SIGN)))
    if unit not in KIND_OF_UNIT and Kind.COUNT in wanted:
        unit = _thing(unit)
    if unit not in KIND_OF_UNIT:
        fitting = [shown(known) for known, kind in KIND_OF_UNIT.items() if kind in wanted]
        remedy = f"Write the amount with a unit, for example {examples_of(wanted)}.{did_you_mean(unit, fitting)}"
        raise AmountError("unit-unknown", f"No unit is called {quoted(written)}.", remedy)
    return unit


def _thing(words: str) -> str:
    """Return the thing that is counted in `bath bombs`; where a unit stands before it (`fl oz jars`) the number is that of the unit."""
    first, last = words.split()[:-1], words.rpartition(" ")[2]
    counted = KIND_OF_UNIT.get(last) is Kind.COUNT and not any(word in KIND_OF_UNIT or not word.isalpha() for word in first)
    return last if counted else words


def examples_of(kinds: tuple[Kind, ...]) -> str:
    """Return examples of amounts of one kind, or one of each of several."""
    if len(kinds) == 1:
        return EXAMPLES[kinds[0]]
    *others, last = (EXAMPLES[kind].partition(" or ")[0] for kind in kinds)
    return f"{', '.join(others)} or {last}"


def shown(unit: str) -> str:
    """Return a folded unit as people write it."""
    return _SHOWN.get(unit, unit)


def in_base_unit(number: Fraction, unit: str) -> Fraction:
    """Return grams, millilitres, millimetres, minutes, degrees Celsius, a share of one, or the number itself."""
    match KIND_OF_UNIT[unit]:
        case Kind.WEIGHT:
            return number * units.grams_in(unit)
        case Kind.VOLUME:
            return number * units.millilitres_in(unit)
        case Kind.LENGTH:
            return number * units.millimetres_in(unit)
        case Kind.TIME:
            return number * units.minutes_in(unit)
        case Kind.TEMPERATURE:
            return units.celsius(number, unit)
        case Kind.SHARE:
            return number / 100
        case _:
            return number
