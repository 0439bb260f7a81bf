"""How long something keeps, and what it holds that does not.

Decided: what holds water keeps six months without a test. Why: challenge tests are for makers; nothing else supports a longer time.
"""

import re
from collections.abc import Iterator

from builder.check.formula.formulas import FormulaPart, Formulation, formulas_of
from builder.check.keeping.low_risk import measurable
from builder.check.keeping.preservatives import is_preservative
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, FindingKind
from builder.model.keeping.durability import Durability
from builder.model.label.language import OWN
from builder.model.recipe.ingredient import WATERY, CountsAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.studio import Studio
from builder.rules.basis import basis_of
from builder.rules.durability import durability_in
from builder.words.fold import fold
from builder.words.plain_number import plain_number

PRESERVED, UNPRESERVED = "months that what is preserved and not tested keeps", "days that water without a preservative keeps"
_NO_FOOD = (
    IngredientKind.ESSENTIAL_OIL,
    IngredientKind.OIL,
    IngredientKind.BUTTER,
    IngredientKind.WAX,
    IngredientKind.EMULSIFIER,
    IngredientKind.PRESERVATIVE,
    IngredientKind.ANTIOXIDANT,
    IngredientKind.FRAGRANCE,
    IngredientKind.FLAVOUR,
    IngredientKind.COLOURANT,
)
_FRESH = re.compile(r"\b(fresh|pur[ée]e|mashed|yogh?urt|egg|(?<!aloe )(?<!aloe vera )juice)\b")
_BREWED = re.compile(r"\b(tea|infusion|decoction|brewed)\b")
_AT_ONCE = ("at once", "single use", "one use", "same day", "right away", "immediately", "throw", "discard")


@rule_on(
    STUDIO,
    FindingKind(
        "fresh-food-in-product",
        ACCEPTABLE_STOP | CAUTION,
        "Fresh food is in the product, with more microbes than a preservative holds back.",
    ),
    FindingKind("keeps-unsupported", CAUTION, "The product is said to keep longer than anything shows."),
    FindingKind("single-use-unsaid", CAUTION, "A product for a single use does not say so, will be kept, and spoils unseen."),
)
def find_what_does_not_keep(studio: Studio) -> Iterator[Finding]:
    """Look at what is made without lye: raw soap is too alkaline for what lives on food."""
    for formula in formulas_of(studio):
        if formula.with_lye:
            continue
        if formula.recipe.single_use:
            yield from _single_use(formula)
            continue
        fresh = next((part for part in formula.all if is_fresh_food(part.card, formula)), None)
        if fresh:
            yield _fresh_food(formula, fresh)
        yield from _keeps(formula, studio)


def is_fresh_food(card: Ingredient, formula: Formulation) -> bool:
    """Tell whether something goes in as it would be eaten or drunk; what is brewed or dry, only where water is."""
    name, wet = fold(card.name), formula.first(*WATERY) is not None
    if card.kind in _NO_FOOD or "extract" in name:
        return False
    return bool(_FRESH.search(name)) or (wet and (card.kind is IngredientKind.MILK or bool(_BREWED.search(name))))


def _fresh_food(formula: Formulation, part: FormulaPart) -> Finding:
    wrong = (
        f"{part.card.name} is food: it brings microbes and what they live on, more than the usual share of a preservative holds back, and "
        f"{formula.recipe.name} spoils unseen (formulation teaching, from memory)."
    )
    remedy = (
        "Use an extract or a dry powder that its supplier has preserved, and water in its place. Or make it fresh, use it at once and "
        "throw the rest away: then write `single use: yes`."
    )
    if formula.stays_on:
        return stop("fresh-food-in-product", part.place, wrong, remedy, acceptable=True)
    return caution("fresh-food-in-product", part.place, wrong, remedy)


def _single_use(formula: Formulation) -> Iterator[Finding]:
    recipe = formula.recipe
    if recipe.keeps and _is_longer(recipe.keeps, Durability(0, 1)):
        yield caution(
            "keeps-unsupported",
            recipe.at("keeps"),
            f"{recipe.name} is for a single use, and is said to keep {recipe.keeps}. Both cannot be.",
            "Remove `keeps:`, or remove `single use:` and preserve it.",
        )
    if not any(word in f"{formula.label_text} {fold(recipe.told_in(OWN).storage)}" for word in _AT_ONCE):
        yield caution(
            "single-use-unsaid",
            recipe.at("single use"),
            f"{recipe.name} is for a single use, and neither its label nor its sheet says so: it will be kept, and spoil unseen.",
            "Write in `directions:` or `label cautions:`, for example “Use it at once, and throw away what is left.”",
        )


def _keeps(formula: Formulation, studio: Studio) -> Iterator[Finding]:
    """Look at what holds water; where it has no preservative, only once that has been accepted: until then it is a finding of its own."""
    recipe = formula.recipe
    if not recipe.keeps or formula.first(*WATERY) is None or formula.first(CountsAs.BASE):
        return
    months, days = studio.constants[PRESERVED], studio.constants[UNPRESERVED]
    if any(is_preservative(part.card) for part in formula.parts):
        if _is_longer(recipe.keeps, Durability(int(months.typical), 0)):
            yield caution(
                "keeps-unsupported",
                recipe.at("keeps"),
                f"{recipe.name} is said to keep {recipe.keeps}. Nothing shows that it does: it holds water, and what is preserved but not "
                f"tested is used up within {plain_number(months.typical)} months ({basis_of(months)}).",
                "Shorten it, or accept this and name the test (a challenge test, ISO 11930).",
            )
    elif "no-preservative" in recipe.accepts and _is_longer(recipe.keeps, Durability(0, int(days.typical))):
        yield caution(
            "keeps-unsupported",
            recipe.at("keeps"),
            f"{recipe.name} holds water and no preservative, and is said to keep {recipe.keeps}. Cold and clean, "
            f"{plain_number(days.typical)} days are the most ({basis_of(days)}).",
            f"Shorten it, or write `single use: yes`; or accept this and name what was measured ({measurable(studio)}).",
        )


def _is_longer(keeps: str, most: Durability) -> bool:
    found = durability_in(keeps)
    return found is not None and found.is_longer_than(most)
