"""Findings beside their passages: the words of a finding's line are looked for in a page, and a flag is set before the first that is found.

A page is cut into tags and texts; a flag stands before a text, never within a tag, a style, a script or a drawing.
"""

import re
from collections.abc import Iterator, Sequence
from html import escape, unescape

from builder.preview.built import Passage

_TAG = re.compile(r"(<!--.*?-->|<[^>]*>)", re.DOTALL)
_NO_TEXT = frozenset({"script", "style", "svg", "title", "head", "option"})
# What stands between the words of a lesson and the words of its page: names in braces, addresses of links, signs of Markdown.
_BETWEEN = re.compile(r"\{[^}]*\}|\]\([^)]*\)|[\[\]*_#`|]|^\s*(?:\d+\.|[-+>])\s+")
_SHORTEST = 3


def flagged(html: str, passages: Sequence[Passage]) -> tuple[str, frozenset[int]]:
    """Return a page with a flag at each passage that is found in it, and the numbers of those findings, counted from 0."""
    pieces = _TAG.split(html)
    texts = [(at, _plain(pieces[at])) for at in _texts(pieces)]
    flags: dict[int, str] = {}
    for number, passage in enumerate(passages):
        at = next((at for words in _words(passage) for at, text in texts if words in text), None)
        if at is not None:
            flags[at] = flags.get(at, "") + _flag(number, passage)
    found = frozenset(int(number) for flag in flags.values() for number in re.findall(r'id="at-(\d+)"', flag))
    return "".join(flags.get(at, "") + piece for at, piece in enumerate(pieces)), found


def standing(passage: Passage) -> str:
    """Return how a finding stands: `stop`, `caution` or `accepted`."""
    return "accepted" if passage.finding.accepted is not None else str(passage.finding.weight)


def _flag(number: int, passage: Passage) -> str:
    what, said = standing(passage), escape(f"{passage.finding.name}: {passage.finding.wrong}")
    return f'<a class="preview-flag {what}" id="at-{number}" href="#finding-{number}" title="{said}">{what}</a> '


def _texts(pieces: Sequence[str]) -> Iterator[int]:
    """Yield the places of the texts between the tags of the body."""
    within: list[str] = []
    begun = not any(piece.startswith("<body") for piece in pieces)
    for at, piece in enumerate(pieces):
        if at % 2:
            begun = begun or piece.startswith("<body")
            name = re.match(r"</?([a-z]+)", piece)
            if name and name[1] in _NO_TEXT:
                within = [*within, name[1]] if piece[1] != "/" else within[:-1]
        elif begun and not within and piece.strip():
            yield at


def _words(passage: Passage) -> Iterator[str]:
    """Yield the words by which a passage may be known, the best first: what is marked, then the pieces of the line, the longest first."""
    line, place = passage.line, passage.finding.place
    if line is None:
        return
    marked = line[place.column - 1 : place.column - 1 + place.width]
    if place.file.endswith(".md"):
        pieces = sorted(_BETWEEN.split(line), key=len, reverse=True)
        found = [*(piece for piece in pieces if len(piece.strip()) > 2 * _SHORTEST), marked]
    else:
        key, _, value = line.partition(":")
        found = [marked, value.split(" #")[0], key.strip().lstrip("-{ ")]
    for words in (_plain(one).strip(" .,;:\"'") for one in found):
        if len(words) >= _SHORTEST and re.search(r"[^\W\d]", words):
            yield words


def _plain(text: str) -> str:
    return re.sub(r"\s+", " ", unescape(text).translate(_ALIKE)).casefold()


_ALIKE = str.maketrans({"\u00a0": " ", "\u2019": "'", "\u2018": "'", "\u201c": '"', "\u201d": '"', "\u2013": "-"})
