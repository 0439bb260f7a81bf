"""An alkali that makes another soap than the recipe is to be: a soft one in a mould, or a hard one in a bottle.

Decided: bars of which some of the alkali is potassium hydroxide are silent, and so is soft soap in a jar. Why: both are usual.
"""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.product import DeclaredBy
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE
from builder.words.fold import fold

_HARD, _SOFT = "sodium hydroxide", "potassium hydroxide"


@rule_on(STUDIO, FindingKind("alkali-unusual", CAUTION, "The alkali makes another soap than is meant: soft in a mould, hard in a bottle."))
def find_unusual_alkali(studio: Studio) -> Iterator[Finding]:
    """Look at soaps with one alkali alone, and at what they are filled into."""
    for recipe in studio.recipes.values():
        product = studio.products[recipe.product]
        if recipe.lye is None or len(recipe.lye.alkalis) != 1 or not product.made_with_lye:
            continue
        alkali, container = studio.ingredient(recipe.lye.alkalis[0].name), studio.container(recipe.fill.container)
        names = {fold(name) for name in (alkali.name, *alkali.also_called)} if alkali else set()
        if _SOFT in names and container and container.is_mould:
            meant, what = _HARD, f"{recipe.name} is poured into a mould, and potassium hydroxide alone makes a soft soap that never sets"
        elif _HARD in names and product.declared_by is DeclaredBy.VOLUME:
            meant, what = _SOFT, f"{recipe.name} is to be liquid, and sodium hydroxide alone makes a soap that sets hard"
        else:
            continue
        yield caution(
            "alkali-unusual",
            recipe.lye.at("alkali"),
            f"{what} ({PRACTICE}).",
            f"Write `alkali: {meant}`, and compare with your notes which of the two a weight of lye is meant for: as much of the other "
            "makes another soap, too weak or too sharp. Or accept this with your reason.",
        )
