"""Bicarbonate and an acid kept in a jar together with water."""

from collections.abc import Iterator

from builder.check.figure_words import inside
from builder.check.formula.formulas import formulas_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import WATERY
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE
from builder.rules.fizz import carbonate


@rule_on(
    STUDIO,
    FindingKind(
        "fizz-and-water", CAUTION, "Bicarbonate and an acid stand together with water: they fizz in the jar, and a closed one can burst."
    ),
)
def find_fizz_and_water(studio: Studio) -> Iterator[Finding]:
    """Look for all three in what is not made with lye."""
    for formula in formulas_of(studio):
        fizz = next((part for part in formula.parts if carbonate(part.card)), None)
        acid, water = formula.of_kind("acid"), formula.first(*WATERY)
        if fizz and acid and water and not formula.with_lye:
            yield caution(
                "fizz-and-water",
                water.place,
                f"{fizz.card.name} and {inside(acid[0].card)} stand together with {inside(water.card)}: they fizz at once. More of it than "
                f"a fine spray makes the product swell and spends it before it is used, and gas in a closed jar can burst it ({PRACTICE}).",
                "Bind with oil or a spray of alcohol, or with no more than a fine spray of this; let it dry in the open for a day, keep "
                "the lid loose in the first days, and store it dry.",
            )
