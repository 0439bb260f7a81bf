"""A recipe names an ingredient that no card answers to."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.words.nearest import did_you_mean


def unknown_names(recipe: Recipe, studio: Studio) -> Iterator[Name]:
    """Yield the names of a recipe that no card answers to, and none that could not be read."""
    yield from (name for name in recipe.names if studio.ingredient(name) is None and name.key not in studio.unread.ingredients)


@rule_on(STUDIO_UNWORKED, FindingKind("unknown-ingredient", STOP, "A recipe names an ingredient that no card answers to."))
def find_unknown_ingredients(studio: Studio) -> Iterator[Finding]:
    """Look up each name that a recipe writes."""
    known = [card.name for card in studio.ingredients.values()]
    for recipe in studio.recipes.values():
        for name in unknown_names(recipe, studio):
            near = did_you_mean(name.text, known, studio.synonyms.ingredients)
            yield stop(
                "unknown-ingredient",
                name.place,
                f'No ingredient is called "{name}", so its amount cannot be worked out or declared.',
                f"Correct the name, or add a card for it to shelf/ingredients/.{near}",
            )
