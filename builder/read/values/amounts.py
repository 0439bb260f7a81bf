"""An amount as people write it becomes a quantity: `250 g`, `1 1/2 cups`, `1½ tsp`, `3 %`, `1 h 30 min`, `30 cm x 8 cm x 7 cm`.

Each function wants one kind of amount and raises an AmountError, which says what to write, for any other.
"""

import re
from fractions import Fraction

from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.quantity import (
    Amount,
    Box,
    Count,
    Density,
    Drops,
    Duration,
    Length,
    Mass,
    Parts,
    Rest,
    Share,
    Temperature,
    Volume,
    WeighingUnit,
)
from builder.read.text.text_error import AmountError, quoted
from builder.read.values.bounds import HEAT
from builder.read.values.kinds import EXAMPLES, Kind
from builder.read.values.measures import measure
from builder.read.values.numbers import NUMBER_RUN, parse_number, parse_whole_above_zero, tidy
from builder.units import is_metric
from builder.words.fold import fold

FINDS = (
    FindingKind("amount-not-positive", STOP, "An amount is zero or less."),
    FindingKind("amount-unreadable", STOP, "An amount cannot be read."),
    FindingKind("ounces-for-a-volume", STOP, "An ounce is a weight, and a volume is wanted."),
    FindingKind("share-over-whole", STOP, "A percentage is more than the whole."),
    FindingKind("temperature-out-of-range", STOP, "A temperature is none to which anything is heated."),
)

_TIMES = re.compile(r"\s*(?:×|x|by)\s*", re.IGNORECASE)
# A letter alone is a unit where nothing but a temperature is wanted: elsewhere `c` is a cup.
_DEGREES = re.compile(r"(.*\d)\s*(?:deg\.?|degrees?)?\s*([cCfF])\.?")
_IN_A_RECIPE = (Kind.WEIGHT, Kind.SHARE, Kind.VOLUME, Kind.PARTS, Kind.DROPS)


def parse_amount(text: str) -> Amount:
    """Read an amount of a recipe: a weight, volume, percentage, number of parts or drops, or `rest`."""
    if fold(text) == "rest":
        return Rest()
    measured = measure(text, *_IN_A_RECIPE)
    match measured.kind:
        case Kind.WEIGHT:
            return Mass(measured.number)
        case Kind.VOLUME:
            return Volume(measured.number)
        case Kind.SHARE:
            return Share(measured.number)
        case Kind.PARTS:
            return Parts(measured.number)
        case _:
            return Drops(measured.number)


def parse_mass(text: str, *, zero: bool = False) -> Mass:
    """Read a weight; a bare `oz` is a weight."""
    return Mass(measure(text, Kind.WEIGHT, zero=zero).number)


def parse_pack(text: str, *, zero: bool = False) -> Mass | Volume:
    """Read the size of a pack of an ingredient: a weight, or a volume. A bare `oz` is a weight, `fl oz` and `gal` are volumes."""
    measured = measure(text, Kind.WEIGHT, Kind.VOLUME, zero=zero)
    return Mass(measured.number) if measured.kind is Kind.WEIGHT else Volume(measured.number)


def parse_pieces(text: str) -> int:
    """Read the number of pieces in a pack: `24`, or `24 bottles`."""
    return parse_whole_above_zero(text) if text.isdigit() else parse_count(text).number


def parse_pieces_left(text: str) -> Fraction:
    """Read how many pieces there are, none or a part of one among it: `24`, `24 bottles`, `2 1/2`. Raises AmountError."""
    if not NUMBER_RUN.fullmatch(tidy(text).removeprefix("-").lstrip()):
        return Fraction(parse_count(text, zero=True).number)
    number = parse_number(text)
    if number < 0:
        raise AmountError("amount-not-positive", f"{quoted(text)} is below zero.", 'Write how many there are; none is "0".')
    return number


