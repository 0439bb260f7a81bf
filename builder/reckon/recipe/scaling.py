"""A size to the weight of the whole batch."""

from fractions import Fraction

from builder.model.recipe.quantity import Mass
from builder.model.recipe.recipe import Fill, Recipe
from builder.model.recipe.size import ContainersSize, MouldSize, OilsSize, PeopleSize, Size, TotalSize
from builder.model.recipe.working import Given, SumRule, Working
from builder.reckon.recipe.formula import Formula
from builder.reckon.recipe.portions import people_weight


def reckon_total(recipe: Recipe, formula: Formula, size: Size) -> tuple[Mass, Working]:
    """Return the weight of a batch of this size, and how it came to be.

    A mould needs the recipe's measured density, oils need a recipe with oils: the checks on a size have made sure of both.
    """
    fill = recipe.fill.weight
    given: tuple[Given, ...] = ()
    match size:
        case TotalSize(total, _):
            rule = SumRule.BATCH_FOR_TOTAL
        case OilsSize(oils, _):
            rule, total = SumRule.BATCH_FOR_OILS, oils / formula.oils
            given = (Given("oils", oils.grams, "g"), Given("oils in the batch", formula.oils, "of 1"))
        case ContainersSize(containers, lost):
            rule, total = SumRule.BATCH_FOR_CONTAINERS, (fill + lost.in_each_cup) * containers + lost.in_the_pot
            given = (
                Given("containers", Fraction(containers), ""),
                Given("fill", fill.grams, "g"),
                *([Given("left in each cup", lost.in_each_cup.grams, "g")] if lost.in_each_cup else []),
                *([Given("left in the pot", lost.in_the_pot.grams, "g")] if lost.in_the_pot else []),
            )
        case MouldSize(volume):
            assert recipe.density is not None
            rule, total = SumRule.BATCH_FOR_MOULD, recipe.density.density.mass_of(volume)
            given = (
                Given("volume", volume.millilitres, "mL"),
                Given("density", recipe.density.density.grams_per_millilitre, "g/mL", recipe.density.measured),
            )
        case _:
            rule, total = SumRule.BATCH_FOR_PEOPLE, people_weight(size)
            given = (
                *(part for one, count in size.counts for part in _fills(one.fill, count, is_own=one is size.to_fill[0])),
                *([Given("left in each cup", size.left_in_each_cup.grams, "g")] if size.left_in_each_cup else []),
                Given("to show", size.demo.grams, "g"),
                Given("left in the pot", size.left_in_the_pot.grams, "g"),
            )
    return total, Working(rule, recipe.name, given, total.grams, "g")


def _fills(fill: Fill, containers: int, *, is_own: bool) -> tuple[Given, Given]:
    of = "" if is_own else str(fill.container)
    return Given("containers", Fraction(containers), "", of=of), Given("fill", fill.weight.grams, "g", of=of)


def asks_for_containers(size: Size) -> bool:
    """Tell whether a size asks for containers, so that rounding must not leave the last one short."""
    return isinstance(size, ContainersSize | PeopleSize)
