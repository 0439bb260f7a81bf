"""Plants, milk and honey that spoil, clog or go stale where they are put.

Decided: bought flower waters and juices are silent in what is preserved in whole. Why: toners and gels are made of them, and how long
such a product keeps is a rule of its own.
"""

from collections.abc import Iterator

from builder.check.figure_words import inside
from builder.check.formula.formulas import FormulaPart, Formulation, formulas_of
from builder.check.keeping.keeping import is_fresh_food
from builder.check.keeping.preservatives import is_enough, is_preservative
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.hazard import Hazard
from builder.model.recipe.ingredient import WATERY
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE

_FOOD = (
    IngredientKind.HERB,
    IngredientKind.MILK,
    IngredientKind.LIQUID,
    IngredientKind.SUGAR,
    IngredientKind.GRAIN,
    IngredientKind.COLOURANT,
    IngredientKind.EXFOLIANT,
)
_PIECES = (IngredientKind.HERB,)
_CAUGHT = ("bag", "strain", "sieve", "pouch", "tied cloth")


@rule_on(
    STUDIO,
    FindingKind("spoils-in-water", CAUTION, "Something in a product with water feeds what grows in it."),
    FindingKind("plants-in-oil", CAUTION, "Pieces of plants stay in oil, where they can mould and scratch."),
    FindingKind("plants-in-drain", CAUTION, "Pieces of plants clog the drain of the bath and stain."),
)
def find_plants_out_of_place(studio: Studio) -> Iterator[Finding]:
    """Look for what spoils in a lotion, for pieces in the drain, and for pieces in oil that stays on the skin."""
    for formula in formulas_of(studio):
        water = formula.first(*WATERY)
        preserved = is_enough(part.card for part in formula.parts if is_preservative(part.card))
        bottled = (IngredientKind.LIQUID,) if preserved else ()
        spoiling = (part for part in formula.all if _spoils(part) and part.card.kind not in bottled)
        spoils = next((part for part in spoiling if not is_fresh_food(part.card, formula)), None)
        pieces = next((part for part in formula.all if part.card.kind in _PIECES), None)
        if formula.with_lye or (formula.recipe.single_use and formula.stays_on):
            continue
        if water and spoils and formula.stays_on:
            yield _in_water(formula, spoils)
        elif pieces and formula.stays_on:
            yield _in_oil(formula, pieces)
        clogs = next((part for part in formula.all if _clogs(part)), None)
        if clogs and not formula.stays_on and not any(word in formula.label_text for word in _CAUGHT):
            yield _in_drain(clogs)


def _spoils(part: FormulaPart) -> bool:
    return part.card.kind in _FOOD and Hazard.SPOILS in part.card.hazards


def _clogs(part: FormulaPart) -> bool:
    """Tell whether something stays in pieces in water: flowers and leaves, coffee, oats that are not ground to flour."""
    coarse = part.card.kind is IngredientKind.EXFOLIANT and Hazard.SPOILS in part.card.hazards
    return part.card.kind in _PIECES or coarse or (part.card.kind is IngredientKind.GRAIN and Hazard.DUST not in part.card.hazards)


def _in_water(formula: Formulation, part: FormulaPart) -> Finding:
    return caution(
        "spoils-in-water",
        part.place,
        f"{formula.recipe.name} holds water and stays on the skin, and {inside(part.card)} in it means microbes and what they live on. "
        "The preservative of a class product is not tested against that (formulation teaching, from memory).",
        "Use an extract or a dry powder that the supplier has preserved, or leave it out. If you keep it, make it small, keep it cold, "
        "use it within days, and accept this.",
    )


def _in_oil(formula: Formulation, part: FormulaPart) -> Finding:
    return caution(
        "plants-in-oil",
        part.place,
        f"Pieces of {inside(part.card)} stay in {formula.recipe.name}: what of them is not bone dry moulds in the oil, and dry edges "
        f"scratch skin and lips ({PRACTICE}).",
        "Let the dry plant steep in the oil, strain it through a cloth, and use the oil alone.",
    )


def _in_drain(part: FormulaPart) -> Finding:
    return caution(
        "plants-in-drain",
        part.place,
        f"Loose in bath or shower, {inside(part.card)} stay whole and clog the drain, and wet they spoil and stain ({PRACTICE}).",
        "Put them into a bag, or say in `directions:` that the water is strained.",
    )
