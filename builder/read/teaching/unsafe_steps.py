"""The tables by which prose is judged: groups of words, the dangers that words of a step can bring, words for lye in the hand, claims."""

from builder.model.finding import Finding
from builder.model.teaching.claim import Claim, ClaimRules
from builder.model.teaching.flame_words import SpokenOf
from builder.model.teaching.lye_words import HandledWords
from builder.model.teaching.unsafe_step import UnsafeStep
from builder.model.teaching.word_pattern import WordPattern
from builder.read.known import Known
from builder.read.shapes.prose_tables import ClaimShape, FlameWordsShape, LyeWordsShape, UnsafeStepShape
from builder.read.shapes.shape import Shape
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.rules.grammar.patterns import Groups, compile_patterns
from builder.words.fold import fold

ABOUT_CLAIMS = "<claim talk>"


def read_word_groups(placed: PlacedYaml) -> dict[str, tuple[str, ...]]:
    """Read the groups of words of one file."""
    rows = placed.data if isinstance(placed.data, dict) else {}
    return {fold(name): tuple(map(str, words)) for name, words in rows.items() if isinstance(words, list)}


def read_unsafe_steps(placed: PlacedYaml, groups: Groups, known: Known, findings: list[Finding]) -> dict[str, UnsafeStep]:
    """Read the dangers of one file; raise PatternError where a pattern names a group that is not there."""
    return {
        key: shape.make(
            UnsafeStep,
            key=key,
            stops=shape.kind == "stop",
            stops_in={region: kind == "stop" for region, kind in shape.kind_in.items()},
            only=frozenset(shape.only),
            **_patterns(shape, groups, "says", "in_tools", "near", "part_lacks", "unless"),
        )
        for key, shape in fit_each(UnsafeStepShape, placed, findings, known)
    }


def read_lye_words(placed: PlacedYaml, groups: Groups, known: Known, findings: list[Finding]) -> dict[str, HandledWords]:
    """Read the words of one file by the hazard that they speak of; raise PatternError where a pattern names an unknown group."""
    return {
        key: HandledWords(**_patterns(shape, groups, "in_titles", "says", "unless"))
        for key, shape in fit_each(LyeWordsShape, placed, findings, known)
    }


def read_flame_words(placed: PlacedYaml, groups: Groups, known: Known, findings: list[Finding]) -> dict[str, SpokenOf]:
    """Read the words for fire in the room of one file; raise PatternError where a pattern names an unknown group."""
    return {
        key: SpokenOf(**_patterns(shape, groups, "says", "unless")) for key, shape in fit_each(FlameWordsShape, placed, findings, known)
    }


def read_claims(placed: PlacedYaml, groups: Groups, known: Known, findings: list[Finding]) -> ClaimRules:
    """Read the claims of one file; raise PatternError where a pattern names a group that is not there."""
    claims = tuple(
        shape.make(
            Claim,
            key=key,
            stops_in=frozenset(shape.stops_in),
            cautions_in=frozenset(shape.cautions_in),
            only=frozenset(shape.only),
            **_patterns(shape, groups, "says", "near", "unless"),
        )
        for key, shape in fit_each(ClaimShape, placed, findings, known)
    )
    return ClaimRules(claims, compile_patterns((ABOUT_CLAIMS,), groups))


def _patterns(shape: Shape, groups: Groups, *names: str) -> dict[str, tuple[WordPattern, ...]]:
    """Return the patterns that stand in some fields of a row, ready to be looked for."""
    return {name: compile_patterns(getattr(shape, name), groups) for name in names}
