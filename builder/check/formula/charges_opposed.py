"""An emulsifier or surfactant of one charge beside one of the other."""

from collections.abc import Iterator

from builder.check.figure_words import inside
from builder.check.formula.formulas import formulas_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import Charge
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE


@rule_on(
    STUDIO,
    FindingKind(
        "charges-opposed", CAUTION, "Two ingredients of opposite charge bind each other, and the emulsion breaks or the foam is gone."
    ),
)
def find_opposed_charges(studio: Studio) -> Iterator[Finding]:
    """Look for a cationic ingredient beside an anionic one; raw soap is anionic itself."""
    for formula in formulas_of(studio):
        cationic = next((part for part in formula.parts if part.card.charge is Charge.CATIONIC), None)
        anionic = next((inside(part.card) for part in formula.parts if part.card.charge is Charge.ANIONIC), "")
        if formula.with_lye or formula.of_kind("soap base"):
            anionic = anionic or "the soap"
        if cationic and anionic:
            yield caution(
                "charges-opposed",
                cationic.place,
                f"{cationic.card.name} is cationic and {anionic} is anionic: the two bind each other, so that the emulsion breaks or the "
                f"foam is gone ({PRACTICE}).",
                "Use emulsifiers, thickeners and surfactants of one charge, or uncharged ones.",
            )
