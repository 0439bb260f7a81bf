"""Lye that is listed like any ingredient, where nothing works out or checks how much of it is safe."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("alkali-among-ingredients", STOP, "Lye stands among ordinary ingredients, where nobody works out how much of it is safe."),
)
def find_alkalis_among_ingredients(studio: Studio) -> Iterator[Finding]:
    """Look for alkalis among the lines of each recipe, and among what students may add."""
    for recipe in studio.recipes.values():
        for name in (*(line.ingredient for line in recipe.lines), *recipe.options):
            card = studio.ingredient(name)
            if card and card.counts_as is CountsAs.ALKALI:
                wrong, remedy = _why(card.name, recipe, studio)
                yield stop("alkali-among-ingredients", name.place, wrong, remedy)


def _why(alkali: str, recipe: Recipe, studio: Studio) -> tuple[str, str]:
    if studio.products[recipe.product].made_with_lye:
        return (
            f"{alkali} is lye. Here nobody works out how much of it the fats can take up, and what is left of it burns the skin.",
            "Remove the line, and name the alkali in the `lye:` block: how much of it is wanted follows from the fats.",
        )
    return (
        f"{alkali} is lye and burns the skin. Adjusting the pH of a product with lye is not checked here, so no amount of it is printed.",
        "Remove the line. Where the pH has to be raised, follow the supplier of the base or the preservative, and measure.",
    )
