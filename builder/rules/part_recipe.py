"""Which recipe of its class a part of a lesson is about, and which parts are followed to make it.

The recipes of the class are given by their keys, in its order.
"""

from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass

from builder.model.dates.studio_class import StudioClass
from builder.model.recipe.column import Column
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.lesson import Part, Where


@dataclass(frozen=True)
class Followed:
    """What is followed step by step: where, as a sentence says it, the parts in which its steps stand, and the amounts of its batch."""

    where: str
    parts: tuple[Part, ...]
    column: Column


def recipe_about(part: Part, made: Sequence[str]) -> str | None:
    """Return the key of the recipe that a part is about: the one that it names, or the first; None where the class does not make it."""
    key = part.recipe.text if part.recipe is not None else made[0]
    return key if key in made else None


def recipe_of(part: Part, studio_class: StudioClass, studio: Studio) -> Recipe | None:
    """Return the recipe that a part of a class is about; None where the class does not make it, or the studio has none of that key."""
    return studio.recipes.get(recipe_about(part, studio_class.recipe_keys) or "")


def parts_with_recipes(studio: Studio) -> Iterator[tuple[StudioClass, Part, Recipe]]:
    """Yield each part of each lesson that is about a recipe, with its class and that recipe."""
    for studio_class in studio.classes.values():
        for part in studio_class.lesson.parts:
            recipe = recipe_of(part, studio_class, studio)
            if recipe is not None:
                yield studio_class, part, recipe


def recipe_in_hand(part: Part, made: Sequence[str], with_lye: Container[str]) -> str:
    """Return the key of the recipe that people are taken to work on in a part: the one that it is about, or the first.

    Work of the students' hands that names neither recipe nor amount is taken for the one with lye, if there is one: the safe side.
    """
    names_nothing = part.by_hand and part.recipe is None and not part.mentions
    caustic = next((key for key in made if key in with_lye), None) if names_nothing else None
    return caustic or recipe_about(part, made) or made[0]


def home_parts(studio_class: StudioClass, recipe: str | None) -> tuple[Part, ...]:
    """Return the parts of the lesson that are done at home for one recipe, in order."""
    return _parts(studio_class, recipe, without=Where.CLASS_ONLY)


def class_parts(studio_class: StudioClass, recipe: str | None) -> tuple[Part, ...]:
    """Return the parts of the lesson that are done in class for one recipe, in order."""
    return _parts(studio_class, recipe, without=Where.HOME_ONLY)


def followed(plan: ClassPlan, made: MadeProduct) -> Iterator[Followed]:
    """Yield what is followed to make one product of a class: the lesson in class, and the take-home sheet where there is one."""
    studio_class, key = plan.studio_class, made.batch.recipe.key
    yield Followed("in class", class_parts(studio_class, key), made.batch.grams)
    if made.home:
        yield Followed("on the take-home sheet", home_parts(studio_class, key), made.home[0].batch.grams)


def _parts(studio_class: StudioClass, recipe: str | None, *, without: Where) -> tuple[Part, ...]:
    parts = (part for part in studio_class.lesson.parts if part.where is not without)
    return tuple(part for part in parts if recipe_about(part, studio_class.recipe_keys) == recipe)
