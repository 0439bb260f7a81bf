"""Whether what holds water has a preservative, and what holds oil something that keeps the oil from going rancid.

A product of low risk (`low_risk.py`) needs none. Known here is: free of water, soap made with lye, of such a pH, of so much alcohol.

Decided: a product with water and oil wants an antioxidant only where it is to keep for over three months: sooner its oils go not stale.

Decided: a fat with at most 12 % of polyunsaturated fatty acids wants no antioxidant; one whose figure is not known does. Why: coconut
oil, cocoa butter and shea keep for years; a false alarm on every balm would cost the trust in the others.

Decided: what fizzes is not looked at for water. Why: a spray that binds it dries in a day, and water beside fizz is a finding of its own.

Decided: fresh food is told by the words of a name and by its kind. Why: own cards say no more; what is dry or preserved is named so, and
the stop can be accepted.
"""

from collections.abc import Iterator

from builder.check.figure_words import inside, range_of
from builder.check.keeping.low_risk import grows_nothing, least_activity, only_low_risk
from builder.check.keeping.preservatives import called_so, is_preservative, why_not
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, FindingKind
from builder.model.keeping.durability import Durability
from builder.model.place import Place
from builder.model.recipe.ingredient import CountsAs, Ingredient, MixesWith
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE, basis_of
from builder.rules.durability import durability_in
from builder.rules.fizz import carbonate
from builder.words.plain_number import plain_number

OIL_IN_WATER = "months that oil in water keeps by itself"
_GROWS_WHEN_WET = (
    IngredientKind.SUGAR,
    IngredientKind.GRAIN,
    IngredientKind.HERB,
    IngredientKind.EXFOLIANT,
    IngredientKind.STARCH,
    IngredientKind.MILK,
)
_CRITERIA = (
    "Water without a preservative grows bacteria and mould, often before it is seen or smelt, and they can harm skin and eyes. A cold "
    "place, vitamin E, essential oils, honey and seed extracts do not preserve."
)


@rule_on(
    STUDIO,
    FindingKind("no-antioxidant", CAUTION, "Oils go stale, and nothing slows that for as long as the product is to keep."),
    FindingKind("water-gets-in", CAUTION, "Wet hands bring water into a dry product, which then can spoil."),
    FindingKind("no-preservative", ACCEPTABLE_STOP | CAUTION, "The product holds water and has no preservative against what grows in it."),
)
def find_products_that_do_not_keep(studio: Studio) -> Iterator[Finding]:
    """Look at what each recipe holds that is not made with lye; one that has lye without need is a finding of its own."""
    for recipe in studio.recipes.values():
        product = studio.products[recipe.product]
        found = [(studio.ingredient(name), name.place) for name in recipe.names]
        cards = [(card, place) for card, place in found if card]
        if product.made_with_lye or recipe.lye or len(cards) < len(found):
            continue
        always = [studio.ingredient(line.ingredient) for line in recipe.lines]
        kinds = {card.kind for card in always if card}
        preserved = any(card is not None and is_preservative(card) for card in always)
        water = next((one for one in cards if one[0].counts_as.is_watery), None)
        fat = next((one for one in cards if one[0].counts_as is CountsAs.FAT and not _keeps_by_itself(one[0], studio)), None)
        if recipe.single_use:
            continue
        fizzes = IngredientKind.ACID in kinds and any(carbonate(card) for card in always if card)
        if water and not preserved and not fizzes and not grows_nothing(recipe, studio):
            yield _no_preservative(recipe, water, product.contact.stays_on, called_so(card for card in always if card), studio)
        elif product.meets_water and not preserved and not kinds & {IngredientKind.SOAP_BASE, IngredientKind.LOTION_BASE} and not water:
            yield from _water_gets_in(recipe, [(card, place) for card, place in cards if card in always], studio)
        elif product.contact.stays_on and not water and not preserved:
            yield from _draws_water(recipe, cards, studio)
        if fat and not kinds & {"antioxidant", "soap base", "lotion base"} and (not water or _keeps_long(recipe, studio)):
            keeps = f", and is to keep {recipe.keeps}" if water else ""
            yield caution(
                "no-antioxidant",
                fat[1],
                f"{recipe.name} holds {inside(fat[0])} and nothing that slows rancidity{keeps}. Oils take up oxygen from the air and go "
                f"stale, those that are rich in linoleic acid first ({PRACTICE}).",
                "Add a little vitamin E or rosemary extract to the oils, or accept this and shorten how long it keeps. Neither of the "
                "two preserves what holds water.",
            )


