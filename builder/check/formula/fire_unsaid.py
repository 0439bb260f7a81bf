"""A spray or a splash of so much alcohol that it burns, whose label does not say so."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.figure_words import inside
from builder.check.formula.formulas import FormulaPart, formulas_of
from builder.check.keeping.alcohol import share_that
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.studio import Studio
from builder.rules.basis import basis_of
from builder.words.fold import fold
from builder.words.percent import percent

_SHARE, _FLASH = "alcohol above which a liquid goes on burning", "flash point below which a liquid is highly flammable"
_SAID = ("flam", "fire", "spark", "heat")


@rule_on(
    STUDIO,
    FindingKind("fire-unsaid", CAUTION, "The product holds so much alcohol that it burns, and its label does not say so."),
)
def find_fire_unsaid(studio: Studio) -> Iterator[Finding]:
    """Look at what is no soap, and at what its label says in cautions, directions and on storing it."""
    least, flash = studio.constants[_SHARE], studio.constants[_FLASH].typical

    def burns(card: Ingredient) -> Fraction:
        """Count alcohol whole: oils of scent flash sooner than they are enough to burn."""
        point = card.figure("flash point")
        return Fraction(point is not None and point.low < flash and card.counts_as is CountsAs.OTHER)

    for formula in formulas_of(studio):
        first: FormulaPart | None = next((part for part in formula.parts if burns(part.card)), None)
        share = share_that(formula.recipe, studio, burns)
        text = f"{formula.label_text} {fold(formula.recipe.storage)}"
        if first and not formula.with_lye and 100 * share > least.typical and not any(word in text for word in _SAID):
            yield caution(
                "fire-unsaid",
                first.place,
                f"{formula.recipe.name} holds {percent(share)} of what burns ({inside(first.card)}), and its label does not say so: more "
                f"than about {percent(least.typical / 100)} burns on after it was lit ({basis_of(least)}), and a mist of it in a flash.",
                "Add to `label cautions:` a line such as “Flammable. Keep away from heat, sparks and flames.”",
            )
