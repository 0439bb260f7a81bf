"""A class makes, or a part of its lesson is about, a recipe that the studio does not have."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio
from builder.words.nearest import did_you_mean


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("unknown-recipe", STOP, "A class names a recipe that the studio does not have."),
    FindingKind("part-about-another-recipe", STOP, "A part of the lesson is about a recipe that the class does not make."),
)
def find_unknown_recipes(studio: Studio) -> Iterator[Finding]:
    """Look up the recipes of each class and of each part."""
    for studio_class in studio.classes.values():
        made = studio_class.recipe_keys
        for make in studio_class.makes:
            if make.recipe.text not in studio.recipes and make.recipe.text not in studio.unread.recipes:
                yield stop(
                    "unknown-recipe",
                    make.recipe.place,
                    f'There is no recipe "{make.recipe}" in recipes/, so this class has nothing to make.',
                    f"Write the name of a file in recipes/ without its ending.{did_you_mean(make.recipe.text, studio.recipes)}",
                )
        for part in studio_class.lesson.parts:
            if part.recipe is not None and part.recipe.text not in made:
                yield stop(
                    "part-about-another-recipe",
                    part.recipe.place,
                    f'This part is about "{part.recipe}", which the class does not make.',
                    f"Name one of the recipes under makes: {', '.join(made)}.{did_you_mean(part.recipe.text, made)}",
                )
