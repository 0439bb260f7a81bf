"""The letter of a part, which is the same on every document: A for the first part of a recipe that is done at home, B for the next.

Decided: the letters follow what is done at home, since a call from a kitchen names a step by them (B5); a part that is for the class
alone has none, and its steps are counted by themselves.
"""

from string import ascii_uppercase

from builder.model.dates.studio_class import StudioClass
from builder.model.teaching.lesson import Part, Where
from builder.rules.part_recipe import recipe_about


def home_parts(studio_class: StudioClass, recipe: str | None) -> tuple[Part, ...]:
    """Give the parts of the lesson that are done at home for one recipe."""
    parts = (part for part in studio_class.lesson.parts if part.where is not Where.CLASS_ONLY)
    return tuple(part for part in parts if recipe_about(part, studio_class.recipe_keys) == recipe)


def letter_of(studio_class: StudioClass, part: Part) -> str:
    """Give the letter of a part; empty for one that is for the class alone, and past the end of the alphabet."""
    mine = home_parts(studio_class, recipe_about(part, studio_class.recipe_keys))
    return next((letter for letter, one in zip(ascii_uppercase, mine, strict=False) if one is part), "")
