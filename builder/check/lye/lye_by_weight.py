"""What goes with a lye stated by weight.

Decided: a weight of lye goes with the oils of the recipe as written; with ready-mixed lye it is refused. Why: nobody knows whether a
notebook means the solid or the solution.

Decided: a lye weight that names no alkali is taken for what such bars are made with, as a caution; for liquid soap it is asked. Why: the
caution says what was assumed; sodium hydroxide errs to the safe side.
"""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.recipe.recipe import AmountsAs, WaterBy
from builder.model.studio import Studio


@rule_on(
    STUDIO_UNWORKED,
    FindingKind(
        "lye-weight-without-weights",
        STOP,
        "Lye is stated by weight, and the rest of the recipe by percent, so that nobody knows how much fat it is for.",
    ),
    FindingKind(
        "alkali-assumed", CAUTION, "Lye is stated by weight without its name, and is taken for the usual one of that kind of soap."
    ),
)
def find_lye_weights_out_of_place(studio: Studio) -> Iterator[Finding]:
    """See that weights of lye or water stand in a recipe of weights, and say which alkali is meant where none is named."""
    for recipe in studio.recipes.values():
        plan = recipe.lye
        if plan is None:
            continue
        by_weight = [plan.at("weigh")] if plan.superfat is None else []
        by_weight += [plan.water.place] if plan.water.by is WaterBy.WEIGHT else []
        if by_weight and recipe.amounts_as is not AmountsAs.WEIGHTS:
            yield stop(
                "lye-weight-without-weights",
                by_weight[0],
                f"The lye is stated by weight and the rest as {recipe.amounts_as}, so that nothing says how much oil it is for.",
                "Write `amounts: weights` and the weight of each fat, or a superfat and a share of water.",
            )
        for alkali in plan.alkalis:
            if alkali.assumed:
                yield caution(
                    "alkali-assumed",
                    plan.at("weigh"),
                    f"Which alkali is weighed is not said. It is taken for {alkali.name}, with which {recipe.product} is usually made.",
                    f"Look it up, and write `alkali: {alkali.name}`. As much of another alkali gives another soap.",
                )
