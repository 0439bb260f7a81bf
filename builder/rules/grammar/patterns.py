"""Patterns of words as the tables on prose write them, and their compiling into expressions.

    <pour> ... <water> <onto> <lye>

`<pour>` is one of the words of a group. `...` is a gap of at most six words, `...12` one of at most twelve. `word?` may be missing. `stir~`
is any form of a verb, `solidif*` any word that begins so, `lye!` that word itself and not "lye water", "lye jug". Articles and the like may
stand between any two words. Every other word may be a plural. Nothing depends on the case.
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache

from builder.model.teaching.word_pattern import Stems, WordPattern, stems_of
from builder.rules.grammar.orders import DETERMINERS
from builder.rules.grammar.passive import PARTICIPLES
from builder.words.fold import in_small_letters
from builder.words.spelling import american, british

GAP = 6
_BETWEEN = rf"""(?:[\s,()"'“”‘’/]+(?:(?:{DETERMINERS}|of|any|our)\b[\s]+){{0,3}})"""
_GAP = r"""(?:[\s,()"'“”‘’/-]+[\w°%.’'-]+)"""
_NO_COMPOUND = (
    r"(?![\s-]+(?:water|solution|liquor|jug|pot|cup|bottle|bucket|pan|pitcher|beaker|container|tub|station|table|bench|mix|mixture|page|sheet|spoon"
    r"|step|label|bowl|concentration|amount|weight|calculation)s?\b)"
)
_VOWELS = "aeiou"
LONGEST = 40  # signs of a beginning that is remembered: a "word" of a whole file has too many others.
_BEGINNING = re.compile(rf"\w{{1,{LONGEST}}}")
Groups = Mapping[str, tuple[str, ...]]


class PatternError(ValueError):
    """A pattern that names a group which nobody has defined."""


def compile_patterns(written: tuple[str, ...], groups: Groups) -> tuple[WordPattern, ...]:
    """Compile patterns; raise PatternError where one names an unknown group."""
    return tuple(compile_pattern(one, groups) for one in written)


def compile_pattern(written: str, groups: Groups) -> WordPattern:
    """Compile a pattern; raise PatternError where it names an unknown group."""
    made, gap = "", ""
    needs: list[Stems] = []
    for token in re.findall(r"<[^>]*>\??|\S+", written):
        if re.fullmatch(r"\.\.\.\d*", token):
            gap = rf"{_GAP}{{0,{int(token[3:] or GAP)}}}?"
            continue
        optional = token.endswith("?")
        word, stems = _any_of(tuple(_phrases(token.removesuffix("?"), groups)))
        between = gap + _BETWEEN if made else ""
        made += f"(?:{between}{word})?" if optional else between + word
        needs += [] if optional else [stems]
        gap = ""
    return WordPattern(written, made, tuple(needs))


@cache
def _any_of(phrases: tuple[str, ...]) -> tuple[str, Stems]:
    """Return the expression that finds one of some phrases, the longest first, and the stems of which one must be there."""
    alone = [phrase[:-1] for phrase in phrases if phrase.endswith("!")]
    others = [phrase for phrase in phrases if not phrase.endswith("!")]
    expression = "(?:" + "|".join([*([_one_of(others)] if others else []), *([_one_of(alone) + _NO_COMPOUND] if alone else [])]) + ")"
    return expression, _stems_of(phrases)


def _stems_of(phrases: tuple[str, ...]) -> Stems:
    """Return the stems of phrases. A phrase begins with a word, so that its stem, where it is plain, stands where a word begins."""
    stems = tuple(dict.fromkeys(map(_stem, phrases)))
    return stems_of(stems, all(map(_BEGINNING.fullmatch, stems)))


def _phrases(token: str, groups: Groups) -> Iterator[str]:
    """Yield the phrases that a token stands for, in both spellings, those of groups within groups too."""
    if not token.startswith("<"):
        yield from dict.fromkeys((token, american(token), british(token)))
        return
    name = token[1:-1]
    if name not in groups:
        raise PatternError(name)
    for phrase in groups[name]:
        yield from _phrases(phrase, groups)


def _one_of(phrases: list[str]) -> str:
    """Return the expression that finds one of some phrases, the longest first; what all share stands once, so that it is soon compiled.

    So do the endings that words share: whichever word is found, all of it is.
    """
    alone: dict[str, list[str]] = {}
    others = []
    for phrase in sorted(dict.fromkeys(phrases), key=len, reverse=True):
        *before, (begin, ending) = map(_form, _parts(phrase))
        if before or not _BEGINNING.fullmatch(phrase.rstrip("*~")):
            others.append(r"[\s-]+".join([*(one + its for one, its in before), begin + ending]))
        else:
            alone.setdefault(ending, []).append(begin)
    words = [(begins[0] if len(begins) == 1 else f"(?:{'|'.join(begins)})") + ending for ending, begins in alone.items()]
    return r"\b(?:" + "|".join([*others, *words]) + r")(?!\w)"


def _parts(phrase: str) -> list[str]:
    return in_small_letters(phrase.replace("-", " ")).split(" ")


def _stem(phrase: str) -> str:
    """Return the longest beginning that all forms of a word of a phrase share: a text that holds the phrase holds it."""
    return max(map(_beginning, _parts(phrase.removesuffix("!"))), key=len)


def _beginning(word: str) -> str:
    return word[:-1] if word.endswith("*") else word[:-2] if word.endswith(("~", "y")) else word.replace("’", "'").partition("'")[0]


def _form(word: str) -> tuple[str, str]:
    """Return what all forms of a word begin with, and the expression of how they go on."""
    if word.endswith("*"):
        return re.escape(word[:-1]), r"\w*"
    if word.endswith("~"):
        return _verb(word[:-1])
    if word.endswith("y") and word[-2:-1] not in _VOWELS:
        return re.escape(word[:-1]), "(?:y|ies)"
    return re.escape(word).replace("'", "['’]"), r"(?:e?s)?"


def _verb(base: str) -> tuple[str, str]:
    if base in PARTICIPLES:
        return f"(?:{''.join(_regular(base))}|{PARTICIPLES[base]})", ""
    return _regular(base)


def _regular(base: str) -> tuple[str, str]:
    if base.endswith("e"):
        return re.escape(base[:-1]), "(?:e|es|ed|ing)"
    if base.endswith("y") and base[-2] not in _VOWELS:
        return re.escape(base[:-1]), "(?:y|ies|ied|ying)"
    return re.escape(base), f"(?:e?s|{re.escape(base[-1])}?(?:ed|ing))?"
