"""A purity of a solid alkali that is no purity of a solid, but the strength of a solution of it."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.figure_words import inside
from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.recipe import AlkaliShare, LyePlan
from builder.model.studio import Studio
from builder.rules.basis import basis_of
from builder.words.plain_number import plain_number

SOLIDS = ("sodium hydroxide", "potassium hydroxide")


@rule_on(
    STUDIO_UNWORKED,
    FindingKind(
        "purity-of-a-solution", STOP, "The purity of a solid is so low that it must be a solution, and the lye would be far too much."
    ),
)
def find_purities_of_solutions(studio: Studio) -> Iterator[Finding]:
    """Compare the purity of each alkali of a lye, by the recipe or else by its card, with the weakest that is sold as a solid."""
    for recipe in studio.recipes.values():
        for alkali in recipe.lye.alkalis if recipe.lye else ():
            card = studio.ingredient(alkali.name)
            weakest = _weakest(card, studio) if card and card.counts_as is CountsAs.ALKALI else None
            if recipe.lye and card and weakest:
                yield from _judge(recipe.lye, alkali, card, weakest)


def _weakest(card: Ingredient, studio: Studio) -> Figure | None:
    """Return the weakest that is sold of an alkali, told by its molar mass, whatever its card is called."""
    molar = card.figure("molar mass")
    cards = [(name, solid.figure("molar mass")) for name in SOLIDS if (solid := studio.ingredients.get(name))]
    known = [(abs(figure.typical - molar.typical), name) for name, figure in cards if figure and molar]
    return studio.constants[f"weakest solid {min(known)[1]}"] if known else None


def _judge(plan: LyePlan, alkali: AlkaliShare, card: Ingredient, weakest: Figure) -> Iterator[Finding]:
    figure = card.figure("purity")
    if alkali.purity is not None:
        if alkali.purity.low * 100 < weakest.typical:
            yield _solution(plan.at("purity"), card, alkali.purity.low * 100, weakest)
    elif figure is not None and figure.low < weakest.typical:
        yield _solution(figure.place, card, figure.low, weakest)


def _solution(place: Place, card: Ingredient, percent: Fraction, weakest: Figure) -> Finding:
    written, least = plain_number(percent), plain_number(weakest.typical)
    return stop(
        "purity-of-a-solution",
        place,
        f"Is this a solution? No solid {inside(card)} is sold as weak as {written} % ({basis_of(weakest)}). Were the solid weighed as if "
        f"it were, there would be far too much lye in the soap, and it would burn the skin.",
        f"Of a solution of {written} % write `ready-mixed: {written} %`, and leave its purity out. Of a solid write what its pack or its "
        f"certificate states, {least} % or more.",
    )
