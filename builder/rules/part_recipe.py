"""Which recipe of its class a part of a lesson is about; the recipes of the class are given by their keys, in its order."""

from collections.abc import Container, Sequence

from builder.model.dates.studio_class import StudioClass
from builder.model.teaching.lesson import Part, Where


def recipe_about(part: Part, made: Sequence[str]) -> str | None:
    """Return the key of the recipe that a part is about: the one that it names, or the first; None where the class does not make it."""
    key = part.recipe.text if part.recipe is not None else made[0]
    return key if key in made else None


def recipe_in_hand(part: Part, made: Sequence[str], with_lye: Container[str]) -> str:
    """Return the key of the recipe that people are taken to work on in a part: the one that it is about, or the first.

    Work of the students' hands that names neither recipe nor amount is taken for the one with lye, if there is one: the safe side.
    """
    names_nothing = part.by_hand and part.recipe is None and not part.mentions
    caustic = next((key for key in made if key in with_lye), None) if names_nothing else None
    return caustic or recipe_about(part, made) or made[0]


def home_parts(studio_class: StudioClass, recipe: str | None) -> tuple[Part, ...]:
    """Return the parts of the lesson that are done at home for one recipe, in order."""
    parts = (part for part in studio_class.lesson.parts if part.where is not Where.CLASS_ONLY)
    return tuple(part for part in parts if recipe_about(part, studio_class.recipe_keys) == recipe)
