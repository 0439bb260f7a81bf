"""A flame in a part of a lesson that handles something whose vapour can be lit at the heat that it has there.

The heat is the last that an order of the part names up to the step with it; without one that of its phase, and else that of the room.
Alcohol that words have sprayed or wiped with, and no amount in braces names, comes from a bottle at the heat of the room.

Decided: a flame and a scent are compared in one part of a lesson, at the heat last ordered before the scent, else that of its phase, else
the room's; a flame counts as burning until a step puts it out. Why: off the heat the flame still burns, and in another part nobody knows.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.check.batches import unite
from builder.check.figure_words import DEFER, inside, range_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name, Place
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.recipe import Recipe
from builder.model.remembered import remembered
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.model.teaching.flame_words import BURNS, PUT_OUT, SpokenOf
from builder.model.teaching.lesson import Part
from builder.rules.basis import basis_of
from builder.rules.clauses import is_order
from builder.rules.degrees import degrees_in
from builder.rules.grammar.spoken import spoken_of
from builder.rules.hands.alcohol import takes_alcohol
from builder.rules.naming import IngredientNamed, PhaseNamed, meaning_of, options_of
from builder.rules.part_recipe import parts_with_recipes
from builder.words.plain_number import plain_number

# What "alcohol" means where nothing else is said: ethanol burns from nearly as low on.
_RUBBED_WITH = "isopropyl alcohol"


@dataclass(frozen=True)
class _Vapour:
    """What can be lit, at how many degC it is handled, and how many sentences of the steps stand up to there."""

    card: Ingredient
    celsius: Fraction
    at: int


@rule_on(STUDIO, FindingKind("flame-near-vapour", STOP, "A flame burns where the vapour of something that is handled catches fire."))
def find_flames_near_vapour(studio: Studio) -> Iterator[Finding]:
    """Look through the parts of every lesson; what several classes say in one passage is one finding."""
    yield from unite(
        found for studio_class, part, recipe in parts_with_recipes(studio) for found in _in_part(part, recipe, studio_class.key, studio)
    )


def _in_part(part: Part, recipe: Recipe, class_key: str, studio: Studio) -> Iterator[Finding]:
    burning = _spoken_of_in(part, studio.flame_words[BURNS])
    if not burning:
        return
    out = [number for number, _ in _spoken_of_in(part, studio.flame_words[PUT_OUT])]
    for vapour in _vapours(part, recipe, studio):
        flash = vapour.card.figure("flash point")
        lit = next((place for number, place in burning if not any(number <= one <= vapour.at for one in out)), None)
        if flash is None or lit is None or vapour.celsius < flash.low:
            continue
        degrees = plain_number(Fraction(round(vapour.celsius)))
        yield stop(
            "flame-near-vapour",
            lit,
            f"A flame burns here, and the same part handles {inside(vapour.card)} at about {degrees} °C. Its vapour "
            f"catches fire at a flame or a spark from {range_of(flash, '°C')} on ({basis_of(flash)}).",
            "Heat in a water bath on a plate without a flame. Where something has to burn, write a step that puts it out before the "
            f"bottle is opened. {DEFER}",
            about=frozenset({WholeClass(class_key)}),
        )
        return


def _vapours(part: Part, recipe: Recipe, studio: Studio) -> Iterator[_Vapour]:
    """Yield what a part handles that has a flash point, in the order of its steps."""
    lines = [(studio.ingredient(line.ingredient), phase) for phase in recipe.phases for line in phase.lines]
    heats = {card.key: phase.heat_to for card, phase in lines if card}
    room, named, passed = studio.constants["room"].typical, None, 0
    for step in part.steps:
        for number, sentence in enumerate(step.sentences, passed):
            degrees = degrees_in(sentence) if is_order(sentence) else None
            named = degrees.high if degrees else named
            alcohol = studio.ingredients.get(_RUBBED_WITH) if takes_alcohol(sentence, studio.flame_words) else None
            if alcohol:
                yield _Vapour(alcohol, room, number)
        for mention in step.mentions:
            at = passed + step.sentence_of(mention)
            for card in _cards(mention.name, recipe, studio):
                heat_to = heats.get(card.key)
                celsius = named if named is not None else heat_to.celsius if heat_to else room
                yield _Vapour(card, celsius, at)
        passed += len(step.sentences)


def _cards(name: Name, recipe: Recipe, studio: Studio) -> tuple[Ingredient, ...]:
    """Return the ingredients that a name in braces means one by one: itself, those of a phase, or what students choose from."""
    match meaning_of(name, recipe, studio):
        case IngredientNamed(key):
            named = [key]
        case PhaseNamed(phase):
            lines = (line for one in recipe.phases if one.name.key == phase for line in one.lines)
            named = [line.ingredient.key for line in lines]
        case meant:
            return options_of(recipe, meant, studio)
    return tuple(studio.ingredients[key] for key in named if key in studio.ingredients)


@remembered(1024)
def _spoken_of_in(part: Part, words: SpokenOf) -> tuple[tuple[int, Place], ...]:
    """Return the numbers of the sentences in the steps of a part that speak of something, and where."""
    sentences = [sentence for step in part.steps for sentence in step.sentences]
    return tuple((number, place) for number, one in enumerate(sentences) if (place := spoken_of(one, words.says, words.unless)))
