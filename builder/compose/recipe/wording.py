"""Numbers and amounts as people read them: a space that does not break before each unit, no space before a percent sign.

Amounts that were weighed show the digits of the scale that weighs them, so that a reader can compare paper and display. Four digits
stand without grouping, as on a scale; longer numbers are grouped by a space. Rules: SI Brochure (number, space, symbol), CLDR English
(percent), 16 CFR 500.19 (an ounce converted from grams is cut, never rounded up).
"""

import re
from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor

from builder.compose.punctuation import decimals_spoken
from builder.model.recipe.column import Weighed
from builder.model.recipe.quantity import Duration, Mass, Temperature, Volume, WeighingUnit, sum_masses
from builder.model.recipe.working import SumRule
from builder.model.studio import Scale
from builder.units import grams_in, millilitres_in
from builder.words.glued import glued
from builder.words.listed import listed as listed
from builder.words.say import message, say, say_count
from builder.words.within import within as within_english

NBSP = "\u00a0"
UNIT_AFTER_NUMBER = re.compile(r"(?<=\d) (?=(?:g|kg|oz|fl oz|lb|mL|ml|L|cm|mm|min|h|°C|°F)\b)|(?<=\d[ \u00a0]fl) (?=oz\b)")
MINUS = "\u2212"

_OF_FAT = message("weight multiplied by saponification value, divided by 1000 and by the molar mass of potassium hydroxide")
_OF_ACID = message("weight multiplied by assay and by the protons that take lye, divided by molar mass")
RULES = {
    SumRule.SHARE_OF_TOTAL: message("the ingredient's part divided by all the parts"),
    SumRule.REST_OF_TOTAL: message("100% less what the other ingredients take"),
    SumRule.SHARE_OF_OILS: message("percent of the weight of the oils, as the recipe states it"),
    SumRule.PARTS: message("parts by weight, as the recipe states them"),
    SumRule.WEIGHTS: message("the weight that the recipe states"),
    SumRule.VOLUME_THROUGH_DENSITY: message("volume multiplied by density"),
    SumRule.DROPS_THROUGH_DROP_MASS: message("drops multiplied by the measured mass of one drop"),
    SumRule.FAT_EQUIVALENTS: _OF_FAT,
    SumRule.ACID_EQUIVALENTS: _OF_ACID,
    SumRule.FAT_EQUIVALENTS_AS_WEIGHED: _OF_FAT,
    SumRule.ACID_EQUIVALENTS_AS_WEIGHED: _OF_ACID,
    SumRule.ALKALI_EQUIVALENTS_AS_WEIGHED: message("weight multiplied by the share that is hydroxide, divided by molar mass"),
    SumRule.ALKALI_EQUIVALENTS_NEEDED: message("equivalents of fat less the superfat, plus equivalents of acid"),
    SumRule.ALKALI_WEIGHT: message("equivalents multiplied by molar mass, divided by purity"),
    SumRule.WATER_BY_CONCENTRATION: message("lye multiplied by (1 less the concentration), divided by the concentration"),
    SumRule.WATER_BY_RATIO: message("lye multiplied by the parts of water for each part of lye"),
    SumRule.WATER_BY_PERCENT_OF_OILS: message("weight of the oils multiplied by the percent"),
    SumRule.WEIGHT_WITH_THE_OILS: message(
        "the weight that the recipe states, multiplied by the oils and divided by those of the recipe as written"
    ),
    SumRule.WATER_IN_READY_MIXED_LYE: message("hydroxide divided by the strength of the solution, less the solid that it replaces"),
    SumRule.BATCH_FOR_CONTAINERS: message("containers multiplied by the weight of one"),
    SumRule.BATCH_FOR_PEOPLE: message("containers multiplied by the weight of one, plus what is shown and what stays in the pot"),
    SumRule.BATCH_FOR_MOULD: message("volume of the mould multiplied by the measured density"),
    SumRule.BATCH_FOR_TOTAL: message("the weight that was asked for"),
    SumRule.BATCH_FOR_OILS: message("the oils that were asked for, divided by the share of oils in the batch"),
    SumRule.RAISED_FOR_ROUNDING: message("the batch is a little larger, so that the rounded amounts still fill every container"),
    SumRule.ROUNDED_TO_THE_SCALE: message("the nearest whole division of the scale; lye always down"),
    SumRule.SUPERFAT_AS_WEIGHED: message(
        "1 less (equivalents of alkali less acid) divided by equivalents of fat, from the amounts as weighed"
    ),
    SumRule.SUPERFAT_LOWEST: message("the same, with every figure and every weighing off towards too much lye"),
    SumRule.SUPERFAT_HIGHEST: message("the same, with every figure and every weighing off towards too little lye"),
    SumRule.REQUIRED_HLB_OF_A_MIXTURE: message(
        "each oil's share of the oil phase multiplied by the HLB that it requires, added up (oil in water)"
    ),
    SumRule.HLB_OF_A_MIXTURE: message("each emulsifier's share of the emulsifiers multiplied by its HLB, added up"),
    SumRule.DROP_ESTIMATED: message("density divided by the fewest drops that a pharmacopoeial dropper makes of a millilitre of water"),
    SumRule.MOST_UNDER_A_LIMIT: message(
        "the room is the limit less what the batch holds, of the fill; less what other choices take, by what 1 g takes"
    ),
    SumRule.PORTIONS: message("what is to be filled divided by the weight of one portion, whole portions only"),
}


