"""Words that make a medicine, a biocide or a false promise of what a class makes.

The claims are those of `content/tables/claims.yaml`, for the region of the studio. A studio that has the licence or the proof accepts a
finding with its reason. What is denied, asked or said about claims is none.
"""

import re
from collections.abc import Iterator

from builder.check.batches import unite
from builder.check.rule import STUDIO, rule_on
from builder.check.teaching.statements import Said, Statement, judged_once, statements_of
from builder.model.finding import Finding, Weight, caution, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, FindingKind
from builder.model.remembered import remembered
from builder.model.studio import Studio
from builder.model.teaching.claim import Claim, ClaimRules
from builder.rules.basis import basis
from builder.rules.clauses import Clause, clauses_of, stands
from builder.rules.grammar.pattern_search import PatternIndex, Words, any_in

Met = tuple[Claim, Clause, re.Match[str]]
_QUOTED = re.compile(r"[\"\u201c\u201d\u201e][^\"\u201c\u201d\u201e]*[\"\u201c\u201d]")


@rule_on(
    STUDIO,
    FindingKind("claim-doubtful", CAUTION, "A text makes a claim that misleads easily or that has to be proven."),
    FindingKind("claim-forbidden", ACCEPTABLE_STOP, "A text makes a claim that the law keeps for medicines or forbids for cosmetics."),
)
def find_claims(studio: Studio) -> Iterator[Finding]:
    """Look for claims in everything that the studio says; what several classes say in one passage is said once."""
    region = studio.profile.region
    found = (
        _finding(statement, claim, clause, match, region)
        for statement in statements_of(studio)
        for claim, clause, match in claims_in(statement, studio.claims)
    )
    yield from unite(finding for finding in found if finding)


@judged_once
def claims_in(statement: Statement, rules: ClaimRules) -> Iterator[Met]:
    """Yield each claim that a statement makes, whatever its weight, with where in it."""
    if statement.said is Said.TOOL or statement.sentence.is_question:
        return
    possible = _index(rules).possible(statement.words)
    if not possible or any_in(rules.about_claims, statement.words):
        return
    talks = any_in(rules.about_claims, Words(statement.heading)) or "label" in statement.heading.casefold()
    clauses = [(clause, Words(_without_quotes(clause.words) if talks else clause.words)) for clause in clauses_of(statement.sentence)]
    for claim in (rules.claims[number] for number in possible):
        met = next(_met(claim, clauses), None) if claim.only <= statement.holds else None
        if met and not any_in(claim.unless, statement.words) and (not claim.near or any_in(claim.near, statement.words)):
            yield claim, *met


@remembered(4)
def _index(rules: ClaimRules) -> PatternIndex:
    return PatternIndex(claim.says for claim in rules.claims)


def _without_quotes(words: str) -> str:
    """Return words with blanks for what stands in quotes."""
    return _QUOTED.sub(lambda quoted: " " * len(quoted[0]), words)


def _met(claim: Claim, clauses: list[tuple[Clause, Words]]) -> Iterator[tuple[Clause, re.Match[str]]]:
    for clause, words in clauses:
        for pattern in claim.says:
            for match in words.find_all(pattern):
                if stands(clause, match, says_no_itself=claim.says_no_itself):
                    yield clause, match


def _finding(statement: Statement, claim: Claim, clause: Clause, match: re.Match[str], region: str) -> Finding | None:
    weight = claim.weight_in(region)
    if weight is None:
        return None
    place = statement.sentence.place(clause.begin + match.start(), clause.begin + match.end())
    wrong = f'"{" ".join(match[0].split())}": {claim.key}. {claim.why} ({basis(claim.source, claim.at, claim.known)})'
    if weight is Weight.STOP:
        return stop("claim-forbidden", place, wrong, claim.instead, about=statement.about, acceptable=True)
    return caution("claim-doubtful", place, wrong, claim.instead, about=statement.about)
