"""An amount as written to a number that can be compared: a volume only through a density, a drop only through its mass."""

from fractions import Fraction

from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Drops, Mass, Parts, Rest, Volume
from builder.model.recipe.recipe import RecipeLine
from builder.model.recipe.working import Given, SumRule, Working
from builder.words.say import message


def density_figure(card: Ingredient) -> str:
    """Name the figure through which a volume of this ingredient becomes a mass: a powder has a bulk density."""
    return message("bulk density") if card.figure("bulk density") else message("density")


def weight_of(line: RecipeLine, card: Ingredient) -> tuple[Fraction, Working]:
    """Return the grams (or the parts) of a line, and how they came to be.

    The checks have made sure that a density or a drop's mass is there where it is needed.
    """
    assert not isinstance(line.amount, Rest), "the rest is what all others leave"
    match line.amount:
        case Mass(grams):
            return grams, Working(SumRule.WEIGHTS, card.name, (), grams, "g")
        case Parts(number):
            return number, Working(SumRule.PARTS, card.name, (), number, "parts")
        case Volume(millilitres):
            figure = card.figure(density_figure(card))
            assert figure is not None
            grams = millilitres * figure.typical
            given = (
                Given("volume", millilitres, "mL"),
                Given(density_figure(card), figure.typical, "g/mL", f"{figure.source.title}, {figure.at}"),
            )
            return grams, Working(SumRule.VOLUME_THROUGH_DENSITY, card.name, given, grams, "g")
        case Drops(number):
            assert card.drop_mass is not None
            one = card.drop_mass.one.grams
            given = (Given("drops", number, ""), Given("mass of a drop", one, "g", card.drop_mass.measured))
            return number * one, Working(SumRule.DROPS_THROUGH_DROP_MASS, card.name, given, number * one, "g")
        case _:
            fraction = line.amount.fraction
            return fraction, Working(SumRule.SHARE_OF_OILS, card.name, (), fraction, "of oils")
