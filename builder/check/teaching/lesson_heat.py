"""Steps that promise a warmth that mixing does not give, a cooling for which the class has no time, or a heat in which water boils.

Decided: of lye poured into oils only a promise of less warmth than mixing can give is doubted, with the widest specific heats. Why:
saponifying warms the pot, and nobody knows by how much.
"""

import re
from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from builder.check.formula.heat import BOILS
from builder.check.rule import CLASS_IN_STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.formula.warmth import CooledTooSoon, Cools, MixedTooCool, MixedTooWarm
from builder.model.recipe.figure import Figure
from builder.model.recipe.quantity import Temperature
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import is_order
from builder.rules.degrees import Degrees, degrees_meant, is_bound
from builder.words.plain_number import plain_number

_IN_THE_POT = re.compile(r"\b(?:oils?|fats?|butters?|wax(?:es)?|lye|batter|soap|bases?|phases?|pot|jugs?)\b", re.IGNORECASE)
_TO_BE = re.compile(r"\b(?:should|must|has to|have to|need to|needs to)\b", re.IGNORECASE)
# What is not the pot, or no order: an oven, and what fat does at a heat.
_ELSEWHERE = re.compile(r"\b(?:oven|smokes?|flash\w*|burns?|boils?)\b", re.IGNORECASE)
# What stands before degrees that nobody wants of the pot: when to stop, the heat of a plate, or what a tool shows or bears.
_NOT_WANTED = re.compile(
    r"\bbefore\W+(?:about\W+)?$|\bbefore\W+(?:the|it|they)\b[^,;:]*$"
    r"|\b(?:withstands?|bears?|takes?|stands?|shows?|reads?)\W+(?:heat\W+)?(?:of\W+)?(?:(?:up\W+)?to\W+)?$"
    r"|\b(?:proof|resistant|safe|rated|stable|good)\W+(?:up\W+)?(?:to|for|at)\W+$"
    r"|\b(?:plate|hotplate|hob|stove|burner)\W+(?:is\W+)?(?:set\W+)?(?:to|at)\W+(?:about\W+)?$"
    r"|\bthermometer\W+(?:that|which|for|from|with|of|up)\b[^,;:]*\b(?:to|of)\W+$",
    re.IGNORECASE,
)
_NEAR = 120  # signs in which that is said.
_WHAT = {Cools.LYE: "the lye", Cools.BATCH: "the batch"}


@rule_on(
    CLASS_IN_STUDIO,
    FindingKind("mixed-too-cool", CAUTION, "What is mixed comes to less warmth than the step promises."),
    FindingKind("mixed-too-warm", CAUTION, "Lye and oils together are warmer than the step promises."),
    FindingKind("cooled-too-soon", CAUTION, "Something is to have cooled in less time than cooling takes."),
    FindingKind("hotter-than-boiling", CAUTION, "A step makes fat, lye or a base hotter than boiling water, which then spits out of it."),
)
def find_heat_that_cannot_be(plan: ClassPlan, studio: Studio) -> Iterator[Finding]:
    """Find what the steps of a class promise of heat and cannot keep."""
    about = frozenset({WholeClass(plan.studio_class.key)})
    for one in plan.heat:
        if isinstance(one, MixedTooCool):
            yield caution("mixed-too-cool", one.place, _mixed(one), _warm(one), about=about)
        elif isinstance(one, MixedTooWarm):
            yield caution("mixed-too-warm", one.place, _lye_in_oils(one), _cooler(one), about=about)
        else:
            yield caution("cooled-too-soon", one.place, _cooled(one), _wait(one), about=about)
    for part in plan.studio_class.lesson.parts:
        for step in part.steps:
            for degrees in (found for sentence in step.sentences for found in hotter_than(sentence, studio.constants[BOILS])):
                yield caution("hotter-than-boiling", degrees.place, _spits(degrees), _in_fahrenheit(degrees), about=about)


def hotter_than(sentence: Sentence, boils: Figure) -> Iterator[Degrees]:
    """Yield the degrees above those of boiling water to which a step brings what is in the pot; as steps do, in whole degrees."""
    ordered = is_order(sentence) or _TO_BE.search(sentence.words)
    if ordered and _IN_THE_POT.search(sentence.words) and not _ELSEWHERE.search(sentence.words):
        for found in degrees_meant(sentence):
            if (
                found.low > round(boils.highest)
                and not is_bound(sentence, found)
                and not _NOT_WANTED.search(sentence.words, found.begin - _NEAR, found.begin)
            ):
                yield found


def _spits(one: Degrees) -> str:
    return (
        f"{ceil(one.low)} °C is hotter than boiling water: lye, water and what holds some of it spit out of such a pot at once, fat so hot "
        "burns deeper, and no water bath brings anything there."
    )


def _in_fahrenheit(one: Degrees) -> str:
    meant = round(Temperature.of_fahrenheit(one.low).celsius)
    return f"If °F are meant, write them: {ceil(one.low)} °F are {meant} °C. If not, melt it in a water bath, as far as its fats ask for."


def _mixed(one: MixedTooCool) -> str:
    low, high, most = floor(one.low), ceil(one.high), ceil(one.set)
    sets = f" If all sets that may, it gives back heat, and the pot comes to {most} °C at the very most." if most > high else ""
    says, share = plain_number(one.says), round(100 * one.hot / (one.hot + one.cold))
    return (
        f"Melted fat is {share} % of what is then in the pot, and the oil is as warm as the room: together they come to {low} to {high} "
        f"°C, not to {says} °C.{sets} For {says} °C the melted fat would have to be at {ceil(one.needed)} °C. What is too cool sets, and a "
        "soap then looks thick before it has begun to react."
    )


def _warm(one: MixedTooCool) -> str:
    return (
        f"Let the step warm all the oils together, to {plain_number(one.says)} °C by the thermometer, or name the warmth that comes of it."
    )


def _lye_in_oils(one: MixedTooWarm) -> str:
    return (
        f"Lye at {plain_number(Fraction(round(one.lye)))} °C and oils at {plain_number(Fraction(round(one.oils)))} °C come to "
        f"{floor(one.least)} °C at the very least, not to {plain_number(Fraction(round(one.says)))} °C, and from then on the soap warms "
        "itself. What is hotter than expected burns worse, thickens faster, and can rise out of the pot."
    )


def _cooler(one: MixedTooWarm) -> str:
    return (
        f"Let both cool to about {plain_number(Fraction(round(one.says)))} °C before they meet, or name the warmth that comes of it. The "
        "thermometer decides."
    )


def _cooled(one: CooledTooSoon) -> str:
    how = "in cold water" if one.in_water else "in the open"
    return (
        f"{_WHAT[one.what].capitalize()} is to be at {plain_number(one.ends)} °C, and from when it is hot to the end of the part that "
        f"uses it the class has {one.given} minutes. So much of it takes {floor(one.least)} minutes {how} at the very least, in a wide pot."
    )


def _wait(one: CooledTooSoon) -> str:
    bath = "" if one.in_water else " Or say that it stands in cold water, in a basin from which nothing can splash into it."
    return (
        f"Put a wait or other parts before it is used, make it earlier, or make less of it.{bath} The thermometer decides, not the clock."
    )
