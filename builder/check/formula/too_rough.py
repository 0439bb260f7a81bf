"""Grains that scratch the part of the body on which a product is used."""

import re
from collections.abc import Iterator

from builder.check.figure_words import inside
from builder.check.formula.formulas import FormulaPart, Formulation, formulas_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import WATERY
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE
from builder.words.listed import listed_once

_NAMED = {"face": re.compile(r"\b(face|facial)\b", re.IGNORECASE)}
_DISSOLVES = (IngredientKind.SALT, IngredientKind.SUGAR)


@rule_on(STUDIO, FindingKind("too-rough", CAUTION, "Grains scratch the part of the body on which the product is used."))
def find_grains_too_rough(studio: Studio) -> Iterator[Finding]:
    """Compare the grains of each product with where its recipe, or its name, says that it is used."""
    for formula in formulas_of(studio):
        for part_of_body in _parts_of_body(formula):
            rough = [part for part in formula.all if part_of_body in part.card.too_rough_for and _is_still_a_grain(part, formula)]
            if rough:
                grains = listed_once([inside(part.card) for part in rough])
                yield caution(
                    "too-rough",
                    rough[0].place,
                    f"{formula.recipe.name} is for the {part_of_body}, and the grains of {grains} are "
                    f"sharp or coarse: they scratch its thin skin and hurt eyes ({PRACTICE}).",
                    "Take something soft or round, such as colloidal oatmeal, rice flour, clay or jojoba beads, or make it for feet and "
                    "body and say on the label “Not for the face.”",
                )


def _parts_of_body(formula: Formulation) -> list[str]:
    named = [part for part, word in _NAMED.items() if word.search(formula.recipe.name)]
    return list(dict.fromkeys((*formula.recipe.used_on, *named)))


def _is_still_a_grain(part: FormulaPart, formula: Formulation) -> bool:
    """Tell whether it is not dissolved: salt and sugar are, in what holds water."""
    dissolved = formula.with_lye or formula.first(*WATERY)
    return not (part.card.kind in _DISSOLVES and dissolved)
