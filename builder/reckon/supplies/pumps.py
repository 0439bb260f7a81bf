"""Strokes of a pump for an amount: the nearest whole stroke from ten on, the nearest half below.

Decided: strokes at home are written as the weight. Why: another pump stands there.
"""

from fractions import Fraction
from math import floor

from builder.model.recipe.quantity import Mass, sum_masses
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.supplies.cost import PumpStrokes
from builder.model.supplies.supply import Supply

MANY = 10


def strokes_of(mass: Mass, one: Mass) -> Fraction:
    """Return the strokes that come nearest to a mass; a half goes up."""
    step = Fraction(1) if mass / one >= MANY else Fraction(1, 2)
    return floor(mass / one / step + Fraction(1, 2)) * step


def pumped(studio: Studio) -> dict[str, tuple[Supply, Mass]]:
    """Return by ingredient key the pack with a pump and what one stroke of it weighs."""
    found: dict[str, tuple[Supply, Mass]] = {}
    for supply in studio.supplies:
        card = studio.ingredient(supply.name)
        one = supply.stroke(card) if card and supply.pump else None
        if card and one:
            found.setdefault(card.key, (supply, one))
    return found


def reckon_strokes(studio: Studio, batch: WorkedBatch) -> tuple[PumpStrokes, ...]:
    """Return the strokes for each ingredient of a batch that has a pump, from the amount as weighed."""
    made = []
    pumps = pumped(studio)
    cards = {w.line.ingredient.key: w.line.ingredient for w in batch.grams.weighed}
    for key, card in cards.items():
        if key in pumps:
            supply, one = pumps[key]
            mass = sum_masses(w.mass for w in batch.grams.weighed if w.line.ingredient.key == key)
            strokes = strokes_of(mass, one)
            assert supply.pump is not None
            made.append(PumpStrokes(card.name, strokes, one * strokes, supply.pump.measured))
    return tuple(made)
