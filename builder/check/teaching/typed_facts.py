"""A volume or a count that prose or a tool types, and that a home batch contradicts; of one pot also the batch of the class.

Decided: of moulds the batch of the class says nothing. Why: a class fills several, and a list of tools names one.
"""

import re
from collections.abc import Iterator
from fractions import Fraction

from builder.check.rule import CLASS, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import Place
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.lesson import Part, Where
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import orders
from builder.words.plain_number import plain_number

_ITS_NAME, _ITS_UNIT = r"(?P<vessel>moulds?|molds?|pots?|bowls?|pans?)\b", r"(?P<unit>L|litres?|liters?|mL)\b"
_VESSEL = re.compile(
    rf"\b{_ITS_NAME}(?:(?!\bmark\b)[^.;\d]){{0,60}}?(?P<number>\d+(?:\.\d+)?)\s*{_ITS_UNIT}",
    re.IGNORECASE,
)
_FIRST_ITS_SIZE = re.compile(
    rf"(?<![\d.])(?P<number>\d+(?:\.\d+)?)[\s-]?{_ITS_UNIT}(?:[\s-](?!of\b|in\b|into\b|for\b|to\b)\w+){{0,2}}[\s-]{_ITS_NAME}",
    re.IGNORECASE,
)
_ONE_POT = ("pot", "bowl", "pan")
_WORDS = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_COUNT = re.compile(
    rf"\b(?P<count>\d{{1,3}}|{'|'.join(_WORDS)}|second)\s+(?:\w+\s+)?(?P<noun>bars?|jars?|bottles?|tins?|tubes?|bags?|pouches)\b",
    re.IGNORECASE,
)
_FILLS = re.compile(r"\b(?:fill|make|cut|pour|divide|wrap|unmould|unmold)\b", re.IGNORECASE)


@rule_on(
    CLASS,
    FindingKind("typed-fact-differs", CAUTION, "A volume or a count is typed into a text, and the batch comes to another one."),
)
def find_typed_facts_that_differ(plan: ClassPlan) -> Iterator[Finding]:
    """Compare what the parts and the tools type with each home size, and with the batch of the class."""
    about = frozenset({WholeClass(plan.studio_class.key)})
    first = plan.made[0].make.recipe.text
    for made in plan.made:
        for tool in made.batch.recipe.tools:
            match = _vessel_in(tool)
            if match and (wrong := _too_small(made, match)):
                yield caution("typed-fact-differs", made.batch.recipe.at("tools"), wrong, _BRACE_VOLUME, about=about)
        for part in plan.studio_class.lesson.parts:
            recipe = part.recipe.text if part.recipe else first
            if recipe == made.make.recipe.text:
                for name, wrong, remedy in _in_part(part, made):
                    yield caution("typed-fact-differs", name, wrong, remedy, about=about)


_BRACE_VOLUME = (
    'Write {volume} in place of the number: each sheet then says what its own batch takes up, as in "a mould that holds {volume}".'
)
_BRACE_COUNT = "Write {containers}, or {each student} where in class each student makes fewer, so that each sheet says its own number."


def _in_part(part: Part, made: MadeProduct) -> Iterator[tuple[Place, str, str]]:
    for sentence in part.sentences:
        match = _vessel_in(sentence.words)
        wrong = _too_small(made, match, part.where) if match else ""
        if match and wrong:
            yield sentence.place(match.start(), match.end()), wrong, _BRACE_VOLUME
        if part.where is not Where.CLASS_ONLY:
            yield from _counts(sentence, part, made)


def _vessel_in(words: str) -> re.Match[str] | None:
    return _VESSEL.search(words) or _FIRST_ITS_SIZE.search(words)


def _too_small(made: MadeProduct, match: re.Match[str], where: Where = Where.EVERYWHERE) -> str:
    """Return which batch takes up more than a vessel is said to hold; empty where none does."""
    holds = Fraction(match["number"]) * (1 if match["unit"].casefold() == "ml" else 1000)
    batches = [(f"the home batch of {home.size.written}", home.batch.volume) for home in made.home if where is not Where.CLASS_ONLY]
    if match["vessel"].casefold() in _ONE_POT and where is not Where.HOME_ONLY:
        batches.append(("what the class makes in one pot", made.batch.volume))
    for name, volume in batches:
        if volume and volume.millilitres > holds:
            takes = plain_number(Fraction(round(volume.millilitres)))
            return f'"{match["number"]} {match["unit"]}" is too small for {name}, which takes up {takes} mL: it runs over.'
    return ""


def _counts(sentence: Sentence, part: Part, made: MadeProduct) -> Iterator[tuple[Place, str, str]]:
    if not part.by_hand or not orders(sentence, _FILLS):
        return
    for match in _COUNT.finditer(sentence.words):
        count = _number(match["count"].casefold(), match["noun"])
        other = next((home for home in made.home if count and home.batch.own.portions.yields != count), None)
        if other is not None:
            fills = other.batch.own.portions.yields
            wrong = f'"{match[0]}" goes to the sheets for home, and the home batch of {other.size.written} fills {fills}.'
            yield sentence.place(match.start(), match.end()), wrong, _BRACE_COUNT


def _number(word: str, noun: str) -> int | None:
    """Return a count; `second` is the last of two."""
    if word == "second":
        return 2 if not noun.endswith("s") else None
    if word in _WORDS:
        return _WORDS.index(word) + 2
    return int(word) if word.isdigit() else None
