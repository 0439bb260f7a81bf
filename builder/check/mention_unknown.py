"""mention-unknown: a name in braces that the recipe of that part does not know."""

from collections.abc import Iterator

from builder.model.finding import Finding, stop
from builder.model.lesson import Mention, Part, Prose, Steps
from builder.model.nearest import did_you_mean
from builder.model.place import fold
from builder.model.recipe import Recipe
from builder.model.studio import Studio
from builder.model.studio_class import StudioClass

FOR_ALL = ("batch", "portion", "containers")
FOR_SOAP = ("oils", "lye", "lye water", "lye solution", "superfat")


def known_names(recipe: Recipe, studio: Studio) -> set[str]:
    """Give every name that braces may hold for a recipe, folded."""
    names = {*FOR_ALL, *(choice.what for choice in recipe.choices)}
    if recipe.lye:
        names |= {*FOR_SOAP, *(liquid.name.text for liquid in recipe.lye.liquids), *(alkali.name.text for alkali in recipe.lye.alkalis)}
    names |= {phase.name.text for phase in recipe.phases} | {line.ingredient.text for line in recipe.lines}
    for name in tuple(names):
        card = studio.ingredient(name)
        if card:
            names |= {card.name, *card.also_called}
    return {fold(name) for name in names}


def find_unknown_mentions(studio: Studio) -> Iterator[Finding]:
    """Look up each name in braces of each lesson, and of the pages and introductions, which have no recipe."""
    for studio_class in studio.classes.values():
        for part in studio_class.lesson.parts:
            recipe = recipe_of(part, studio_class, studio)
            if recipe is None:
                continue
            known = known_names(recipe, studio)
            for mention in part.mentions:
                if mention.name.key not in known:
                    yield stop(
                        "mention-unknown",
                        mention.name.place,
                        f'"{mention.name}" is not in the recipe "{recipe.key}", so no amount can stand here.',
                        f"Write an ingredient, a phase, or one of {', '.join((*FOR_ALL, *(FOR_SOAP if recipe.lye else ())))}."
                        f"{did_you_mean(mention.name.text, known)}",
                    )
        yield from _without_recipe(studio_class.lesson.introduction)
    for page in studio.pages.values():
        yield from _without_recipe(page.blocks)


def recipe_of(part: Part, studio_class: StudioClass, studio: Studio) -> Recipe | None:
    """Give the recipe that a part is about: the one it names, or the first that the class makes."""
    if part.recipe is not None:
        return studio.recipes.get(part.recipe.text)
    return studio.recipes.get(studio_class.makes[0].recipe.text) if studio_class.makes else None


def _without_recipe(blocks: tuple[object, ...]) -> Iterator[Finding]:
    for block in blocks:
        runs = [block.pieces] if isinstance(block, Prose) else [s.pieces for s in block.steps] if isinstance(block, Steps) else []
        for pieces in runs:
            for piece in pieces:
                if isinstance(piece, Mention):
                    yield stop(
                        "mention-without-recipe",
                        piece.name.place,
                        "Amounts in braces can stand only in the parts of a lesson, where it is known which batch is meant.",
                        "Write the words without braces, or move the sentence into a part.",
                    )
