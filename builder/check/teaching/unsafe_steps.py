"""Words of a lesson, a recipe or a list of tools that tell people to do what hurts.

The dangers are those of `content/tables/unsafe_steps.yaml`. Each is looked for clause by clause; what is negated, only supposed, asked or
explained is no instruction (`rules/clauses.py`).

Decided: an unsafe step that stops cannot be accepted, a claim that stops can. Why: the one hurts people and can be written otherwise; for
the other a studio may hold a licence or a proof.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.check.batches import unite
from builder.check.rule import STUDIO, rule_on
from builder.check.teaching.statements import Said, Statement, judged_once, statements_of
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.remembered import remembered
from builder.model.studio import Studio
from builder.model.teaching.unsafe_step import UnsafeStep
from builder.model.teaching.word_pattern import WordPattern
from builder.rules.basis import basis
from builder.rules.clauses import Clause, clauses_of, explains, is_order, stands
from builder.rules.grammar.passive import as_order
from builder.rules.grammar.pattern_search import PatternIndex, Words, any_in

# Where in a sentence something begins and ends.
Met = tuple[int, int]


@rule_on(
    STUDIO,
    FindingKind("risky-step", CAUTION, "Words of a lesson or a recipe tell people to do what easily goes wrong."),
    FindingKind("unsafe-step", STOP, "Words of a lesson or a recipe tell people to do what hurts them."),
)
def find_unsafe_steps(studio: Studio) -> Iterator[Finding]:
    """Look for every danger in everything that the studio says; what several classes say in one passage is one finding."""
    region = studio.profile.region
    yield from unite(
        _finding(statement, danger, met, region)
        for statement in statements_of(studio)
        for danger, met in dangers_in(statement, studio.unsafe_steps)
    )


@judged_once
def dangers_in(statement: Statement, dangers: tuple[UnsafeStep, ...]) -> Iterator[tuple[UnsafeStep, Met]]:
    """Yield each danger that a statement tells people to meet, with where in it: of two on one ground in the same words, the first."""
    if statement.sentence.is_question:
        return
    # Found beforehand, since most sentences speak of none.
    possible = _index(dangers, statement.said is Said.TOOL).possible(statement.words)
    if not possible:
        return
    clauses = clauses_of(statement.sentence)
    told = [(clause, Words(clause.words)) for clause in (*clauses, *_as_orders(clauses))]
    ordered = [one for one in told if not explains(one[0])]
    orders = statement.said is not Said.TEXT or statement.sentence.affirmed or is_order(statement.sentence)
    found: list[tuple[UnsafeStep, Met]] = []
    for danger in (dangers[number] for number in possible):
        patterns = danger.in_tools if statement.said is Said.TOOL else danger.says
        if not (orders or danger.told) or not _concerns(danger, statement):
            continue
        met = next(_met(told if danger.told else ordered, patterns, danger), None)
        if met and _holds(danger, statement) and not any(_are_one(danger, met, *other) for other in found):
            found.append((danger, met))
    yield from found


@remembered(8)
def _index(dangers: tuple[UnsafeStep, ...], in_tools: bool) -> PatternIndex:
    return PatternIndex(danger.in_tools if in_tools else danger.says for danger in dangers)


def _concerns(danger: UnsafeStep, statement: Statement) -> bool:
    """Tell whether a danger is one of the recipe that a statement speaks of, and of the age of those who come."""
    if danger.younger_than is not None and (statement.youngest is None or statement.youngest >= danger.younger_than):
        return False
    if danger.from_age is not None and (statement.youngest is None or statement.youngest < danger.from_age):
        return False
    return danger.only <= statement.holds


def _holds(danger: UnsafeStep, statement: Statement) -> bool:
    """Tell whether what stands around a match leaves it a danger."""
    near = not danger.near or statement.said is Said.TOOL or any_in(danger.near, statement.near)
    return near and not any_in(danger.part_lacks, statement.part) and not any_in(danger.unless, statement.words)


def _are_one(danger: UnsafeStep, met: Met, other: UnsafeStep, met_before: Met) -> bool:
    """Tell whether two dangers are one fault: the same words meet them, and the same place of the same source tells of both."""
    overlap = met[0] < met_before[1] and met_before[0] < met[1]
    return overlap and (danger.source, danger.at) == (other.source, other.at)


def _as_orders(clauses: tuple[Clause, ...]) -> Iterator[Clause]:
    """Yield what clauses tell of as being done, as orders."""
    for clause in clauses:
        words = as_order(clause.words)
        if words is not None:
            yield replace(clause, words=words, in_another_order=True)


def _met(clauses: list[tuple[Clause, Words]], patterns: tuple[WordPattern, ...], danger: UnsafeStep) -> Iterator[Met]:
    for clause, words in clauses:
        for pattern in patterns:
            for match in words.find_all(pattern):
                if stands(clause, match, says_no_itself=danger.says_no_itself):
                    yield clause.span(match)


def _finding(statement: Statement, danger: UnsafeStep, met: Met, region: str) -> Finding:
    place = statement.sentence.place(*met)
    said = " ".join(statement.sentence.words[slice(*met)].split())
    wrong = f'"{said}": {danger.key}. {danger.why} ({basis(danger.source, danger.at, danger.known)})'
    if danger.stops_where(region):
        return stop("unsafe-step", place, wrong, danger.instead, about=statement.about)
    return caution("risky-step", place, wrong, danger.instead, about=statement.about)
