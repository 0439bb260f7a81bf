"""An amount that is typed into a lesson, beside what is worked out.

Drops and percentages of what students may choose are held against the most that a portion may take, percentages of other ingredients
against the recipe, weights against every weighing of the class, its groups and its home batches, in grams and in ounces.
"""

import re
from collections.abc import Iterable, Iterator
from fractions import Fraction

from builder.check.batches import batches_of
from builder.check.rule import ALL_CLASSES, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import clauses_of, stands
from builder.rules.part_recipe import recipe_of
from builder.words.fold import fold
from builder.words.plain_number import plain_number
from builder.words.scent import plain_scent

_TYPED = re.compile(
    r"(?<![\w.,])(?P<low>\d+(?:\.\d+)?)(?:\s*(?:to|-|\u2013|or)\s*(?P<high>\d+(?:\.\d+)?))?\s*"
    r"(?:(?P<drop>drops?)|(?P<share>%|percent|per cent)|(?P<g>grams?|g)|(?P<oz>oz|ounces?))(?!\w)"
    r"\s+(?:of\s+)?(?:the\s+|your\s+|each\s+)?(?P<of>[a-z][^,.;:()]*)",
    re.IGNORECASE,
)
_UNITS = {"drop": "drops", "share": "%", "g": "g", "oz": "oz"}
_HUNDRED = 100


@rule_on(
    ALL_CLASSES,
    FindingKind("amount-typed-differs", CAUTION, "An amount is typed into a lesson, and what is worked out for the class is another one."),
    FindingKind("amount-typed-too-high", STOP, "An amount is typed into a lesson that is more than a portion may take."),
)
def find_amounts_typed(plans: Iterable[ClassPlan], studio: Studio) -> Iterator[Finding]:
    """Compare the amounts that are typed into the parts of each lesson with those of the batches of its class on all dates."""
    of_class: dict[str, list[WorkedBatch]] = {}
    for plan in plans:
        of_class.setdefault(plan.studio_class.key, []).extend(
            one.worked for one in batches_of(plan, studio) if one.filling is one.worked.own
        )
    for key, batches in of_class.items():
        studio_class = studio.classes[key]
        for part in studio_class.lesson.parts:
            recipe = recipe_of(part, studio_class, studio)
            own = [batch for batch in batches if recipe and batch.recipe.key == recipe.key]
            for sentence in part.sentences:
                for match in _typed_in(sentence):
                    yield from _compare(sentence, match, own, key)


def _typed_in(sentence: Sentence) -> Iterator[re.Match[str]]:
    """Yield each amount that a sentence tells people to take; what it denies, supposes or asks is none."""
    if sentence.is_question:
        return
    for match in _TYPED.finditer(sentence.words):
        clause = next((one for one in clauses_of(sentence) if one.begin <= match.start() < one.begin + len(one.words)), None)
        inside = clause and _TYPED.search(clause.words, match.start() - clause.begin)
        if clause and inside and stands(clause, inside):
            yield match


def _compare(sentence: Sentence, match: re.Match[str], batches: list[WorkedBatch], class_key: str) -> Iterator[Finding]:
    typed, unit = Fraction(match["high"] or match["low"]), next(unit for group, unit in _UNITS.items() if match[group])
    place, about = sentence.place(match.start(), match.end()), frozenset({WholeClass(class_key)})
    written = " ".join(match[0].split())
    for name, most in _most(match["of"], unit, batches):
        if typed > most:
            number = plain_number(most)
            wrong = f'"{written}": a portion may take at most {number} {unit} of {name}.'
            yield stop("amount-typed-too-high", place, wrong, f"Write {{{fold(name)}}} in braces, or no more than {number}.", about=about)
        return
    known = list(_worked_out(match["of"], unit, batches))
    if known and not any(_agrees(match[end], value) for _, value in known for end in ("low", "high") if match[end]):
        name, value = known[0]
        wrong = f'"{written}": what is worked out for {name} is {plain_number(value)} {unit}, and changes with the people who come.'
        yield caution("amount-typed-differs", place, wrong, f"Write {{{fold(name)}}} in braces in place of the number.", about=about)


def _most(said: str, unit: str, batches: Iterable[WorkedBatch]) -> Iterator[tuple[str, Fraction]]:
    """Yield the most of a chosen option that any portion may take, in drops or percent; the largest of all batches."""
    found: dict[str, Fraction] = {}
    for batch in batches:
        for dose in (dose for filling in batch.fillings for dose in filling.doses):
            for one in dose.each:
                most = Fraction(one.drops or 0) if unit == "drops" else dose.share * _HUNDRED
                if _means(said, one.option) and (unit == "%" or (unit == "drops" and one.drop)):
                    found[one.option] = max(found.get(one.option, Fraction(0)), most)
    yield from found.items()


def _worked_out(said: str, unit: str, batches: Iterable[WorkedBatch]) -> Iterator[tuple[str, Fraction]]:
    for batch in batches:
        if unit == "%":
            oils = sum((line.share for line in batch.lines if line.ingredient.counts_as.is_oil), Fraction(0))
            for line in (line for line in batch.lines if _means(said, line.ingredient.name)):
                yield line.ingredient.name, line.share * _HUNDRED
                if oils:
                    yield line.ingredient.name, line.share / oils * _HUNDRED
        elif unit != "drops":
            for column in batch.columns:
                for w in column.weighed:
                    if column.unit == unit and _means(said, w.line.ingredient.name):
                        yield w.line.ingredient.name, w.mass.grams / w.scale.grams_per_unit


def _agrees(typed: str, value: Fraction) -> bool:
    """Tell whether a number as it is typed is a value to its last digit."""
    return abs(Fraction(typed) - value) < Fraction(1, 10 ** len(typed.partition(".")[2]))


def _means(said: str, name: str) -> bool:
    """Tell whether words begin with a name, or with the name without what kind of oil it is."""
    words, whole = fold(said), fold(name)
    return any(words == one or words.startswith(f"{one} ") for one in (whole, plain_scent(whole)))
