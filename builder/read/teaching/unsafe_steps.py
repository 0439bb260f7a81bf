"""The tables by which prose is judged: groups of words, the dangers that words of a step can bring, words for lye in the hand, claims."""

from builder.model.finding import Finding
from builder.model.teaching.claim import ClaimRules
from builder.model.teaching.flame_words import SpokenOf
from builder.model.teaching.lye_words import HandledWords
from builder.model.teaching.unsafe_step import UnsafeStep
from builder.model.teaching.word_pattern import WordPattern
from builder.read.known import NamesKnown
from builder.read.shapes.prose_tables import ClaimShape, FlameWordsShape, LyeWordsShape, UnsafeStepShape
from builder.read.shapes.shape import Shape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import fit_each
from builder.rules.grammar.patterns import Groups, compile_patterns
from builder.words.fold import fold

ABOUT_CLAIMS = "<claim talk>"


def read_word_groups(placed: PlacedData) -> dict[str, tuple[str, ...]]:
    """Read the groups of words of one file."""
    rows = placed.data if isinstance(placed.data, dict) else {}
    return {fold(name): tuple(map(str, words)) for name, words in rows.items() if isinstance(words, list)}


def read_unsafe_steps(placed: PlacedData, groups: Groups, known: NamesKnown, findings: list[Finding]) -> dict[str, UnsafeStep]:
    """Read the dangers of one file; raise PatternError where a pattern names a group that is not there."""
    return {
        entry.key: shape.make(entry, **_patterns(shape, groups, "says", "in_tools", "near", "part_lacks", "unless"))
        for shape, entry in fit_each(UnsafeStepShape, placed, findings, known)
    }


def read_lye_words(placed: PlacedData, groups: Groups, known: NamesKnown, findings: list[Finding]) -> dict[str, HandledWords]:
    """Read the words of one file by the hazard that they speak of; raise PatternError where a pattern names an unknown group."""
    rows = fit_each(LyeWordsShape, placed, findings, known)
    return {entry.key: HandledWords(**_patterns(shape, groups, "in_titles", "says", "unless")) for shape, entry in rows}


def read_flame_words(placed: PlacedData, groups: Groups, known: NamesKnown, findings: list[Finding]) -> dict[str, SpokenOf]:
    """Read the words for fire in the room of one file; raise PatternError where a pattern names an unknown group."""
    rows = fit_each(FlameWordsShape, placed, findings, known)
    return {entry.key: SpokenOf(**_patterns(shape, groups, "says", "unless")) for shape, entry in rows}


def read_claims(placed: PlacedData, groups: Groups, known: NamesKnown, findings: list[Finding]) -> ClaimRules:
    """Read the claims of one file; raise PatternError where a pattern names a group that is not there."""
    rows = fit_each(ClaimShape, placed, findings, known)
    claims = tuple(shape.make(entry, **_patterns(shape, groups, "says", "near", "unless")) for shape, entry in rows)
    return ClaimRules(claims, compile_patterns((ABOUT_CLAIMS,), groups))


def _patterns(shape: Shape, groups: Groups, *names: str) -> dict[str, tuple[WordPattern, ...]]:
    """Return the patterns that stand in some fields of a row, ready to be looked for."""
    return {name: compile_patterns(getattr(shape, name), groups) for name in names}
