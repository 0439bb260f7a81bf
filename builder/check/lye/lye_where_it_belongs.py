"""Whether soap has lye and oils, nothing else has lye, and the plan of the lye holds together."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.recipe.shares_not_whole import of_whole
from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.recipe import AmountsAs, LyePlan, Recipe
from builder.model.studio import Studio
from builder.words.nearest import did_you_mean


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("lye-not-wanted", STOP, "The product is not made with lye, and the recipe has some."),
    FindingKind("lye-missing", STOP, "The product is made with lye, and the recipe does not say which or how much."),
    FindingKind(
        "lye-with-percent-of-total", STOP, "The oils are a percentage of a total that holds the lye, though the lye follows from them."
    ),
    FindingKind("oils-missing", STOP, "There is lye and no fat for it."),
    FindingKind("lye-shares-not-whole", STOP, "The alkalis of the lye do not make 100 %."),
    FindingKind("not-an-alkali", STOP, "Something is named as the alkali that does not turn fat into soap."),
)
def find_lye_out_of_place(studio: Studio) -> Iterator[Finding]:
    """See that soap has lye and oils, that nothing else has lye, and that the lye is made of alkalis."""
    for recipe in studio.recipes.values():
        made_with_lye = studio.products[recipe.product].made_with_lye
        if recipe.lye is None:
            if made_with_lye:
                yield stop(
                    "lye-missing",
                    recipe.at("product"),
                    f"{recipe.product.capitalize()} is made with lye, and this recipe does not say which or how much.",
                    "Add a `lye:` block with alkali, superfat and water. Melt-and-pour soap is a product of its own.",
                )
            continue
        if not made_with_lye:
            yield stop(
                "lye-not-wanted",
                recipe.lye.place,
                f"A {recipe.product} is not made with lye: what is left of it would burn the skin.",
                "Remove the `lye:` block, or correct `product:`.",
            )
        yield from _plan(recipe, recipe.lye, studio)


def _plan(recipe: Recipe, plan: LyePlan, studio: Studio) -> Iterator[Finding]:
    if recipe.amounts_as is AmountsAs.PERCENT_OF_TOTAL:
        yield stop(
            "lye-with-percent-of-total",
            recipe.at("amounts"),
            "The lye follows from the oils, so the oils of a soap cannot be a percentage of a total that includes the lye.",
            "Write `amounts: percent of oils` (the oils come to 100 %) or `amounts: weights`.",
        )
    cards = [studio.ingredient(line.ingredient) for line in recipe.lines]
    if all(cards) and not any(card and card.counts_as.is_oil for card in cards):
        yield stop("oils-missing", plan.place, "There is lye but no fat for it to turn into soap.", "Add the oils, or remove the lye.")
    alkalis = [card.name for card in studio.ingredients.values() if card.counts_as is CountsAs.ALKALI]
    for alkali in plan.alkalis:
        card = studio.ingredient(alkali.name)
        if card and card.counts_as is not CountsAs.ALKALI:
            yield stop(
                "not-an-alkali",
                alkali.name.place,
                f'"{alkali.name}" does not turn fat into soap.',
                f"Write sodium hydroxide for a bar or potassium hydroxide for a liquid soap.{did_you_mean(alkali.name.text, alkalis)}",
            )
    shares = sum((alkali.share for alkali in plan.alkalis), Fraction(0))
    if shares != 1:
        yield stop(
            "lye-shares-not-whole",
            plan.at("alkali"),
            f"The alkalis come to {of_whole(shares)}.",
            "Correct their shares.",
        )
