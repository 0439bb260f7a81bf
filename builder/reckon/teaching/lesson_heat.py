"""The heat that a lesson speaks of, against what mixing gives and what cooling takes.

What is read: an order to warm, heat or melt; weighings before it (they are hot) and after it (they are cool); a temperature that a later
step names. Where a step says too little to know, nothing is said: the least time takes the widest pot, the most heat given off, and all
the time from when it was hot until the part that uses it ends.

Decided: heat of the students' or the teacher's steps lingers in the students' later parts on that recipe until a wait or `cooled`. Why:
who pours hot balm names only the tin, whoever has melted it.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from builder.model.formula.warmth import CooledTooSoon, Cools, MixedTooCool, MixedTooWarm, Warm
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.figure import Figure
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part, Step, Where
from builder.model.teaching.prose import Sentence
from builder.model.teaching.timed_part import TimedPart
from builder.reckon.formula.heat import OF_FAT, OF_LOTION, OF_LYE, ROOM, cooling, mixed, warmed_by_setting
from builder.reckon.teaching.lye_meets_oils import LYE_INTO_OILS, lye_that_meets_oils
from builder.rules.clauses import orders
from builder.rules.degrees import Degrees, degrees_in, is_bound
from builder.rules.hands.named_amounts import weighed_as

_HEATS = re.compile(r"\b(?:warm|heat|melt)\b", re.IGNORECASE)
_POURS = re.compile(r"\b(?:pour|add|tip|stir|scrape|combine|mix)\b", re.IGNORECASE)
_POT = re.compile(r"\b(?:pot|pan|melt(?:ed)?|fats?|butters?)\b", re.IGNORECASE)
_OILS = re.compile(r"\b(?:oils?|pot|pan|fats?|butters?|melt|batch)\b", re.IGNORECASE)
_COOLS = re.compile(r"\b(?:cool\w*|below|under|down to|come down|wait)\b", re.IGNORECASE)
_IN_COLD = re.compile(r"\b(?:cold water|ice|iced|basin|sink)\b", re.IGNORECASE)
HeatSaid = MixedTooCool | MixedTooWarm | CooledTooSoon


def reckon_lesson_heat(studio: Studio, batch: WorkedBatch, parts: Iterable[Part], timeline: Iterable[TimedPart]) -> tuple[HeatSaid, ...]:
    """Return what the parts on one batch say of heat that cannot be. `parts` are all, `timeline` those on the clock of the class."""
    parts = tuple(parts)
    found: list[HeatSaid] = []
    for left_out in (Where.HOME_ONLY, Where.CLASS_ONLY):
        found += _mixes(studio, batch, (step for part in parts if part.where is not left_out for step in part.steps))
    if batch.grams.lye is not None:
        found += [one for part in parts for one in lye_that_meets_oils(studio, batch, part)]
    timed = [one for one in timeline if one.part in parts]
    found += [*_lye(studio, batch, timed), *_batch(studio, batch, timed)]
    return tuple({one.place: one for one in found}.values())


def _sentences(part: Part) -> Iterator[Sentence]:
    return (sentence for step in part.steps for sentence in step.sentences)


def _mixes(studio: Studio, batch: WorkedBatch, steps: Iterable[Step]) -> Iterator[MixedTooCool]:
    hot: list[Weighed] = []
    cold: list[Weighed] = []
    heat: tuple[Fraction, Fraction] | None = None
    warmed = poured = False
    for step in steps:
        named = weighed_as(studio, batch, step.mentions)
        fats = [w for w in named if w.line.ingredient.counts_as.is_oil and w not in hot and w not in cold]
        (cold if warmed else hot).extend(fats)
        for sentence in step.sentences:
            degrees = degrees_in(sentence)
            if orders(sentence, _HEATS):
                hot, cold, warmed, poured = [*hot, *cold], [], bool(hot), False
                heat = (degrees.low, degrees.high) if degrees else _melted(hot, studio.constants)
            elif cold and _POURS.search(sentence.words) and (not fats or _POT.search(sentence.words)):
                poured = True
            if degrees and heat and cold and poured and _OILS.search(sentence.words) and not is_bound(sentence, degrees):
                yield from _compared(hot, cold, heat, degrees, studio.constants)
                hot, cold, heat = [*hot, *cold], [], None


def _melted(fats: list[Weighed], constants: Mapping[str, Figure]) -> tuple[Fraction, Fraction] | None:
    """Return at what fats are that have just been melted: from what melts the highest of them to a few degrees above. None of liquids."""
    melting = [melts for w in fats if (melts := w.line.ingredient.figure("melting point")) and melts.highest > constants[ROOM].typical]
    if not melting:
        return None
    return max(one.low for one in melting), max(one.highest for one in melting) + constants["warmer than what melts"].highest


def _compared(
    hot: list[Weighed],
    cold: list[Weighed],
    heat: tuple[Fraction, Fraction],
    degrees: Degrees,
    constants: Mapping[str, Figure],
) -> Iterator[MixedTooCool]:
    room, held = constants[ROOM].typical, constants[OF_FAT].typical
    warm, cool = (sum((w.mass.grams for w in several), Fraction(0)) for several in (hot, cold))
    if not warm:
        return
    ends = [[Warm(warm, held, one), Warm(cool, held, room)] for one in heat]
    low, high = (max(mixed(parts), room) for parts in ends)
    says = degrees.low
    if high >= says - constants["temperatures that are alike"].typical:
        return
    # What sets warms the pot, but never above where it melts again.
    most, fusion = high, constants["heat of fusion of a fat or wax"].highest
    sets = [(w, melts.highest) for w in hot if (melts := w.line.ingredient.figure("melting point"))]
    for w, melts_at in sorted(sets, key=lambda one: one[1]):
        heat_of = w.line.ingredient.figure("heat of fusion")
        gain = warmed_by_setting(ends[1], w.mass.grams, heat_of.highest if heat_of else fusion) - high
        most = max(most, min(most + gain, melts_at))
    needed = (says * (warm + cool) - room * cool) / warm
    yield MixedTooCool(says, warm, cool, low, high, most, needed, degrees.place)


def _lye(studio: Studio, batch: WorkedBatch, timed: list[TimedPart]) -> Iterator[CooledTooSoon]:
    """Compare the time from the beginning of the part in which the lye is made to the end of that in which it is poured."""
    made = next((one for one in timed if _makes_lye(studio, batch, one.part)), None)
    used = next((one for one in timed if any(LYE_INTO_OILS.search(sentence.words) for sentence in _sentences(one.part))), None)
    if made is None or used is None or batch.dissolving is None or used.begins < made.begins:
        return
    column, begins = batch.grams, (batch.dissolving.least, batch.dissolving.most)
    between = [sentence for one in timed[timed.index(made) : timed.index(used) + 1] for sentence in _sentences(one.part)]
    in_water = any(_IN_COLD.search(sentence.words) and _COOLS.search(sentence.words) for sentence in between)
    in_water = in_water or any(re.search(r"\bice\b|stand\w* .*\bcold water\b", sentence.words, re.IGNORECASE) for sentence in between)
    for sentence in _sentences(made.part):
        degrees = degrees_in(sentence)
        if degrees is None or not _COOLS.search(sentence.words):
            continue
        ends = degrees.high
        takes = cooling(
            column.alkali + column.lye_water, studio.constants[OF_LYE].typical, begins, ends, studio.constants, in_water=in_water
        )
        if takes is not None and takes.least > used.ends - made.begins:
            yield CooledTooSoon(Cools.LYE, ends, used.ends - made.begins, takes.least, in_water, degrees.place)


def _makes_lye(studio: Studio, batch: WorkedBatch, part: Part) -> bool:
    named = weighed_as(studio, batch, part.mentions)
    return any(w.line.role is Role.ALKALI and w.line.strength is None for w in named)


def _batch(studio: Studio, batch: WorkedBatch, timed: list[TimedPart]) -> Iterator[CooledTooSoon]:
    """Compare the time from the end of the part that heats last to the end of the part that wants the batch cool."""
    hottest = max((phase.heat_to.celsius for phase in batch.recipe.phases if phase.heat_to), default=None)
    if hottest is None or not any(one.what is Cools.BATCH for one in batch.cools):
        return
    heated: TimedPart | None = None
    since: list[Sentence] = []
    for one in timed:
        for sentence in _sentences(one.part):
            since.append(sentence)
            degrees = degrees_in(sentence)
            if orders(sentence, _HEATS):
                heated, since = one, []
            elif degrees and heated and is_bound(sentence, degrees) and degrees.high < hottest:
                begins = heated.ends if heated is not one else heated.begins
                in_water = any(_IN_COLD.search(other.words) for other in (*since, *_sentences(one.part)))
                held = studio.constants[OF_LOTION].typical
                takes = cooling(batch.grams.total, held, (hottest, hottest), degrees.high, studio.constants, in_water=in_water)
                if takes is not None and takes.least > one.ends - begins:
                    yield CooledTooSoon(Cools.BATCH, degrees.high, one.ends - begins, takes.least, in_water, degrees.place)
                heated = None
