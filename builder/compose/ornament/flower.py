"""A portrait to the flower that shows it: petals from the back to the front, veins, and the dots of its heart. Lengths in millimetres.

Petals stand at the golden angle from one another, the largest first and at the back, each a little in front of the one before. The length
of a petal grows with the share of its ingredient. All petals of a flower have one form, which lies between those of the kinds of thing by
how much there is of each: so a small change of an amount is a small change of the drawing, also where two ingredients change places.

Decided: golden angle, and no fewer than eight petals. Why: three, four, five or six alike at even angles are signs of many things, of
danger, of faiths, of nations; these never stand evenly.
"""

import unicodedata
from dataclasses import dataclass
from math import cos, hypot, pi, sin, sqrt

from builder.compose.ornament.portrait import Form, Portrait

GOLDEN = pi * (3 - sqrt(5))
_GROWTH = 0.5  # The length of a petal grows with this power of its share.
_SPREAD = 1.15  # Half the width of a petal by the angle between petals.
_RING, _INNER = 0.66, 0.32
_VOWEL, _CONSONANT = 0.16, 0.08
# Half an outline of each form from the base over the widest place to the tip: two cubic curves, along the petal and across it.
_OUTLINES: dict[Form, tuple[tuple[float, float], ...]] = {
    Form.ROUND: ((0, 0.10), (0.25, 0.35), (0.40, 1), (0.66, 1), (0.88, 1), (1, 0.6), (1, 0)),
    Form.POINTED: ((0, 0.10), (0.2, 0.55), (0.32, 1), (0.5, 1), (0.72, 1), (0.88, 0.38), (1, 0)),
    Form.BLUNT: ((0, 0.22), (0.18, 0.66), (0.4, 1), (0.68, 1), (0.9, 1), (1, 0.92), (0.98, 0)),
    Form.FACETED: ((0, 0.10), (0.2, 0.37), (0.4, 0.73), (0.66, 1), (0.78, 0.67), (0.89, 0.33), (1, 0)),
    Form.NOTCHED: ((0, 0.10), (0.2, 0.3), (0.42, 0.95), (0.72, 1), (1.05, 1.02), (1.1, 0.35), (0.86, 0)),
}

Point = tuple[float, float]


@dataclass(frozen=True)
class Build:
    """How a flower is built: the least length of a petal, half the width of one at the most, and the heart, all by the longest petal.

    `even` is how far each petal is turned from where the golden angle has it to where even angles would: 0 not at all, 1 all the way.
    """

    least: float = 0.66
    stout: float = 0.36
    heart: float = 0.22
    even: float = 0.0


USUAL = Build()


@dataclass(frozen=True)
class Dot:
    """A filled dot."""

    at: Point
    radius: float


@dataclass(frozen=True)
class PetalShape:
    """One petal: thirteen points of four cubic curves, from the base round the tip and back; its veins, each a run of points."""

    outline: tuple[Point, ...]
    veins: tuple[tuple[Point, ...], ...]

    @property
    def length(self) -> float:
        """Return how long it is, from the middle of the flower to its tip."""
        (x, y), (foot_x, foot_y) = self.outline[6], self.foot
        return hypot(x - foot_x, y - foot_y)

    @property
    def foot(self) -> Point:
        """Return the middle of its base."""
        (x1, y1), (x2, y2) = self.outline[0], self.outline[12]
        return (x1 + x2) / 2, (y1 + y2) / 2


@dataclass(frozen=True)
class Flower:
    """A mark in a square of a side in millimetres, whose corner is the origin: petals from back to front, then the heart with its dots."""

    side: float
    petals: tuple[PetalShape, ...]
    heart: Dot
    dots: tuple[Dot, ...]


def flower_of(portrait: Portrait, side: float, build: Build = USUAL) -> Flower:
    """Draw a portrait into a square of a side in millimetres."""
    outline, forms = _form_of(portrait)
    shares = [float(part.share) for part in portrait.petals]
    stout = min(build.stout, sin(min(pi / 2, _SPREAD * pi / len(shares))))
    lengths = [build.least + (1 - build.least) * (share / shares[0]) ** _GROWTH for share in shares]
    angles = _angles(len(shares), build.even)
    petals = [_petal(outline, forms, length, stout, angle - pi / 2) for length, angle in zip(lengths, angles, strict=True)]
    return _fitted(petals, _dots(portrait.scents), side, build.heart)


def _angles(count: int, even: float) -> list[float]:
    """Return where each of so many petals stands, clockwise from the first, which stands at 0."""
    golden = [number * GOLDEN % (2 * pi) for number in range(count)]
    around = sorted(range(count), key=golden.__getitem__)
    evenly = {number: 2 * pi * rank / count for rank, number in enumerate(around)}
    return [angle + even * (evenly[number] - angle) for number, angle in enumerate(golden)]


def petal_of(portrait: Portrait, length: float, width: float) -> PetalShape:
    """Draw one petal of the form that all of a portrait have, from the origin to the right, of a length and a width in millimetres."""
    return _petal(*_form_of(portrait), length, width / 2 / length, 0.0)


