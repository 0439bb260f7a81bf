"""The pH that a product with water usually has, by its kind, or by what holds it together."""

from builder.check.formula.formulas import Formulation
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import CountsAs
from builder.model.studio import Studio

HELD_BY_SOAP = "pH of a cream that a soap holds"


def usual_ph_of(formula: Formulation, studio: Studio) -> tuple[str, Figure] | None:
    """Return what such products are called, without an article, and their usual pH; None where that is not known.

    A cream whose emulsifier is the soap of borax or another mild alkali is as alkaline as that soap, whatever its kind usually has.
    """
    alkali = next((part for part in formula.parts if part.card.figure("neutralises")), None)
    acid = next((part for part in formula.parts if part.card.figure("acid value") or part.card.counts_as is CountsAs.FATTY_ACID), None)
    if alkali and acid and not formula.with_lye and HELD_BY_SOAP in studio.constants:
        return f"{formula.product.name} that a soap holds", studio.constants[HELD_BY_SOAP]
    usual = formula.product.usual_ph
    return (formula.product.name, usual) if usual else None
