"""What a label has to tell the user, and neither its cautions nor the directions say.

The words are looked for, not their sense: what is said otherwise is
accepted with a reason.

Decided: what a label must say is looked for by its words in the cautions and directions. Why: the studio writes its own label; what is
said otherwise is accepted with a reason.

Decided: a bar made with lye is no look-alike of food by what goes into it: coffee grounds, oats or a smell of oranges. Why: what counts
is that a product is taken for food by its form, smell, colour, look or pack (Directive 87/357/EEC, Article 1(2), which the Food Imitations
(Safety) Regulations 1989 of the United Kingdom follow; Regulation (EU) 2023/988, Article 6(1)(f); all three from memory), and a bar of
soap is known for one; that it was poured into the shape of a cake, no recipe says.
"""

from collections.abc import Iterator, Mapping

from builder.check.figure_words import inside
from builder.check.formula.formulas import Formulation, formulas_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.hazard import Hazard
from builder.model.label.region import Region
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact, DeclaredBy
from builder.model.studio import Studio
from builder.rules.basis import FROM_MEMORY, PRACTICE

_FOAMS = (IngredientKind.SURFACTANT, IngredientKind.SOAP_BASE)
_AT_THE_BASIN = frozenset({BodyPart.FACE, BodyPart.EYE, BodyPart.HAND})  # Rinsed off there, and not in tub or shower.
_PRACTICE = "common practice; the EU has it in the safety assessment under Regulation (EU) 2023/988"


@rule_on(
    STUDIO,
    FindingKind("slippery-unsaid", CAUTION, "The product makes tub and floor slippery, and its label does not say so."),
    FindingKind("stain-unsaid", CAUTION, "The colour of the product stains, and its label does not say so."),
    FindingKind("directions-missing", CAUTION, "The product has to carry directions for safe use, and the recipe gives none."),
    FindingKind("food-look-alike", CAUTION, "The product looks or smells like food, and its label does not say that it is none."),
)
def find_what_labels_leave_unsaid(studio: Studio) -> Iterator[Finding]:
    """Compare what goes into each product that is used in water with the words of its label."""
    youngest = _youngest_by_recipe(studio)
    for formula in formulas_of(studio):
        if not formula.product.contact.stays_on:
            yield from _slippery(formula)
            yield from _stains(formula)
            yield from _undirected(formula, studio.region)
            yield from _like_food(formula, studio.region, youngest.get(formula.recipe.key))


def _slippery(formula: Formulation) -> Iterator[Finding]:
    part = next((part for part in formula.all if Hazard.SLIPPERY in part.card.hazards), None)
    is_soap = formula.with_lye or any(part.card.kind is IngredientKind.SOAP_BASE for part in formula.all)
    at_the_basin = _AT_THE_BASIN.issuperset(formula.recipe.goes_on(formula.product.used_on) or (BodyPart.BODY,))
    if part and not is_soap and not at_the_basin and "slip" not in formula.label_text:
        yield caution(
            "slippery-unsaid",
            part.place,
            f"{formula.recipe.name} holds {inside(part.card)} and makes tub and floor slippery, and its label does not say so. A fall in "
            "a bath can break bones (official advice on emollient bath products; British National Formulary).",
            "Add to `label cautions:` a line such as “Makes the tub and floor slippery. Hold on, and rinse the tub.”",
        )


def _stains(formula: Formulation) -> Iterator[Finding]:
    part = next((part for part in formula.all if Hazard.STAINS in part.card.hazards), None)
    if part and formula.product.contact == Contact.BATH and not any(word in formula.label_text for word in ("stain", "rinse the tub")):
        yield caution(
            "stain-unsaid",
            part.place,
            f"{formula.recipe.name} holds {inside(part.card)}, whose colour stains the tub and light towels, and its label does not say "
            f"so ({PRACTICE}).",
            "Add to `label cautions:` a line such as “Rinse the tub after use, as it can stain.”",
        )


def _undirected(formula: Formulation, region: Region) -> Iterator[Finding]:
    part = next((part for part in formula.all if part.card.kind in _FOAMS), None)
    if part and region.says("foaming baths") == "directions" and formula.product.contact == Contact.BATH and not formula.recipe.directions:
        yield caution(
            "directions-missing",
            formula.recipe.place,
            f"{formula.recipe.name} foams in the bath with {inside(part.card)}. Its label has to warn “Use only as directed”, with "
            "directions for safe use (21 CFR 740.17), and the recipe gives none.",
            "Write `directions:`, for example “Pour one capful under running water. Rinse off afterwards.”",
        )


def _like_food(formula: Formulation, region: Region, youngest: int | None) -> Iterator[Finding]:
    is_bar = formula.with_lye and formula.product.declared_by is DeclaredBy.WEIGHT
    part = next((part for part in formula.all if part.card.like_food), None)
    if is_bar or part is None or any(word in formula.label_text for word in ("eat", "food", "drunk", "drink", "swallow")):
        return
    young = (
        f" A class from {youngest} years on makes it, and children taste what they know from the kitchen." if youngest is not None else ""
    )
    yield caution(
        "food-look-alike",
        part.place,
        f"{formula.recipe.name} looks or smells like food with {inside(part.card)}, and its label does not say that it is none: children "
        f"and forgetful people may eat it ({_why_no_food(region)}).{young}",
        "Add “Not to be eaten.” to `label cautions:`, use no food shape, food jar or drink bottle, and give none of it to small children.",
    )


def _why_no_food(region: Region) -> str:
    rule = region.rule("look of food")
    if rule is None:
        return _PRACTICE
    return f"{rule.says} ({FROM_MEMORY})" if rule.known is Known.MEMORY else rule.says


def _youngest_by_recipe(studio: Studio) -> Mapping[str, int]:
    found: dict[str, int] = {}
    for a_class in studio.classes.values():
        for make in a_class.makes:
            found[make.recipe.text] = min(a_class.youngest, found.get(make.recipe.text, a_class.youngest))
    return found
