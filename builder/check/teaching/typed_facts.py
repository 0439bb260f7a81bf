"""A volume or a count that prose or a tool types, and that a home batch contradicts."""

import re
from collections.abc import Iterator
from fractions import Fraction

from builder.check.rule import CLASS, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import Place
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan, HomeBatch, MadeProduct
from builder.model.teaching.lesson import Part, Where
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import orders
from builder.words.plain_number import plain_number

_VESSEL = re.compile(
    r"\b(?P<vessel>moulds?|molds?|pots?|bowls?|pans?)\b(?:(?!\bmark\b)[^.;\d]){0,60}?(?P<number>\d+(?:\.\d+)?)\s*(?P<unit>L|litres?|liters?|mL)\b",
    re.IGNORECASE,
)
_WORDS = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_COUNT = re.compile(
    rf"\b(?P<count>\d{{1,3}}|{'|'.join(_WORDS)}|second)\s+(?:\w+\s+)?(?P<noun>bars?|jars?|bottles?|tins?|tubes?|bags?|pouches)\b",
    re.IGNORECASE,
)
_FILLS = re.compile(r"\b(?:fill|make|cut|pour|divide|wrap|unmould|unmold)\b", re.IGNORECASE)


@rule_on(
    CLASS,
    FindingKind(
        "typed-fact-differs", CAUTION, "A volume or a count is typed into a text for home, and the home batch comes to another one."
    ),
)
def find_typed_facts_that_differ(plan: ClassPlan) -> Iterator[Finding]:
    """Compare what the parts and the tools of a take-home sheet type with each of its sizes."""
    about = frozenset({WholeClass(plan.studio_class.key)})
    first = plan.made[0].make.recipe.text
    for made in plan.made:
        for tool in made.batch.recipe.tools:
            match = _VESSEL.search(tool)
            if match and (small := _too_small(made, match)):
                yield caution("typed-fact-differs", made.batch.recipe.at("tools"), _volume(match, small), _BRACE_VOLUME, about=about)
        for part in plan.studio_class.lesson.parts:
            recipe = part.recipe.text if part.recipe else first
            if part.where is not Where.CLASS_ONLY and recipe == made.make.recipe.text:
                for name, wrong, remedy in _in_part(part, made):
                    yield caution("typed-fact-differs", name, wrong, remedy, about=about)


_BRACE_VOLUME = (
    'Write {volume} in place of the number: each sheet then says what its own batch takes up, as in "a mould that holds {volume}".'
)
_BRACE_COUNT = "Write {containers}, or {each student} where in class each student makes fewer, so that each sheet says its own number."


def _in_part(part: Part, made: MadeProduct) -> Iterator[tuple[Place, str, str]]:
    for sentence in part.sentences:
        match = _VESSEL.search(sentence.words)
        small = _too_small(made, match) if match else None
        if match and small:
            yield sentence.place(match.start(), match.end()), _volume(match, small), _BRACE_VOLUME
        yield from _counts(sentence, part, made)


def _too_small(made: MadeProduct, match: re.Match[str]) -> HomeBatch | None:
    """Return the first home batch that takes up more than a vessel is said to hold."""
    holds = Fraction(match["number"]) * (1 if match["unit"].casefold() == "ml" else 1000)
    return next((home for home in made.home if home.sheet.volume and home.sheet.volume.millilitres > holds), None)


def _volume(match: re.Match[str], home: HomeBatch) -> str:
    assert home.sheet.volume is not None
    takes = plain_number(Fraction(round(home.sheet.volume.millilitres)))
    typed = f'"{match["number"]} {match["unit"]}"'
    return f"{typed} is too small for the home batch of {home.size.written}, which takes up {takes} mL: it runs over."


def _counts(sentence: Sentence, part: Part, made: MadeProduct) -> Iterator[tuple[Place, str, str]]:
    if not part.by_hand or not orders(sentence, _FILLS):
        return
    for match in _COUNT.finditer(sentence.words):
        count = _number(match["count"].casefold(), match["noun"])
        other = next((home for home in made.home if count and home.sheet.own.portions.yields != count), None)
        if other is not None:
            fills = other.sheet.own.portions.yields
            wrong = f'"{match[0]}" goes to the sheets for home, and the home batch of {other.size.written} fills {fills}.'
            yield sentence.place(match.start(), match.end()), wrong, _BRACE_COUNT


def _number(word: str, noun: str) -> int | None:
    """Return a count; `second` is the last of two."""
    if word == "second":
        return 2 if not noun.endswith("s") else None
    if word in _WORDS:
        return _WORDS.index(word) + 2
    return int(word) if word.isdigit() else None
