"""A product whose contents the region wants by volume, of which nobody has measured the density.

Decided: a liquid of unknown density gets its weight on the label, and a caution. Why: the weight is true; a guessed density would be
none.
"""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.label.region import RegionRule
from builder.model.studio import Studio
from builder.rules.basis import from_memory


@rule_on(
    STUDIO,
    FindingKind("contents-by-weight", CAUTION, "The label has to give the contents by volume, and without a density it gives the weight."),
)
def find_contents_by_weight(studio: Studio) -> Iterator[Finding]:
    """Look at each recipe that a class makes; any other has no label."""
    region = studio.region
    rule = region.rule("liquids")
    for recipe in studio.recipes_made:
        product = studio.products.get(recipe.product)
        if rule and recipe.density is None and product is not None and product.by_volume(region):
            yield caution(
                "contents-by-weight",
                recipe.at("product"),
                f"{recipe.name}: the label of a {product.name} says in this region by volume how much is in it ({_where(rule)}), and a "
                "weight becomes a volume only through a density. Without one the label gives the weight.",
                "Weigh 100 mL of the finished product, and write it as `density:` in the recipe. Where your trade sells it by weight, "
                "accept this and say so.",
            )


def _where(rule: RegionRule) -> str:
    return f"{rule.says}: {rule.at}{from_memory(rule.known, ', ')}"