def parse_division(text: str) -> tuple[Mass, WeighingUnit]:
    """Read a weight, and say whether its unit is of the gram's family (`g`) or the ounce's (`oz`)."""
    measured = measure(text, Kind.WEIGHT)
    return Mass(measured.number), "g" if is_metric(measured.unit) else "oz"


def parse_volume(text: str) -> Volume:
    """Read a volume; a bare `oz` is refused, since it is a weight. Raises AmountError."""
    try:
        return Volume(measure(text, Kind.VOLUME).number)
    except AmountError as error:
        ounces = re.fullmatch(r"(.*\d)\s*(?:oz|ounces?)\.?", tidy(text), re.IGNORECASE)
        if error.name != "unit-of-another-kind" or not ounces:
            raise
        raise AmountError(
            "ounces-for-a-volume",
            f"{quoted(text)} is a weight, and the size of a container is a volume: an ounce of honey fills less than an ounce of oil.",
            f'If fluid ounces are meant, write "{ounces[1]} fl oz".',
        ) from None


def parse_temperature(text: str) -> Temperature:
    """Read a temperature, which may be below zero."""
    degrees = _DEGREES.fullmatch(tidy(text))
    spelled = f"{degrees[1]} deg{degrees[2].upper()}" if degrees else text
    return Temperature(measure(spelled, Kind.TEMPERATURE, zero=True, below_zero=True).number)


def parse_heat(text: str) -> Temperature:
    """Read a temperature to which a phase is heated. Raises AmountError."""
    temperature = parse_temperature(text)
    if not HEAT.hold(temperature.celsius):
        wrong = f"Nothing is heated to {quoted(text)}: {HEAT.reason}."
        raise AmountError("temperature-out-of-range", wrong, HEAT.remedy(temperature.celsius))
    return temperature


def parse_duration(text: str) -> Duration:
    """Read a length of time."""
    return Duration(measure(text, Kind.TIME).number)


def parse_density(text: str) -> Density:
    """Read a density in grams per millilitre."""
    return Density(measure(text, Kind.DENSITY).number)


def parse_share(text: str) -> Share:
    """Read a percentage above zero; it may be more than 100 %."""
    return Share(measure(text, Kind.SHARE).number)


def parse_part_of_whole(text: str) -> Share:
    """Read a percentage above zero and up to 100 %. Raises AmountError."""
    share = parse_share(text)
    if share.fraction > 1:
        raise AmountError("share-over-whole", f"{quoted(text)} is more than the whole.", 'Write a percentage up to "100 %".')
    return share


def parse_superfat(text: str) -> Share:
    """Read a percentage that may be zero or below: what that means for a soap is for the checks to say."""
    return Share(measure(text, Kind.SHARE, zero=True, below_zero=True).number)


def parse_count(text: str, *, zero: bool = False) -> Count:
    """Read a whole number of things, such as `2 containers`. Raises AmountError."""
    measured = measure(text, Kind.COUNT, zero=zero)
    if measured.number.denominator != 1:
        raise AmountError(
            "number-unreadable", f"{quoted(text)} is not a whole number of things.", f"Write for example {EXAMPLES[Kind.COUNT]}."
        )
    return Count(int(measured.number), measured.unit)


def parse_length(text: str, *, zero: bool = False, below_zero: bool = False) -> Length:
    """Read a length."""
    return Length(measure(text, Kind.LENGTH, zero=zero, below_zero=below_zero).number)


def parse_box(text: str) -> Box:
    """Read the inside of a mould: three edges, of which the last must have a unit that the others may share. Raises AmountError."""
    edges = _TIMES.split(tidy(text))
    if len(edges) != 3:
        remedy = 'Write three lengths, for example "30 cm x 8 cm x 7 cm".'
        raise AmountError("amount-unreadable", f"{quoted(text)} does not name the three edges of a mould.", remedy)
    unit = NUMBER_RUN.sub("", edges[2]).strip()
    a, b, c = (Length(measure(f"{edge} {unit}" if NUMBER_RUN.fullmatch(edge) else edge, Kind.LENGTH).number) for edge in edges)
    return Box((a, b, c))
