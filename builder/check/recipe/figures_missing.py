"""A sum that lacks a figure."""

from collections.abc import Iterator

from builder.check.figure_words import inside
from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name, Place
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.quantity import Drops, Volume
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio

STRENGTH_MISSING = FindingKind(
    "strength-missing", STOP, "Nobody says how strong an acid is, so that lye or skin would get another amount than is meant."
)


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("density-missing", STOP, "A volume becomes a weight only through a density, and none is known."),
    FindingKind("drop-mass-missing", STOP, "An amount is in drops, and nobody has weighed a drop of it."),
    FindingKind(
        "saponification-missing", STOP, "No saponification value is known for a fat, so that nobody can say how much lye it takes."
    ),
    FindingKind("molar-mass-missing", STOP, "An amount follows from a molar mass, and the card has none."),
    STRENGTH_MISSING,
    FindingKind("purity-missing", STOP, "The purity of an alkali is not known, and none is assumed silently."),
)
def find_figures_missing(studio: Studio) -> Iterator[Finding]:
    """See that each card holds the figures that the recipes need of it."""
    for recipe in studio.recipes.values():
        for line in recipe.lines:
            card = studio.ingredient(line.ingredient)
            if card is None:
                continue
            if recipe.lye:
                yield from _for_lye(line.ingredient, card)
            if isinstance(line.amount, Volume) and not (card.figure("density") or card.figure("bulk density")):
                yield _missing(
                    "density-missing",
                    line.place,
                    f"A volume of {card.name} becomes a weight only through its density, and no density is known for it.",
                    "Write the amount as a weight, or measure: weigh one full cup and enter the density on a card in shelf/ingredients/.",
                )
            if isinstance(line.amount, Drops) and card.drop_mass is None:
                yield _missing(
                    "drop-mass-missing",
                    line.place,
                    f"Nobody has weighed a drop of {card.name}, and drops differ by a factor of two from one bottle to the next.",
                    "Weigh 50 drops and enter `drop mass:` on a card in shelf/ingredients/, or write the amount as a weight.",
                )
        if recipe.lye:
            for liquid in recipe.lye.liquids:
                card = studio.ingredient(liquid.name)
                if card:
                    yield from _for_lye(liquid.name, card)
            yield from _for_alkalis(recipe, studio)


def _for_lye(name: Name, card: Ingredient) -> Iterator[Finding]:
    if card.counts_as.is_oil and card.figure("saponification") is None:
        yield _missing(
            "saponification-missing",
            name.place,
            f"No saponification value is known for {card.name}, so nobody can say how much lye it takes.",
            "Enter the value of your supplier's certificate on a card in shelf/ingredients/.",
        )
    if card.counts_as is CountsAs.ACID and not (card.figure("molar mass") and card.figure("protons")):
        yield _missing(
            "molar-mass-missing",
            name.place,
            f"{card.name} takes up lye, and its card lacks the molar mass or the number of protons.",
            "Enter both on a card in shelf/ingredients/.",
        )
    if card.counts_as is CountsAs.ACID and card.figure("purity") is None:
        yield strength_missing(name.place, card, "it takes up lye")


def strength_missing(place: Place, card: Ingredient, why: str) -> Finding:
    """Return in words that nobody can tell how much of an acid is in it; `why` says for what that has to be known."""
    return _missing(
        "strength-missing",
        place,
        f"How strong is {inside(card)}? Its card does not say, and {why}. Acids are sold dry and in solutions of every strength: counted "
        "as more than there is of it, it would let too much lye into a soap, and counted as less, too much acid onto the skin.",
        "Enter `purity:` on a card in shelf/ingredients/, its share by weight from the pack, as in "
        '`purity: [{value: 80, unit: "%", source: our-supplier, at: pack, known: supplier}]`.',
    )


def _for_alkalis(recipe: Recipe, studio: Studio) -> Iterator[Finding]:
    assert recipe.lye is not None
    koh = studio.ingredient("potassium hydroxide")
    if koh is None or koh.figure("molar mass") is None:
        yield _missing(
            "molar-mass-missing",
            recipe.lye.place,
            "Saponification values are stated in potassium hydroxide, and its card lacks the molar mass.",
            "Enter it, with its source, on the card of potassium hydroxide in shelf/ingredients/, or remove that card.",
        )
    for alkali in recipe.lye.alkalis:
        card = studio.ingredient(alkali.name)
        if card is None or card.counts_as is not CountsAs.ALKALI:
            continue
        if recipe.lye.bought:
            yield from _at_home(recipe, alkali.name.place, card, studio)
        elif alkali.purity is None and card.figure("purity") is None:
            yield _missing(
                "purity-missing",
                alkali.name.place,
                f"The purity of {card.name} is not known, and no purity is assumed silently.",
                "Write `purity:` in the lye block, from the supplier's certificate.",
            )
        if card.figure("molar mass") is None and card is not koh:
            yield _missing(
                "molar-mass-missing", alkali.name.place, f"The card of {card.name} lacks its molar mass.", "Enter it with its source."
            )


def _at_home(recipe: Recipe, place: Place, card: Ingredient, studio: Studio) -> Iterator[Finding]:
    """Yield a finding that asks for the purity of the solid where the lye is bought as a solution and yet made at home."""
    makes = (make for one in studio.classes.values() for make in one.makes if make.recipe.text == recipe.key)
    if card.figure_of_any_pack("purity") is None and any(make.at_home for make in makes):
        yield _missing(
            "purity-missing",
            place,
            f"At home the lye is mixed from the solid, and nobody has said how pure solid {inside(card)} is.",
            "Enter the purity of the solid on its card, with its source, or leave out the batches `at home:`.",
        )


def _missing(name: str, place: Place, wrong: str, remedy: str) -> Finding:
    return stop(name, place, wrong, remedy)
