"""Lye poured into oils: the warmth that a step promises of the pot, against the least that mixing gives.

What is read, in one part: the temperatures at which steps want lye and oils, the pouring, and what a later sentence says that the pot is
at. Saponifying warms the pot by an amount that nobody knows beforehand, so that no promise of more warmth is doubted; cooler than the least
that mixing gives it cannot be. What cools it or goes into it afterwards ends the comparison.
"""

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product

from builder.model.formula.warmth import MixedTooWarm, Warm
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part
from builder.model.teaching.prose import Sentence
from builder.reckon.formula.heat import mixed
from builder.rules.degrees import Degrees, all_degrees_in, degrees_meant, is_bound

ALIKE = "temperatures that are alike"
_LYE = re.compile(r"\b(?:lye|both)\b", re.IGNORECASE)
_OILS = re.compile(r"\b(?:oils?|fats?|butters?|both)\b", re.IGNORECASE)
# Each word is taken where it first stands and not looked for again, so that a sentence as long as a file takes no longer than its length.
LYE_INTO_OILS = re.compile(
    r"(?:^|[.;])(?>[^.;]*?\b(?:pour|add|stir|tip)\b)(?>[^.;]*?\blye\b)[^.;]*?\b(?:oils?|fats?|pot|butters?)\b", re.IGNORECASE
)
_PROMISES = re.compile(
    r"\b(?:pot|pan|mix|mixture|batch|soap|batter|they|it|together)\b[^.;]{0,30}?"
    r"\b(?:is|are|be|comes?|reach(?:es)?|falls?|drops?|sinks?|ends?)\b[^.;]{0,25}$",
    re.IGNORECASE,
)
_CHANGES = re.compile(r"\b(?:cool\w*|wait\w*|rest\w*|stand\w*|leave|cold|ice|iced|minutes?|hours?|overnight|heat\w*|warm)\b", re.IGNORECASE)


def lye_that_meets_oils(studio: Studio, batch: WorkedBatch, part: Part) -> Iterator[MixedTooWarm]:
    """Yield what the steps of a part promise of lye in oils that is cooler than it can be."""
    lye: Fraction | None = None
    oils: Fraction | None = None
    poured = False
    for step in part.steps:
        if poured and step.mentions:
            return
        for sentence in step.sentences:
            named, pours = all_degrees_in(sentence), LYE_INTO_OILS.search(sentence.words)
            later = [one for one in named if poured or (pours and one.begin > pours.end())]
            after = [one for one in later if _PROMISES.search(sentence.words[: one.begin])]
            if not poured:
                lye, oils = _warmths(sentence, [one for one in named if one not in after], lye, oils)
            if poured and _CHANGES.search(sentence.words):
                return
            if after and not _CHANGES.search(sentence.words) and not _is_open(sentence, after[0]):
                if lye is not None and oils is not None:
                    yield from _compared(studio, batch, lye, oils, after[0])
                return
            poured = poured or pours is not None


def _is_open(sentence: Sentence, degrees: Degrees) -> bool:
    """Tell whether something is only to stay below a temperature, or not to have it."""
    return is_bound(sentence, degrees) or degrees not in degrees_meant(sentence)


def _warmths(
    sentence: Sentence, named: Sequence[Degrees], lye: Fraction | None, oils: Fraction | None
) -> tuple[Fraction | None, Fraction | None]:
    """Return the least at which lye and oils are after a sentence, in degC; None where that is not known."""
    of_lye, of_oils = _LYE.search(sentence.words), _OILS.search(sentence.words)
    if not named or not (of_lye or of_oils):
        return lye, oils
    least = [None if _is_open(sentence, one) else one.low for one in named]
    if len(named) > 2 or (len(named) == 2 and not (of_lye and of_oils)):
        return (None if of_lye else lye), (None if of_oils else oils)
    if of_lye and of_oils:
        first, last = (least[0], least[-1]) if of_lye.start() <= of_oils.start() else (least[-1], least[0])
        return first, last
    return (least[0], oils) if of_lye else (lye, least[0])


def _compared(studio: Studio, batch: WorkedBatch, lye: Fraction, oils: Fraction, says: Degrees) -> Iterator[MixedTooWarm]:
    column, constants = batch.grams, studio.constants
    of_lye, of_fat = constants["range of the specific heat of soap lye"], constants["range of the specific heat of fat"]
    held = product((of_lye.low, of_lye.highest), (of_fat.low, of_fat.highest))
    solution = (column.alkali + column.lye_water).grams
    least = min(mixed([Warm(solution, one, lye), Warm(column.oils.grams, two, oils)]) for one, two in held)
    if says.high < least - constants[ALIKE].typical:
        yield MixedTooWarm(says.high, lye, oils, least, says.place)