def _form_of(portrait: Portrait) -> tuple[tuple[tuple[float, ...], ...], dict[Form, float]]:
    """Return half the outline of the petals of a portrait, and the share of each form in it."""
    total = float(sum(portrait.forms.values()))
    forms = {form: float(share) / total for form, share in portrait.forms.items()}
    return tuple(tuple(sum(forms[form] * _OUTLINES[form][i][axis] for form in Form) for axis in (0, 1)) for i in range(7)), forms


def _petal(half: tuple[tuple[float, ...], ...], forms: dict[Form, float], length: float, stout: float, angle: float) -> PetalShape:
    def put(along: float, across: float) -> Point:
        x, y = length * along, length * stout * across
        return x * cos(angle) - y * sin(angle), x * sin(angle) + y * cos(angle)

    there = [put(u, v) for u, v in half]
    back = [put(u, -v) for u, v in reversed(half[:-1])]
    veins = (tuple(put(u, v) for u, v in line) for line in _veins(half, forms))
    return PetalShape((*there, *back), tuple(veins))


def _veins(half: tuple[tuple[float, ...], ...], forms: dict[Form, float]) -> list[list[Point]]:
    """Return what is drawn in a petal along and across it; each form has its own veins, that grow with how much there is of it."""
    grown = {form: max(0.0, min(1.0, (share - 0.2) / 0.4)) for form, share in forms.items()}
    tip, (widest, _) = half[6][0], half[3]
    lines: list[list[Point]] = []
    if oil := grown[Form.POINTED]:
        lines.append([(0.86 - 0.34 * oil, 0), (0.86, 0)])
    if firm := grown[Form.BLUNT]:
        lines += [[(0.86 - 0.22 * firm, side * 0.34), (0.86, side * 0.38)] for side in (1, -1)]
    if facet := grown[Form.FACETED]:
        middle = widest - 0.06
        lines.append([(middle, 0), (middle + (tip - middle) * facet, 0)])
        lines += [[(middle, 0), (middle + 0.06 * facet, side * half[3][1] * facet)] for side in (1, -1)]
    if leaf := grown[Form.NOTCHED]:
        lines.append([(0.58, 0), (0.58 + 0.18 * leaf, 0)])
        lines += [[(0.6, side * 0.14), (0.6 + 0.13 * leaf, side * (0.14 + 0.26 * leaf))] for side in (1, -1)]
    if wet := grown[Form.ROUND]:
        bend = [(-1 + step / 4) * wet for step in range(9)]
        lines.append([(tip - 0.13 - 0.09 * at * at, 0.5 * at) for at in bend])
    return lines


def _dots(scents: tuple[str, ...]) -> list[Dot]:
    """Return a dot for each letter of the two heaviest scents, a large one for a vowel, clockwise from the top; in a heart of radius 1."""
    dots = []
    for ring, scent in zip((_RING, _INNER), scents, strict=False):
        letters = [letter for letter in unicodedata.normalize("NFD", scent.casefold()) if letter.isalpha()]
        room = min(1.0, ring * 2 * pi / (len(letters) or 1) / (2.4 * _VOWEL))
        for number, letter in enumerate(letters):
            angle = 2 * pi * number / len(letters) - pi / 2
            dots.append(Dot((ring * cos(angle), ring * sin(angle)), room * (_VOWEL if letter in "aeiouy" else _CONSONANT)))
    return dots


def _fitted(petals: list[PetalShape], dots: list[Dot], side: float, of_heart: float) -> Flower:
    """Scale and move a flower, whose longest petal is one long, so that it fills the square in one direction and lies in its middle."""
    points = [point for petal in petals for point in along(petal.outline)]
    (left, right), (top, bottom) = ((min(axis), max(axis)) for axis in zip(*points, strict=True))
    scale = side * 0.97 / max(right - left, bottom - top)

    def put(point: Point) -> Point:
        return side / 2 + scale * (point[0] - (left + right) / 2), side / 2 + scale * (point[1] - (top + bottom) / 2)

    placed = (PetalShape(tuple(map(put, one.outline)), tuple(tuple(map(put, vein)) for vein in one.veins)) for one in petals)
    heart = scale * of_heart
    inner = (Dot(put((of_heart * dot.at[0], of_heart * dot.at[1])), heart * dot.radius) for dot in dots)
    return Flower(side, tuple(placed), Dot(put((0, 0)), heart), tuple(inner))


def along(outline: tuple[Point, ...], steps: int = 8) -> list[Point]:
    """Return points along an outline of cubic curves."""
    parts = [step / steps for step in range(steps)]
    weights = [((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3) for t in parts]
    found = []
    for first in range(0, len(outline) - 1, 3):
        (x1, y1), (x2, y2), (x3, y3), (x4, y4) = outline[first : first + 4]
        found += [(a * x1 + b * x2 + c * x3 + d * x4, a * y1 + b * y2 + c * y3 + d * y4) for a, b, c, d in weights]
    return found
