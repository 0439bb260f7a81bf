"""A flower to SVG: black lines, tinted petals, or outlines to colour in. Widths of lines in millimetres, whatever the size of the mark."""

from dataclasses import replace
from enum import Enum
from html import escape

from builder.compose.ornament.colouring import flower_to_colour
from builder.compose.ornament.flower import Dot, Flower, Point, flower_of
from builder.compose.ornament.portrait import Portrait
from builder.compose.ornament.tints import paler, tint_of
from builder.compose.ornament.words import mark_in_words
from builder.model.remembered import remembered

INK, WHITE = "#1d1a17", "#ffffff"
PAGE_MARK, HEAD_MARK, TEACHER_MARK = 40, 20, 15  # The side of a mark on a page, at the head of a take-home sheet, and of a teacher's.
OUTLINE = 0.282  # 0.8 pt


class Look(Enum):
    """How a mark is drawn."""

    LINES = "lines"
    TINTED = "tinted"
    TO_COLOUR_IN = "to colour in"


def mark(portrait: Portrait, side: float, look: Look = Look.LINES) -> str:
    """Return the mark in a square of a side in millimetres, as an SVG element with its text alternative."""
    size = mm(side)
    return (
        f'<svg class="mark" xmlns="http://www.w3.org/2000/svg" width="{size}mm" height="{size}mm" viewBox="0 0 {size} {size}" role="img">'
        f"<title>{escape(mark_in_words(portrait))}</title>{flower_in(portrait, side, look)}</svg>"
    )


@remembered(2048, Portrait, float, Look)  # A recipe has one mark in every size of batch, and stands on many documents.
def flower_in(portrait: Portrait, side: float, look: Look, *, has_veins: bool = True) -> str:
    """Return what is drawn in the square of a mark, without the element around it."""
    colouring = look is Look.TO_COLOUR_IN
    flower, line = (flower_to_colour(portrait, side), OUTLINE) if colouring else (flower_of(portrait, side), line_width(side))
    if not has_veins:
        flower = replace(flower, petals=tuple(replace(petal, veins=()) for petal in flower.petals))
    petals, dots = "".join(petal_paths(flower, portrait, look)), "".join(f"<circle {_round(dot)}/>" for dot in flower.dots)
    return (
        f'<g stroke="{INK}" stroke-width="{mm(line)}" stroke-linejoin="round" stroke-linecap="round">{petals}'
        f'<circle {_round(flower.heart)} fill="{WHITE}"/></g><g fill="{INK}">{dots}</g>'
    )


def _round(dot: Dot) -> str:
    return f'cx="{mm(dot.at[0])}" cy="{mm(dot.at[1])}" r="{mm(dot.radius)}"'


def line_width(side: float) -> float:
    """Return the width of a line in a mark of a side, both in millimetres: thinner in a small one, never too thin for a home printer."""
    return min(OUTLINE, 0.14 + 0.005 * side)


def petal_paths(flower: Flower, portrait: Portrait, look: Look) -> list[str]:
    """Return a path for each petal from back to front, each followed by one for its veins, where it has any."""
    tint, last = tint_of(portrait), max(1, len(flower.petals) - 1)
    paths = []
    for number, petal in enumerate(flower.petals):
        fill = paler(tint, 0.6 * (1 - number / last)) if look is Look.TINTED else WHITE
        first, *rest = petal.outline
        paths.append(f'<path d="M{_at(first)}C{" ".join(map(_at, rest))}Z" fill="{fill}"/>')
        if petal.veins and look is not Look.TO_COLOUR_IN:
            drawn = "".join(f"M{_at(begin)}L{' '.join(map(_at, rest))}" for begin, *rest in petal.veins)
            paths.append(f'<path d="{drawn}" fill="none" stroke-width="{mm(0.75 * line_width(flower.side))}"/>')
    return paths


def _at(point: Point) -> str:
    return f"{mm(point[0])} {mm(point[1])}"


def mm(value: float) -> str:
    """Write a length in millimetres as a drawing has it."""
    return f"{value:.2f}".rstrip("0").rstrip(".")