def rule_words(rule: SumRule) -> str:
    """Return the words for the rule of a working."""
    return say(RULES[rule])


def number(value: Fraction, places: int) -> str:
    """Write a number with exactly so many decimals, a half rounded away from zero."""
    return decimals_spoken(_in_digits(value, places))


def shortest(value: Fraction, places: int) -> str:
    """Write a number with at most so many decimals, zeros at the end left out."""
    return decimals_spoken(shortest_digits(value, places))


def shortest_digits(value: Fraction, places: int) -> str:
    """Write the same with a decimal point, whatever is spoken: for labels, which have their own languages, and for programs."""
    text = _in_digits(value, places)
    return text.rstrip("0").rstrip(".") if "." in text else text


def _in_digits(value: Fraction, places: int) -> str:
    scaled = (2 * abs(value.numerator) * 10**places + value.denominator) // (2 * value.denominator)  # half a digit is rounded up
    whole, rest = divmod(scaled, 10**places)
    digits = f"{whole:,}".replace(",", NBSP) if whole >= 10_000 else str(whole)
    sign = MINUS if value < 0 and scaled else ""
    return f"{sign}{digits}.{rest:0{places}d}" if places else f"{sign}{digits}"


def decimals_of(division: Fraction) -> int:
    """Return how many decimals a scale with this division shows; three at most."""
    return next((places for places in range(3) if (division * 10**places).denominator == 1), 3)


def in_unit(mass: Mass, unit: WeighingUnit) -> Fraction:
    """Return a mass as a number of a unit."""
    return mass.grams / grams_in(unit)


def fluid_ounces(millilitres: Fraction) -> Fraction:
    """Return a volume in US fluid ounces."""
    return millilitres / millilitres_in("fl oz")


def amount(mass: Mass, scales: Iterable[Scale], unit: WeighingUnit) -> str:
    """Write a mass with the digits of the finest of the scales that weighed it."""
    places = max((decimals_of(in_unit(scale.division, unit)) for scale in scales), default=0)
    return f"{number(in_unit(mass, unit), places)}{NBSP}{unit}"


def weighed(weighing: Weighed, unit: WeighingUnit) -> str:
    """Write one weighing as the display of its scale shows it."""
    return amount(weighing.mass, (weighing.scale,), unit)


def weighed_together(weighings: Sequence[Weighed], unit: WeighingUnit) -> str:
    """Write what several weighings make together."""
    return amount(sum_masses(w.mass for w in weighings), {w.scale for w in weighings}, unit)


def grams(mass: Mass) -> str:
    """Write a mass that is no single weighing: a portion, the most of a choice, what is left over. `reckon` has rounded it to a scale."""
    return f"{shortest(mass.grams, 3)}{NBSP}g"


def grams_at_least(mass: Mass) -> str:
    """Write how much has to stand ready, rounded up: from 100 g on to 1 g, from 10 g on to 0.1 g, else to 0.01 g."""
    places = 0 if mass.grams >= 100 else 1 if mass.grams >= 10 else 2
    return f"{shortest(Fraction(ceil(mass.grams * 10**places), 10**places), places)}{NBSP}g"


def ounces(mass: Mass) -> str:
    """Write a mass in ounces, cut to two decimals and never rounded up."""
    return f"{shortest(Fraction(floor(in_unit(mass, 'oz') * 100), 100), 2)}{NBSP}oz"


def finely_in_ounces(mass: Mass) -> str:
    """Write what was weighed in grams in ounces too, to compare: with as many decimals as the finest scale shows, cut."""
    return f"{number(Fraction(floor(in_unit(mass, 'oz') * 1000), 1000), 3)}{NBSP}oz"


