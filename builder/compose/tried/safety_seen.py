"""What a document says of dangers and of first aid, and which style of the studio keeps it from being read.

A caution is read if its words are there, large enough and of another colour than what lies behind them. Any rule of the studio that takes
them away counts, also where another brings them back; sizes and colours are judged as they come out, by day, by night and on paper.

Decided: the least size is that of a warning on a label, 1/16 inch (21 CFR 740.2(b), `type_heights.csv`), the least contrast that of WCAG
2.2 criterion 1.4.3. What lies over a caution, or is no colour, cannot be judged without a browser: the reference says so.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

import cssselect2
import tinyhtml5
from tinycss2.color4 import parse_color

from builder.compose.tried.style_rules import Box, Declared, Medium, Style, StyledPage, StyleRules
from builder.rules.look.colours import LEAST, contrast, mixed
from builder.words.spelling import american

_GONE = {
    "display": re.compile("none"),
    "visibility": re.compile("hidden|collapse"),
    "content-visibility": re.compile("hidden"),
    "clip-path": re.compile("(?!none|initial|unset|revert)"),
    "clip": re.compile(r"rect"),
    "transform": re.compile(r".*(scale[xy]?\(\s*0*\.?0*\s*[,)]|translate\w*\(\s*-?\d{3,})"),
    "scale": re.compile(r"0*\.?0*( |$)"),
    "zoom": re.compile(r"0*\.?0*%?$"),
    "mask": re.compile("(?!none|initial|unset|revert)"),
    "filter": re.compile(r".*(opacity|blur)\("),
}
_EDGES = ("left", "right", "top", "bottom", "inset", "text-indent", "margin-left", "margin-top", "margin")
_EXTENTS = ("height", "max-height", "block-size", "max-block-size", "width", "max-width")
_OVERFLOWS = ("overflow", "overflow-x", "overflow-y", "overflow-block")
_FAR = -400.0
_INHERITED = ("inherit", "currentcolor", "unset")
# Lengths in CSS pixels (CSS Values and Units 4, 6.2), and words for sizes beside the usual one (CSS Fonts 4, 2.5.1).
_PIXELS = {"px": 1.0, "pt": 96 / 72, "pc": 16.0, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96.0, "q": 96 / 101.6}
_USUAL = 16.0
_WORDS = {"xx-small": 9 / 16, "x-small": 10 / 16, "small": 13 / 16, "medium": 1.0, "large": 18 / 16, "x-large": 1.5, "xx-large": 2.0}
_LENGTH = re.compile(r"(-?[\d.]+)([a-z]+|%)?$")
_VARIABLE = re.compile(r"var\(\s*(--[\w-]+)\s*(?:,\s*([^)]*))?\)")


class Hidden(NamedTuple):
    """A sentence that cannot be read, and the declaration of the studio's style that hides it."""

    said: str
    by: Declared


@dataclass
class Sight:
    """Whether what documents say of dangers can be read, document by document; a set of styles is read once.

    `least_pixels` is the least size of type of a caution.
    """

    sentences: Sequence[str]
    least_pixels: float
    _read: dict[tuple[Style, ...], StyleRules] = field(default_factory=dict)

    def hidden(self, html: str, styles: tuple[Style, ...], templates: str, media: Sequence[Medium]) -> Hidden | None:
        """Return the first sentence of a document that a style of the studio hides; None where all can be read.

        `templates` is a template of the studio from which it comes, `media` in what it is read.
        """
        root = cssselect2.ElementWrapper.from_html_root(tinyhtml5.parse(html, namespace_html_elements=False))
        page = StyledPage([self._rules(one) for one in (styles, tuple(_in_page(root, styles, templates))) if one], templates)
        seen: set[tuple[str, ...]] = set()
        for sentence, box in _cautions(root, self.sentences):
            path = tuple(f"{one.local_name} {one.etree_element.get('class', '')}" for one in (*box.ancestors, *box.iter_subtree()))
            if path in seen:
                continue
            seen.add(path)
            by = next((by for medium in media if (by := _hiding(page, box, medium, self.least_pixels))), None)
            if by:
                return Hidden(sentence, by)
        return None

    def _rules(self, styles: tuple[Style, ...]) -> StyleRules:
        if styles not in self._read:
            self._read[styles] = StyleRules(styles)
        return self._read[styles]


def _in_page(root: Box, styles: Sequence[Style], templates: str) -> Iterator[Style]:
    """Yield the styles that stand in the page itself, but for what is known already."""
    known = {" ".join(style.text.split()) for style in styles}
    for box in root.iter_subtree():
        text = box.etree_element.text or ""
        if box.local_name == "style" and not any(one in " ".join(text.split()) for one in known if one):
            yield Style(text, templates)


def _cautions(root: Box, sentences: Sequence[str]) -> Iterator[tuple[str, Box]]:
    """Yield the smallest element that holds each sentence, as often as it stands there."""
    texts = {id(box.etree_element): american(" ".join("".join(box.etree_element.itertext()).split())) for box in root.iter_subtree()}

    def smallest(box: Box, sentence: str) -> Iterator[Box]:
        inside = [child for child in box.iter_children() if sentence in texts[id(child.etree_element)]]
        for child in inside:
            yield from smallest(child, sentence)
        if not inside:
            yield box

    for sentence in map(american, sentences):
        if sentence in texts[id(root.etree_element)]:
            yield from ((sentence, box) for box in smallest(root, sentence))


