"""A size to the weight of the whole batch."""

from fractions import Fraction

from builder.model.batch_sheet import ContainersSize, Given, MouldSize, OilsSize, PeopleSize, Size, TotalSize, Working
from builder.model.quantity import NO_MASS, Mass
from builder.model.recipe import Recipe
from builder.reckon.formula import Formula


def reckon_total(recipe: Recipe, formula: Formula, size: Size) -> tuple[Mass, Working]:
    """Give the weight of a batch of this size, and how it came to be.

    A mould needs the recipe's measured density, oils need a recipe with oils: the checks on a size have made sure of both.
    """
    fill = recipe.fill.weight
    given: tuple[Given, ...] = ()
    match size:
        case TotalSize(total):
            rule = "batch for total"
        case OilsSize(oils):
            rule, total = "batch for oils", oils / formula.oils
            given = (Given("oils", oils.grams, "g"), Given("oils in the batch", formula.oils, "of 1"))
        case ContainersSize(containers):
            rule, total = "batch for containers", fill * containers
            given = (Given("containers", Fraction(containers), ""), Given("fill", fill.grams, "g"))
        case MouldSize(volume):
            assert recipe.density is not None
            rule, total = "batch for mould", recipe.density.density.mass_of(volume)
            given = (
                Given("volume", volume.millilitres, "mL"),
                Given("density", recipe.density.density.grams_per_millilitre, "g/mL", recipe.density.measured),
            )
        case PeopleSize(containers, demo, pot):
            rule, total = "batch for people", fill * containers + demo + pot
            given = (
                Given("containers", Fraction(containers), ""),
                Given("fill", fill.grams, "g"),
                Given("to show", demo.grams, "g"),
                Given("left in the pot", pot.grams, "g"),
            )
    return total, Working(rule, recipe.name, given, total.grams, "g")


def asked_for(size: Size) -> tuple[int | None, Mass]:
    """Give the containers that the size asks for (None where it asks for a weight), and the weight that fills none."""
    match size:
        case ContainersSize(containers):
            return containers, NO_MASS
        case PeopleSize(containers, demo, pot):
            return containers, demo + pot
        case _:
            return None, NO_MASS
