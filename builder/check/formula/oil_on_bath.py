"""Oil or scent that goes into the bath with nothing that spreads it."""

from collections.abc import Iterator

from builder.check.formula.formulas import FormulaPart, Formulation, formulas_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE

_SPREADS = (IngredientKind.EMULSIFIER, IngredientKind.SURFACTANT, IngredientKind.SOAP_BASE)
_SCENTS = (IngredientKind.ESSENTIAL_OIL, IngredientKind.FRAGRANCE)


@rule_on(
    STUDIO, FindingKind("oil-floats-on-bath", CAUTION, "Oil or scent floats on the bath, undiluted on the skin and slippery in the tub.")
)
def find_oil_on_the_bath(studio: Studio) -> Iterator[Finding]:
    """Look at what floats in each product for the bath, scent first: neat on the water it meets the skin undiluted."""
    for formula in formulas_of(studio):
        spread = any(part.card.kind in _SPREADS for part in formula.parts)
        floats = _floats(formula)
        if formula.product.contact == Contact.BATH and floats and not spread:
            scent = floats.card.kind in _SCENTS
            why = (
                "neat scent then meets the skin undiluted and can irritate and burn it"
                if scent
                else "it coats the tub and whoever gets out of it, and makes them slip"
            )
            yield caution(
                "oil-floats-on-bath",
                floats.place,
                f"{floats.card.name} does not mix with water, and nothing in {formula.recipe.name} spreads it: it floats on the bath, and "
                f"{why} ({PRACTICE}).",
                "Add a solubiliser such as polysorbate 20 for scent, or polysorbate 80 for oil, and stir the oil into it first. Salt or "
                "milk powder is no solubiliser.",
            )


def _floats(formula: Formulation) -> FormulaPart | None:
    scents = (part for part in formula.all if part.card.kind in _SCENTS)
    return next(
        scents, next((part for part in formula.parts if part.card.is_oily and part.card.counts_as is not CountsAs.FATTY_ACID), None)
    )
