"""A name as large as fits: every break between words into few lines is tried, the evenest is taken; letters are never squeezed.

A face that lacks a letter of the name gives way to the bold face of all text, so that no letter comes from elsewhere. A
font of the studio's own takes the place of the design's.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import combinations, pairwise

from builder.compose.label.label_texts import Run
from builder.compose.label_layout.label_lines import Block, Setter, line_height
from builder.model.label.own_font import OWN_TITLES
from builder.model.label.typeface import POINT
from builder.words.hyphens import breaks_of, broken_at

MOST_LINES, MOST_WORDS, STEP = 4, 9, 0.5
# The height of lines to the size in a font of which nobody has tried how high it stands.
_OWN_LEADING = 1.15
IN_LINE = 0.3  # How far the outlines of smaller text stand off its left edge, in millimetres.


@dataclass(frozen=True)
class Lettering:
    """How a name is set."""

    face: str
    capitals: bool
    leading: float

    def shown(self, name: str) -> str:
        """Return the name as it is printed."""
        return name.upper() if self.capitals else name


def lettering_for(setter: Setter, name: str, face: str, leading: float, *, capitals: bool) -> Lettering:
    """Return the face that has every letter of a name."""
    shown = name.upper() if capitals else name
    if OWN_TITLES in setter.faces:
        face, leading = OWN_TITLES, max(leading, _OWN_LEADING)
    known = setter.faces.get(face)
    if known is not None and all(ord(letter) in known.widths for letter in shown if letter != "\u00a0"):
        return Lettering(face, capitals, leading)
    return Lettering("bold", capitals, 1.09)


def rows_of(
    setter: Setter, name: str, locale: str, lettering: Lettering, points: float, width_of: Callable[[int, int], float]
) -> list[str] | None:
    """Break a name into rows, the fewest that fit, and of these the evenest; None where none do.

    A word is broken only by a setter that does so, where nothing else fits, and by the patterns of its language.

    `width_of` says how wide one of so many rows may be.
    """
    shown = lettering.shown(name)
    rows = _fitting(setter, [shown], lettering, points, width_of)
    return rows if rows or not setter.hyphenates else _fitting(setter, list(_hyphenated(shown, locale)), lettering, points, width_of)


def _hyphenated(name: str, locale: str) -> Iterator[str]:
    """Yield a name with its longest word broken, a way for each place; the parts are words of their own, the first with a hyphen."""
    words = name.split(" ")
    longest = max(range(len(words)), key=lambda at: len(words[at]))
    for at in breaks_of(words[longest], locale):
        yield " ".join((*words[:longest], *broken_at(words[longest], at), *words[longest + 1 :]))


def _fitting(
    setter: Setter, names: list[str], lettering: Lettering, points: float, width_of: Callable[[int, int], float]
) -> list[str] | None:
    for count in range(1, MOST_LINES + 1):
        fitting = []
        for rows, ems in (one for name in names for one in _broken(setter, lettering.face, name, count)):
            widths = [em * points * POINT for em in ems]
            if all(wide <= width_of(number, count) for number, wide in enumerate(widths)):
                fitting.append((max(widths) - min(widths), rows))
        if fitting:
            return min(fitting)[1]
    return None


def _broken(setter: Setter, face: str, name: str, count: int) -> list[tuple[list[str], list[float]]]:
    """Return every way to break a name into so many rows, with the width of each row in em: worked out once for all sizes."""
    key = (face, name, count)
    if key not in setter.broken:
        setter.broken[key] = [(rows, [setter.faces[face].ems(row) for row in rows]) for rows in _ways_to_break(name, count)]
    return setter.broken[key]


def _ways_to_break(name: str, count: int) -> Iterator[list[str]]:
    words = name.split(" ")
    if count > len(words) or len(words) > MOST_WORDS:
        return
    for cuts in combinations(range(1, len(words)), count - 1):
        yield [" ".join(words[begin:end]) for begin, end in pairwise((0, *cuts, len(words)))]


def block_of_row(
    setter: Setter, row: str, lettering: Lettering, points: float, x: float, y: float, width: float, *, edge: float, is_centred: bool
) -> Block:
    """Set one row of a name. On the left its first letter stands with its outline, not with the space it brings, in line with smaller text.

    `edge` is the least that its left may be, in millimetres.
    """
    bearing = setter.faces[lettering.face].bearings.get(ord(row[0]), 0.0) if row and not is_centred else 0.0
    shift = max(0.0, min(bearing * points * POINT - IN_LINE, x - edge))
    run = Run(row, bold=lettering.face == "bold")
    face = "" if lettering.face == "bold" else lettering.face
    return Block(x - shift, y, width + shift, points, ((run,),), face, is_centred, leading=lettering.leading)


def row_height(lettering: Lettering, points: float) -> float:
    """Return the height of a row in millimetres."""
    return line_height(points, lettering.leading)
