"""Where a line of a batch, or a choice of its students, is written in its recipe."""

from builder.model.dose.towards import Counted
from builder.model.place import Place
from builder.model.recipe.column import Line, Role
from builder.model.recipe.recipe import Recipe


def place_of_line(line: Line, recipe: Recipe) -> Place:
    """Return the place of an amount; of an alkali its name in the lye block, of the water of the lye what says how much it is."""
    plan = recipe.lye
    if plan is None or line.role not in (Role.ALKALI, Role.LYE_WATER):
        return line.place
    if line.role is Role.ALKALI:
        return plan.at("alkali")
    return plan.water.place


def place_of_choice(what: str, recipe: Recipe) -> Place:
    """Return the place of the most that a choice allows."""
    return next(choice.place for choice in recipe.choices if choice.what == what)


def place_of_counted(counted: Counted, recipe: Recipe) -> Place:
    """Return the place of what counts towards a limit."""
    return place_of_line(counted.line, recipe) if counted.line else place_of_choice(counted.what, recipe)
