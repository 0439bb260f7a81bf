"""The styles of a page or sheet as rules: which declarations reach an element in a medium, and which of them wins (CSS Cascading 4).

Decided: a rule of which it cannot be told whether it holds (a width, a preference) is taken to hold. Why: on some screen it does.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache
from itertools import product
from typing import Any

import cssselect2
import tinycss2

# An element with what lies around it and in it.
Box = Any
_HOLDING_RULES = ("media", "supports", "layer", "container", "scope")
_DARK, _LIGHT = re.compile(r"prefers-color-scheme:\s*dark"), re.compile(r"prefers-color-scheme:\s*light")
_NOT_MET = re.compile(r"forced-colors:\s*active|prefers-contrast")

# A selector that is longer with those around it than anybody writes reaches nothing.
_LONGEST = 100_000


class Medium(Enum):
    """In what something is read."""

    DAY = "a screen by day"
    NIGHT = "a screen by night"
    PAPER = "paper"


@dataclass(frozen=True)
class Style:
    """One stylesheet. `own` is the file in `layouts/` where it is the studio's, and empty where it is ours."""

    text: str
    own: str = ""


@dataclass(frozen=True)
class Declared:
    """One declaration: its property, its value as it is written in small letters, and where it stands; `own` as of its style."""

    name: str
    value: str
    own: str
    line: int
    column: int = 1


# A selector, a medium in which it counts, and a declaration with whether it is important.
_Rule = tuple[Any, Medium, tuple[Declared, bool]]


class StyleRules:
    """The rules of several styles, in order."""

    def __init__(self, styles: Sequence[Style]) -> None:
        """Read the styles; a rule that cannot be read reaches nothing, as in a browser."""
        self._matchers = {medium: cssselect2.Matcher() for medium in Medium}
        for style in styles:
            for selector, medium, declared in _rules_of(style):
                self._matchers[medium].add_selector(selector, declared)

    def matched(self, box: Box, medium: Medium) -> Iterator[tuple[Declared, bool]]:
        """Yield the declarations of the rules that an element meets, the weakest first, each with whether it is important."""
        for _, _, pseudo, payload in sorted(self._matchers[medium].match(box), key=lambda one: one[:2]):
            if pseudo is None:
                yield payload


@lru_cache(maxsize=64)
def _rules_of(style: Style) -> tuple[_Rule, ...]:
    rules = tinycss2.parse_stylesheet(style.text, skip_comments=True, skip_whitespace=True)
    return tuple(_rules_in(rules, style.own, frozenset(Medium), ""))


def _rules_in(rules: Iterable[Any], own: str, media: frozenset[Medium], within: str) -> Iterator[_Rule]:
    """Yield rules; `within` are the selectors of the rule in which they stand (CSS Nesting 1)."""
    for rule in rules:
        if rule.type == "at-rule" and rule.content is not None and rule.lower_at_keyword in _HOLDING_RULES:
            some = media & _media(tinycss2.serialize(rule.prelude)) if rule.lower_at_keyword == "media" else media
            yield from _rules_in_body(rule.content, own, some, within)
        elif rule.type == "qualified-rule":
            asked = tinycss2.serialize(rule.prelude).strip()
            if within:
                asked = asked.replace("&", f":is({within})") if "&" in asked else f":is({within}) {asked}"
            if len(asked) > _LONGEST:
                continue
            yield from _rules_in_body(rule.content, own, media, asked)


def _rules_in_body(content: Any, own: str, media: frozenset[Medium], selectors: str) -> Iterator[_Rule]:
    inside = tinycss2.parse_blocks_contents(content, skip_comments=True, skip_whitespace=True)
    declared = list(_declared(inside, own))
    try:
        compiled = cssselect2.compile_selector_list(selectors) if declared and selectors else []
    except (cssselect2.SelectorError, SyntaxError):
        compiled = []
    yield from product(compiled, media, declared)
    yield from _rules_in((one for one in inside if one.type != "declaration"), own, media, selectors)


class StyledPage:
    """The elements of one document, under the rules of its styles.

    `templates` is the file of the studio whose elements have styles of their own, empty where all templates are ours.
    """

    def __init__(self, rules: Sequence[StyleRules], templates: str) -> None:
        """Take the rules, of which later ones win."""
        self._rules, self._templates = rules, templates
        self._winning: dict[tuple[Medium, int], dict[str, Declared]] = {}

    def reaching(self, box: Box, medium: Medium) -> Iterator[Declared]:
        """Yield all declarations that reach an element, the weakest first; those that stand in its own attribute come last."""
        found = [one for rules in self._rules for one in rules.matched(box, medium)]
        written = tinycss2.parse_blocks_contents(box.etree_element.get("style", ""), skip_comments=True, skip_whitespace=True)
        found += _declared(written, self._templates)
        yield from (declared for last in (False, True) for declared, important in found if important is last)

    def winning(self, box: Box, medium: Medium) -> dict[str, Declared]:
        """Return by its property the declaration that wins."""
        key = (medium, id(box.etree_element))
        if key not in self._winning:
            self._winning[key] = {declared.name: declared for declared in self.reaching(box, medium)}
        return self._winning[key]


def _declared(inside: Iterable[Any], own: str) -> Iterator[tuple[Declared, bool]]:
    for one in inside:
        if one.type == "declaration":
            value = " ".join(tinycss2.serialize(one.value).split()).lower()
            name = one.name if one.name.startswith("--") else one.lower_name
            yield Declared(name, value, own, one.source_line, one.source_column), one.important


def _media(condition: str) -> frozenset[Medium]:
    """Return the media in which a condition can hold."""
    asked = condition.lower()
    if _NOT_MET.search(asked):
        return frozenset()
    media = set(Medium)
    if "print" in asked and "screen" not in asked and "all" not in asked:
        media = {Medium.PAPER}
    elif "screen" in asked and "print" not in asked:
        media = {Medium.DAY, Medium.NIGHT}
    if _DARK.search(asked):
        media -= {Medium.DAY, Medium.PAPER}
    if _LIGHT.search(asked):
        media -= {Medium.NIGHT}
    return frozenset(media)
