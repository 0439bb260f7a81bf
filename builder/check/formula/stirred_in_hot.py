"""A preservative or a scent that the steps of a lesson stir into what they tell to be hot.

Decided: a preservative is compared with the `add below` of its card, a scent with its flash point, and that only above the heat that any
fat needs. Why: scents go into warm balms and bases as a rule, which costs some of the scent and burns nobody.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import unite
from builder.check.figure_words import DEFER, inside, range_of
from builder.check.formula.heat import NEEDED
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.rules.basis import basis_of
from builder.rules.hands.stirred_in import Named, StirredIn, stirred_in_hot
from builder.rules.ingredient_words import Call
from builder.rules.part_recipe import parts_with_recipes
from builder.words.plain_number import plain_number


@rule_on(
    STUDIO,
    FindingKind("stirred-in-too-hot", CAUTION, "A step stirs a preservative or a scent into what is told to be hotter than it bears."),
)
def find_what_is_stirred_in_too_hot(studio: Studio) -> Iterator[Finding]:
    """Look through the parts of every lesson; what several classes say in one passage is one finding."""
    yield from unite(
        found
        for studio_class, part, recipe in parts_with_recipes(studio)
        for one in stirred_in_hot(part, _looked_for(recipe, studio))
        for found in _judge(one, studio, studio_class.key)
    )


def _looked_for(recipe: Recipe, studio: Studio) -> list[Named]:
    """Return the ingredients and options of a recipe that bear no heat; a word that means others too is left out."""
    names = dict.fromkeys(recipe.names)
    cards = [(card, _limit(card), _words(card)) for card in (studio.ingredient(name) for name in names) if card]
    found = []
    for card, limit, words in cards:
        if limit:
            found.append(Named(card, words.difference(*(others for _, other, others in cards if other != limit))))
    return [one for one in found if one.words]


def _words(card: Ingredient) -> frozenset[str]:
    call = Call(card, frozenset())
    return call.words | set(call.names)


def _limit(card: Ingredient) -> str:
    """Return the figure by which it is judged; empty where nothing is known to speak against heat."""
    limit = "add below" if card.kind is IngredientKind.PRESERVATIVE else "flash point"
    return limit if card.figure(limit) else ""


def _judge(one: StirredIn, studio: Studio, class_key: str) -> Iterator[Finding]:
    limit, needed = one.card.figure(_limit(one.card)), studio.constants[NEEDED].typical
    assert limit is not None, "nothing else is looked for"
    degrees, about = plain_number(Fraction(round(one.celsius))), frozenset({WholeClass(class_key)})
    if one.card.kind is IngredientKind.PRESERVATIVE and one.celsius > limit.highest:
        yield caution(
            "stirred-in-too-hot",
            one.place,
            f"What {inside(one.card)} goes into is told to be at {degrees} °C, and it is added below {range_of(limit, '°C')} "
            f"({basis_of(limit)}): above it, it evaporates or breaks down, and what is left does not keep germs out.",
            f"Write that it cools first, to {plain_number(limit.low)} °C by the thermometer, and stir it in then. {DEFER}",
            about=about,
        )
    elif one.card.kind is not IngredientKind.PRESERVATIVE and one.celsius > needed and one.celsius >= limit.low:
        yield caution(
            "stirred-in-too-hot",
            one.place,
            f"What {inside(one.card)} goes into is told to be at {degrees} °C, and its vapour catches fire at a flame or a spark from "
            f"{range_of(limit, '°C')} on ({basis_of(limit)}).",
            f"Write that it cools first, well below that, off the heat and with no flame in the room. {DEFER}",
            about=about,
        )
