"""What a student may add to one portion: the most by weight, rounded down to the scale, and in drops where a drop has been weighed."""

from collections.abc import Mapping, Sequence
from math import floor

from builder.model.batch_sheet import Dose, DropLimit
from builder.model.ingredient import Ingredient
from builder.model.quantity import Mass
from builder.model.recipe import Choice, Recipe
from builder.model.studio import Scale
from builder.reckon.rounding import pick_scale, round_down


def reckon_doses(recipe: Recipe, cards: Mapping[str, Ingredient], scales: Sequence[Scale]) -> tuple[Dose, ...]:
    """Give the dose of each choice of a recipe."""
    return tuple(_dose(choice, recipe.fill.weight, cards, scales) for choice in recipe.choices)


def _dose(choice: Choice, fill: Mass, cards: Mapping[str, Ingredient], scales: Sequence[Scale]) -> Dose:
    exact = fill * choice.at_most.fraction
    scale, _ = pick_scale(exact, scales)
    at_most = round_down(exact, scale.division)
    options = tuple(cards[option.key] if option else None for option in choice.options)
    drops = tuple(DropLimit(card.name, floor(at_most / card.drop_mass.one), measured=True) for card in options if card and card.drop_mass)
    return Dose(choice.what, tuple(card.name if card else None for card in options), at_most, choice.at_most.fraction, drops)
