"""A pattern of words, as tables of dangers and claims write it, becomes a regular expression.

    <pour> ... <water> <onto> <lye>

`<pour>` is one of the words of a group. `...` is a gap of at most six words, `...12` one of at most twelve. `word?` may be missing. `stir~`
is any form of a verb, `solidif*` any word that begins so. Articles and the like may stand between any two words. Every other word may be
a plural. Nothing depends on the case.
"""

import re
from collections.abc import Mapping

from builder.model.place import fold

GAP = 6
_BETWEEN = r"""(?:[\s,()"'“”‘’/]+(?:(?:the|a|an|some|all|of|any|your|our|their|its|this|that|these|those|each|every)\b[\s]+){0,3})"""
_VOWELS = "aeiou"
Groups = Mapping[str, tuple[str, ...]]


class PatternError(ValueError):
    """A pattern that names a group which nobody has defined."""


def compile_pattern(written: str, groups: Groups) -> re.Pattern[str]:
    """Compile a pattern; raise PatternError where it names an unknown group."""
    made, gap = "", ""
    for token in written.split():
        if re.fullmatch(r"\.\.\.\d*", token):
            gap = rf"(?:[\s,()\"'“”‘’/-]+[\w°%.’'-]+){{0,{int(token[3:] or GAP)}}}?"
            continue
        optional = token.endswith("?")
        word = _word(token.removesuffix("?"), groups)
        between = gap + _BETWEEN if made else ""
        made += f"(?:{between}{word})?" if optional else between + word
        gap = ""
    return re.compile(made, re.IGNORECASE)


def compile_any(written: tuple[str, ...], groups: Groups) -> re.Pattern[str] | None:
    """Compile several patterns as one that finds any of them; None where there are none."""
    return re.compile("|".join(compile_pattern(one, groups).pattern for one in written), re.IGNORECASE) if written else None


def _word(token: str, groups: Groups) -> str:
    if token.startswith("<") and token.endswith(">"):
        name = token[1:-1].replace("-", " ")
        if name not in groups:
            raise PatternError(name)
        return "(?:" + "|".join(_phrase(phrase, groups) for phrase in groups[name]) + ")"
    return _phrase(token, groups)


def _phrase(phrase: str, groups: Groups) -> str:
    if phrase.startswith("<"):
        return _word(phrase, groups)
    parts = fold(phrase).replace("_", " ").split(" ")
    return r"\b" + r"[\s-]+".join(_form(part) for part in parts) + r"\b"


def _form(word: str) -> str:
    if word.endswith("*"):
        return re.escape(word[:-1]) + r"\w*"
    if word.endswith("~"):
        return _verb(word[:-1])
    return re.escape(word).replace("'", "['’]") + r"(?:s|es)?"


def _verb(base: str) -> str:
    stem = re.escape(base[:-1])
    if base.endswith("e"):
        return f"{stem}(?:e|es|ed|ing)"
    if base.endswith("y") and base[-2] not in _VOWELS:
        return f"{stem}(?:y|ies|ied|ying)"
    last = re.escape(base[-1])
    return f"{re.escape(base)}(?:s|es|ed|ing|{last}ed|{last}ing)?"
