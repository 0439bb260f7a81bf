"""A mark to colour in: the petals of a recipe, but fewer, slimmer and more alike, so that a crayon fills every field.

Decided: a mark to colour in has as many petals as its side lets be filled, and stands for the small ingredients with one; it has no dots.
Why: in a small mark of twelve petals some fields are slivers, and a child paints over them.

Decided: it has all the petals that its side lets be filled, and these stand less unevenly than those of the mark. Why: of three to six
petals at the golden angle one seemed to have fallen off; they still never stand evenly.
"""

from dataclasses import replace
from fractions import Fraction

from builder.compose.ornament.flower import Build, Flower, flower_of
from builder.compose.ornament.portrait import Portion, Portrait

TO_COLOUR = Build(least=0.8, stout=0.28, heart=0.3, even=0.7)
# From which side, in millimetres, a mark may have so many petals: every field then holds a disc of 4 mm, whatever the shares and forms are
# (tests/compose/test_colouring.py measures it).
PETALS_FROM = ((32.0, 8), (28.5, 6), (23.0, 5), (21.3, 4))
SMALLEST = PETALS_FROM[-1][0]


def to_colour(portrait: Portrait, side: float) -> Portrait:
    """Return a portrait as its mark of that side shows it, in millimetres: with few enough petals. Raises ValueError below SMALLEST."""
    most = next((petals for least, petals in PETALS_FROM if side >= least - 1e-6), None)
    if most is None:
        raise ValueError(f"a mark of {side} mm has no fields to colour in")
    parts = portrait.parts
    together = portrait.together
    if len(parts) > most:
        kept = [part for part in parts if part.name][: most - 1]
        rest = [part for part in parts if part not in kept]
        together = sum(1 if part.name else portrait.together for part in rest)
        parts = tuple(sorted([*kept, Portion("", sum((part.share for part in rest), Fraction(0)))], key=lambda part: -part.share))
    rounds, more = divmod(min(most, portrait.rounds * len(parts)), len(parts))
    return replace(portrait, parts=parts, together=together, rounds=rounds, more=more, scents=())


def flower_to_colour(portrait: Portrait, side: float) -> Flower:
    """Draw a portrait to colour in into a square of a side in millimetres. Raises ValueError below SMALLEST."""
    return flower_of(to_colour(portrait, side), side, TO_COLOUR)