def grams_and_ounces(mass: Mass, in_ounces: Mass | None = None) -> str:
    """Write a mass both ways: `113 g (3.98 oz)`; `in_ounces` is what a scale that reads in ounces shows of it, where there is one."""
    return f"{grams(mass)} ({ounces(mass) if in_ounces is None else _as_read_in_ounces(in_ounces)})"


def _as_read_in_ounces(mass: Mass) -> str:
    return f"{shortest(in_unit(mass, 'oz'), 3)}{NBSP}oz"


def volume_at_most(volume: Volume) -> str:
    """Write a volume that something has to hold, rounded up both ways: `750 mL (26 fl oz)`, `1.45 L (50 fl oz)`."""
    fifties = ceil(volume.millilitres / 50) * 50
    metric = f"{fifties}{NBSP}mL" if fifties < 1000 else f"{shortest(Fraction(fifties, 1000), 2)}{NBSP}L"
    return f"{metric} ({ceil(fluid_ounces(volume.millilitres))}{NBSP}fl{NBSP}oz)"


def percent(share: Fraction, places: int = 2) -> str:
    """Write a share with at most so many decimals: `0.5%`."""
    return percentage(shortest(share * 100, places))


def percentage(number: str) -> str:
    """Write the sign of percent behind a number."""
    return say("{number}%", number=number)


def temperature(degrees: Temperature) -> str:
    """Write a temperature both ways, in the order of the region: `70 °C (158 °F)`."""
    both = say("{celsius} °C ({fahrenheit} °F)", celsius=shortest(degrees.celsius, 1), fahrenheit=number(degrees.fahrenheit, 0))
    return both.replace(" °", f"{NBSP}°")


def reading(scale: Scale) -> str:
    """Return in words how fine a scale reads: `reads to 0.1 g`."""
    return say("reads to {weight}", weight=f"{shortest(in_unit(scale.division, scale.unit), 3)}{NBSP}{scale.unit}")


def capacity(scale: Scale) -> str:
    """Return in words how much a scale holds: `holds 5000 g`."""
    return say("holds {weight}", weight=f"{shortest(in_unit(scale.up_to, scale.unit), 2)}{NBSP}{scale.unit}")


def short_duration(minutes: int) -> str:
    """Write a length of time in units: `1 h 30 min`."""
    hours, rest = divmod(minutes, 60)
    parts = [f"{hours}{NBSP}h"] * bool(hours) + [f"{rest}{NBSP}min"] * bool(rest or not hours)
    return NBSP.join(parts)


def duration(minutes: int) -> str:
    """Write a length of time in words: `1 hour 30 minutes`."""
    hours, rest = divmod(minutes, 60)
    parts = [say_count("{count}\u00a0hour", "{count}\u00a0hours", hours)] * bool(hours)
    parts += [say_count("{count}\u00a0minute", "{count}\u00a0minutes", rest)] * bool(rest or not hours)
    return " ".join(parts)


def whole_minutes(length: Duration) -> int:
    """Return a duration in whole minutes."""
    return floor(length.minutes)


def counted(count: int, one: str, many: str) -> str:
    """Write a number with its noun: `1 bottle`, `4 bottles`."""
    return f"{count}{NBSP}{one if count == 1 else many}"


def within(name: str) -> str:
    """Write a name inside a sentence: as its translation has it, or the English (`builder/words/within.py`).

    A name may stand with a small letter where the translated one, that of a card, has a capital.
    """
    small = within_english(name)
    found = (said for english in (small, str(name), sentence(name)) if (said := say(english)) != english)
    return next(found, small)


def sentence(text: str) -> str:
    """Begin a text with a capital letter, the rest as it is; a word that has one behind its first letter, as pH, stays as it is."""
    return text if text[1:2].isupper() else text[:1].upper() + text[1:]


@lru_cache(4096)
def keep_together(html: str) -> str:
    """Keep each number of a written text with the unit that follows it on one line, and each sign with the word beside it."""
    return glued(UNIT_AFTER_NUMBER.sub(NBSP, html))


def figure(value: Fraction, unit: str) -> str:
    """Write a number of the sums, four decimals at most; a share is written as a percentage."""
    if unit == "of 1":
        return percent(value, 3)
    if unit == "of oils":
        return say("{share} of the oils", share=percent(value, 3))
    return f"{shortest(value, 4)}{NBSP}{unit}" if unit else shortest(value, 4)
