"""The tables by which prose is judged: groups of words, the dangers that words of a step can bring, words for lye in the hand, claims."""

from builder.model.finding import Finding
from builder.model.teaching.claim import Claim, ClaimRules
from builder.model.teaching.lye_words import HandledWords
from builder.model.teaching.unsafe_step import UnsafeStep
from builder.model.teaching.word_pattern import Groups, compile_patterns
from builder.read.shapes.prose_tables import ClaimShape, LyeWordsShape, UnsafeStepShape
from builder.read.yaml.fit import Known, fit_each
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold

ABOUT_CLAIMS = "<claim talk>"


def read_word_groups(placed: PlacedYaml) -> dict[str, tuple[str, ...]]:
    """Read the groups of words of one file."""
    rows = placed.data if isinstance(placed.data, dict) else {}
    return {fold(name): tuple(map(str, words)) for name, words in rows.items() if isinstance(words, list)}


def read_unsafe_steps(placed: PlacedYaml, groups: Groups, known: Known, findings: list[Finding]) -> dict[str, UnsafeStep]:
    """Read the dangers of one file; raise PatternError where a pattern names a group that is not there."""
    return {
        key: UnsafeStep(
            key=key,
            stops=shape.kind == "stop",
            stops_in={region: kind == "stop" for region, kind in shape.kind_in.items()},
            says=compile_patterns(shape.says, groups),
            in_tools=compile_patterns(shape.in_tools, groups),
            near=compile_patterns(shape.near, groups),
            part_lacks=compile_patterns(shape.part_lacks, groups),
            only=frozenset(shape.only),
            younger_than=shape.younger_than,
            unless=compile_patterns(shape.unless, groups),
            told=shape.told,
            says_no_itself=shape.says_no_itself,
            why=shape.why,
            instead=shape.instead,
            source=shape.source,
            at=shape.at,
            known=shape.known,
        )
        for key, shape in fit_each(UnsafeStepShape, placed, findings, known)
    }


def read_lye_words(placed: PlacedYaml, groups: Groups, known: Known, findings: list[Finding]) -> dict[str, HandledWords]:
    """Read the words of one file by the hazard that they speak of; raise PatternError where a pattern names an unknown group."""
    return {
        key: HandledWords(
            compile_patterns(shape.in_titles, groups), compile_patterns(shape.says, groups), compile_patterns(shape.unless, groups)
        )
        for key, shape in fit_each(LyeWordsShape, placed, findings, known)
    }


def read_claims(placed: PlacedYaml, groups: Groups, known: Known, findings: list[Finding]) -> ClaimRules:
    """Read the claims of one file; raise PatternError where a pattern names a group that is not there."""
    claims = tuple(
        Claim(
            key=key,
            says=compile_patterns(shape.says, groups),
            stops_in=frozenset(shape.stops_in),
            cautions_in=frozenset(shape.cautions_in),
            near=compile_patterns(shape.near, groups),
            unless=compile_patterns(shape.unless, groups),
            only=frozenset(shape.only),
            says_no_itself=shape.says_no_itself,
            why=shape.why,
            instead=shape.instead,
            source=shape.source,
            at=shape.at,
            known=shape.known,
        )
        for key, shape in fit_each(ClaimShape, placed, findings, known)
    )
    return ClaimRules(claims, compile_patterns((ABOUT_CLAIMS,), groups))
