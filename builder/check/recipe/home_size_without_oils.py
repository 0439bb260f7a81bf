"""A home batch whose size is a weight of oils, of a recipe that has none."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio


@rule_on(STUDIO_UNWORKED, FindingKind("home-size-without-oils", STOP, "A home batch is sized by its oils, and the recipe has none."))
def find_home_sizes_without_oils(studio: Studio) -> Iterator[Finding]:
    """Look for oils in each recipe whose home batches are sized by them."""
    for studio_class in studio.classes.values():
        for make in studio_class.makes:
            recipe = studio.recipes.get(make.recipe.text)
            # A soap without oils is a finding of its own.
            if recipe is None or recipe.lye:
                continue
            cards = [studio.ingredient(line.ingredient) for line in recipe.lines]
            if any(card is None or card.counts_as.is_oil for card in cards):
                continue
            for size in make.at_home:
                if size.oils is not None:
                    yield stop(
                        "home-size-without-oils",
                        size.place,
                        f'The recipe "{make.recipe}" has no oils, so a size by the weight of the oils says nothing of it.',
                        'Write the weight of the whole batch, such as "250 g", or a number of containers.',
                    )
