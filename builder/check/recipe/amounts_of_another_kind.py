"""An amount that does not go with the way in which the recipe states its amounts."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.quantity import Amount, Drops, Mass, Parts, Rest, Share, Volume
from builder.model.recipe.recipe import AmountsAs
from builder.model.studio import Studio

_ALLOWED: dict[AmountsAs, tuple[type, ...]] = {
    AmountsAs.PERCENT_OF_TOTAL: (Share, Rest),
    AmountsAs.PERCENT_OF_OILS: (Share,),
    AmountsAs.PARTS: (Parts,),
    AmountsAs.WEIGHTS: (Mass, Volume, Drops),
}
_EXAMPLE = {
    AmountsAs.PERCENT_OF_TOTAL: "a percentage such as `3 %`, or `rest`",
    AmountsAs.PERCENT_OF_OILS: "a percentage of the oils such as `3 %`",
    AmountsAs.PARTS: "parts such as `2 parts`",
    AmountsAs.WEIGHTS: "a weight such as `250 g` (or a volume or drops, where a density or the weight of a drop is known)",
}


def goes_with(amount: Amount, amounts_as: AmountsAs) -> bool:
    """Tell whether an amount is of a kind in which a recipe states its amounts."""
    return isinstance(amount, _ALLOWED[amounts_as])


@rule_on(
    STUDIO_UNWORKED,
    FindingKind(
        "amount-of-another-kind",
        STOP,
        "An amount is written in another way than the recipe states its amounts, so that it cannot be worked out.",
    ),
)
def find_amounts_of_another_kind(studio: Studio) -> Iterator[Finding]:
    """Compare each amount with what the recipe says of its amounts."""
    for recipe in studio.recipes.values():
        for line in recipe.lines:
            if not goes_with(line.amount, recipe.amounts_as):
                yield stop(
                    "amount-of-another-kind",
                    line.place,
                    f'This recipe states its amounts as {recipe.amounts_as}; the amount of "{line.ingredient}" is something else.',
                    f"Write {_EXAMPLE[recipe.amounts_as]}, or change `amounts:` for the whole recipe.",
                )
