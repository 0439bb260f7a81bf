"""The share of alcohol in a recipe as it is written. Alcohol comes with water: what the card says of that is taken off, at its most."""

from collections.abc import Callable
from fractions import Fraction

from builder.model.dose.limit import names_of
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Amount, Mass, Parts, Rest, Share
from builder.model.recipe.recipe import AmountsAs, Recipe
from builder.model.studio import Studio

_ALCOHOL = (("alcohol",), ("alcohol denat.",))


def least_alcohol(recipe: Recipe, studio: Studio) -> Fraction:
    """Return the pure alcohol that a recipe holds at least, as a part of its weight; 0 where its amounts are no shares of one whole."""
    return share_that(recipe, studio, _purity)


def share_that(recipe: Recipe, studio: Studio, counts: Callable[[Ingredient], Fraction]) -> Fraction:
    """Add up the shares of a recipe as far as each card counts; 0 where its amounts are no shares of one whole."""
    weighed = [(line, _weight(line.amount)) for line in recipe.lines]
    known = [weight for _, weight in weighed if weight is not None]
    rests = sum(isinstance(line.amount, Rest) for line in recipe.lines)
    if recipe.amounts_as is AmountsAs.PERCENT_OF_OILS or len(known) + rests < len(weighed):
        return Fraction(0)
    whole = Fraction(1) if rests else sum(known, start=Fraction(0))
    cards = [(studio.ingredient(line.ingredient), weight) for line, weight in weighed]
    counted = sum((weight * counts(card) for card, weight in cards if card and weight), start=Fraction(0))
    return counted / whole if whole else Fraction(0)


def _weight(amount: Amount) -> Fraction | None:
    """Return a weight as a number of whatever the recipe counts in; None of a volume, of drops, and of the rest."""
    match amount:
        case Share(number) | Parts(number) | Mass(number):
            return number
        case _:
            return None


def _purity(card: Ingredient) -> Fraction:
    water = card.figure("water content")
    return 1 - (water.high or water.typical) / 100 if water and names_of(card) in _ALCOHOL else Fraction(0)