def _hiding(page: StyledPage, box: Box, medium: Medium, least: float) -> Declared | None:
    """Return the declaration that keeps an element from being read."""
    inside = [one for one in box.iter_subtree() if (one.etree_element.text or "").strip() or one == box]
    around = [*reversed(box.ancestors), *inside]
    for one in around:
        for declared in page.reaching(one, medium):
            if declared.own and _takes_away(declared, page.winning(one, medium)):
                return declared
    for one in inside:
        small = _size(page, one, medium)
        if small[0] < least and small[1] is not None:
            return small[1]
        by = _unreadable(page, one, medium)
        if by:
            return by
    return None


def _takes_away(one: Declared, winning: dict[str, Declared]) -> bool:
    if one.name in _GONE:
        return bool(_GONE[one.name].match(one.value))
    if one.name in _EDGES:
        return any((_pixels(part) or 0.0) <= _FAR for part in one.value.split())
    if one.name in _EXTENTS:
        cut = any(winning[name].value.startswith(("hidden", "clip")) for name in _OVERFLOWS if name in winning)
        extent = _pixels(one.value)
        return cut and extent is not None and extent < _USUAL
    return False


def _pixels(value: str) -> float | None:
    """Return a length in pixels, an em as of usual type; None for what is no length."""
    found = _LENGTH.match(value)
    if not found or found[2] == "%":
        return None
    try:
        number = float(found[1])
    except ValueError:
        return None
    return number * _PIXELS.get(found[2] or "px", _USUAL)


def _size(page: StyledPage, box: Box, medium: Medium) -> tuple[float, Declared | None]:
    """Return the size of type of an element in pixels, and the declaration of the studio's that has a part in it."""
    around, by = _size(page, box.parent, medium) if box.parent is not None else (_USUAL, None)
    won = page.winning(box, medium)
    declared = won.get("font-size") or won.get("font")
    if declared is None:
        return around, by
    value = next((part.partition("/")[0] for part in declared.value.split() if _LENGTH.match(part.partition("/")[0])), declared.value)
    if declared.name == "font" and value.isdigit() and int(value) >= 100:
        return around, by
    mine = declared if declared.own else by
    found = _LENGTH.match(value)
    if not found:
        return (_USUAL * _WORDS[value], mine) if value in _WORDS else (around * (5 / 6 if value == "smaller" else 1), by)
    number, unit = float(found[1]), found[2] or "px"
    if unit in ("em", "%"):
        return around * number / (1 if unit == "em" else 100), mine
    return number * _PIXELS.get(unit, _USUAL), declared if declared.own else None


def _unreadable(page: StyledPage, box: Box, medium: Medium) -> Declared | None:
    """Return the declaration of the studio's by which the words of an element are too like what lies behind them."""
    ink, ground = _colour(page, box, medium, "color"), _colour(page, box, medium, "background-color")
    seen = [*box.ancestors, box]
    solid, fading = 1.0, []
    for one in seen:
        declared = page.winning(one, medium).get("opacity")
        if declared is not None:
            found = _LENGTH.match(declared.value)
            solid *= float(found[1]) / (100 if found[2] else 1) if found else 1.0
            fading += [declared]
    share = ink.solid * solid
    if not ink.colour or not ground.colour or contrast(mixed(ground.colour, ink.colour, share), ground.colour) >= LEAST:
        return None
    return next((one for one in (*fading, *ink.by, *ground.by) if one.own), None)


class _Colour(NamedTuple):
    """A colour as `#` and six digits, empty where it cannot be told; how solid it is, from 0 to 1; and the declarations that make it."""

    colour: str
    solid: float
    by: tuple[Declared, ...]


def _colour(page: StyledPage, box: Box, medium: Medium, name: str) -> _Colour:
    """Return the colour of the words of an element, or of what lies behind them."""
    for one in (box, *reversed(box.ancestors)):
        won = page.winning(one, medium)
        names = ("-webkit-text-fill-color", "color") if name == "color" else (name, "background")
        for declared in (won[each] for each in names if each in won):
            value, by = _resolved(page, one, medium, declared.value)
            if value in _INHERITED or (name != "color" and value in ("none", "transparent", "initial")):
                continue
            written = parse_color(value)
            if name != "color" and written is None and not _is_picture(value):
                written = next((found for part in value.split() if (found := parse_color(part))), None)
            if written is None or written == "currentcolor" or written.space not in ("srgb", "hsl", "hwb"):
                return _Colour("", 1.0, ())
            parts = written.to("srgb")
            if name != "color" and parts.alpha == 0:
                continue
            return _Colour("#" + "".join(f"{round(part * 255):02x}" for part in parts.coordinates), parts.alpha, (declared, *by))
    return _Colour("#000000" if name == "color" else "#ffffff", 1.0, ())


def _is_picture(value: str) -> bool:
    return "url(" in value or "gradient(" in value


def _resolved(page: StyledPage, box: Box, medium: Medium, value: str) -> tuple[str, tuple[Declared, ...]]:
    """Return a value with its custom properties filled in, and the declarations that set them."""
    by: list[Declared] = []
    for _ in range(8):
        found = _VARIABLE.search(value)
        if not found:
            break
        around = (page.winning(one, medium).get(found[1]) for one in (box, *reversed(box.ancestors)))
        declared = next((one for one in around if one is not None), None)
        by += [declared] if declared else []
        value = value[: found.start()] + (declared.value if declared else found[2] or "") + value[found.end() :]
    return value.strip(), tuple(by)