def _keeps_by_itself(fat: Ingredient, studio: Studio) -> bool:
    """Tell whether so little of a fat is polyunsaturated that it goes stale late; one whose figure is not known does not count as such."""
    share = fat.figure("polyunsaturated")
    most = studio.constants["most polyunsaturated fatty acids of a fat that keeps without an antioxidant"].typical
    return share is not None and share.high is not None and share.high <= most


def _keeps_long(recipe: Recipe, studio: Studio) -> bool:
    """Tell whether a product is to keep for longer than a small batch with water usually does."""
    keeps = durability_in(recipe.keeps)
    return keeps is not None and keeps.is_longer_than(Durability(int(studio.constants[OIL_IN_WATER].typical), 0))


def _water_gets_in(recipe: Recipe, cards: list[tuple[Ingredient, Place]], studio: Studio) -> Iterator[Finding]:
    """Look for what wet hands feed. Brine of salt stays near the water activity below which nothing grows, syrup of sugar does not."""
    grows = next(((card, place) for card, place in cards if card.kind in _GROWS_WHEN_WET), None)
    if grows:
        card, place = grows
        sugar = plain_number(studio.constants["water activity of saturated sugar"].typical)
        yield caution(
            "water-gets-in",
            place,
            f"{recipe.name} is dry in the jar, and wet hands bring water in: it is then no product of low risk any more (ISO 29621:2017), "
            f"and {inside(card)} feeds what grows. Saturated sugar stays at a water activity of about {sugar}, and only below "
            f"{least_activity(studio)} nothing grows (from memory).",
            "Add a broad preservative that works in what is used wet, in the share that its supplier states; or pack single "
            "uses (`single use: yes`), or "
            "accept this where the jar is only ever met with a dry spoon.",
        )


def _draws_water(recipe: Recipe, cards: list[tuple[Ingredient, Place]], studio: Studio) -> Iterator[Finding]:
    """Look for a syrup in what is else free of water: it brings some of its own and draws more."""
    found = ((card, place, card.figure("water content")) for card, place in cards if card.mixes_with is MixesWith.WATER)
    syrup = next(((card, place, content) for card, place, content in found if content and card.counts_as is CountsAs.OTHER), None)
    if syrup:
        card, place, content = syrup
        yield caution(
            "no-preservative",
            place,
            f"{recipe.name} is free of water but for {inside(card)}, which holds {range_of(content, '%')} of it ({basis_of(content)}) and "
            "draws more from air and fingers. In oil it settles out, and where it gets thin enough, bacteria and mould grow in it "
            f"({PRACTICE}).",
            f"Leave it out, or put it into a product with water and a broad preservative. {only_low_risk(studio)}",
        )


def _no_preservative(recipe: Recipe, water: tuple[Ingredient, Place], stays_on: bool, called: Ingredient | None, studio: Studio) -> Finding:
    card, place = water
    none = f"no preservative: {called.name} does not count as one, since {why_not(called)}" if called else "no preservative"
    state = ", or copy to its card what its supplier states" if called else ""
    if stays_on:
        wrong = f"{recipe.name} holds {inside(card)}, stays on the skin, and has {none}. {_CRITERIA}"
        remedy = f"Add a broad preservative in the share that its supplier states{state}. {only_low_risk(studio)}"
        return stop("no-preservative", place, wrong, remedy, acceptable=True)
    wrong = f"{recipe.name} holds {inside(card)} and has {none}. {_CRITERIA}"
    fresh = "make it fresh, use it at once and throw the rest away (`single use: yes`)"
    remedy = f"Add a broad preservative{state}, or {fresh}. {only_low_risk(studio)}"
    return caution("no-preservative", place, wrong, remedy)
