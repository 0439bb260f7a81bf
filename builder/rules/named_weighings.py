"""Which weighings of a batch a name in braces means: an ingredient, a phase, or one of the words for the parts of a soap."""

import re

from builder.model.place import Name
from builder.model.recipe.column import Column, Role, Weighed
from builder.model.studio import Studio
from builder.words.fold import fold

BRACES = re.compile(r"\{([^{}]+)\}")  # A name in a text that is not Markdown.
STROKES = " strokes"  # After the name of what has a pump: how often to press it.
IN_ALL = " in all"  # After what is chosen: the most for every container of the batch together.
VOLUME, LEFT_IN_THE_POT = "volume", "left in the pot"
# What needs no ingredient. `each student` is how many containers a student fills in class, and all of them at home.
FOR_ALL = ("batch", "portion", "cup", "containers", "each student", VOLUME, LEFT_IN_THE_POT)
LYE_ROLES = {
    "lye": (Role.ALKALI,),
    "lye water": (Role.LYE_WATER,),
    "lye solution": (Role.ALKALI, Role.LYE_WATER),
    "oils": (Role.OIL,),
}


def weighings_named(studio: Studio, column: Column, name: Name) -> tuple[Weighed, ...]:
    """Give the weighings that a name means; none for the batch as a whole, for portions and for what is chosen.

    An ingredient that is also the water of the lye is meant as it stands in the phases.
    """
    if name.key in LYE_ROLES:
        named = tuple(w for w in column.weighed if w.line.role in LYE_ROLES[name.key])
        # Of ready-mixed lye the solution is what its bottles hold; the water beside it is never poured into the lye.
        solutions = tuple(w for w in named if w.line.strength is not None)
        return solutions if name.key == "lye solution" and solutions else named
    card = studio.ingredient(name)
    mine = tuple(w for w in column.weighed if card and w.line.ingredient.key == card.key)
    beside_the_lye = tuple(w for w in mine if w.line.role is not Role.LYE_WATER)
    return beside_the_lye or mine or tuple(w for w in column.weighed if fold(w.line.phase) == name.key)
