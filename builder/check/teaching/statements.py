"""Everything that a studio says in words, sentence by sentence, with what has to be known to judge it.

Lessons with the passages that they take in, classes, recipes and pages. Each sentence keeps its file, line and column.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cached_property, wraps
from typing import TypeVar

from builder.model.dates.studio_class import StudioClass
from builder.model.hazard import Hazard
from builder.model.label.language import OWN
from builder.model.place import Place
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Condition, Contact
from builder.model.recipe.recipe import Recipe
from builder.model.remembered import remembered
from builder.model.roster.allergen_family import AllergenFamily
from builder.model.studio import Studio
from builder.model.subject import Subject, WholeClass
from builder.model.teaching.lesson import Block, Part, Prose, Steps
from builder.model.teaching.prose import Sentence, sentences_of, value_as_text
from builder.rules.fizz import carbonate
from builder.rules.grammar.pattern_search import Words
from builder.rules.part_recipe import recipe_of

_OF_ANIMALS = ("honey", "beeswax", "lanolin", "goat milk", "cow milk", "silk", "tallow", "lard", "wool", "carmine", "shellac")

# So many sentences are known with what was found in them: those of a studio of some hundred classes.
_MOST_SAID = 32_768

R = TypeVar("R")
Met = TypeVar("Met")
Holds = frozenset[Condition]


class Said(StrEnum):
    """As what a sentence is said: a step to follow, text that may order or tell, a title, an item of a list of tools."""

    STEP = "step"
    TEXT = "text"
    TITLE = "title"
    TOOL = "tool"


@dataclass(frozen=True)
class Statement:
    """One sentence. `before` are the sentence before it and the title of its part, `around` all that the part says.

    `holds` are the conditions of `unsafe_steps.yaml` that hold for its recipes, `youngest` is the age from which its class is open,
    `about` what it is about (empty: what uses its file). `heading` is the title of what it stands in.
    """

    sentence: Sentence
    said: Said
    before: str = ""
    around: str = ""
    heading: str = ""
    holds: Holds = frozenset()
    youngest: int | None = None
    about: frozenset[Subject] = frozenset()

    @property
    def alone(self) -> "Statement":
        """Return all by which it is judged: what it says and amid what, without where that stands and what it is about."""
        return replace(self, sentence=Sentence(self.sentence.words, affirmed=self.sentence.affirmed), about=frozenset())

    @cached_property
    def words(self) -> Words:
        """Return its words, to look in."""
        return Words(self.sentence.words)

    @cached_property
    def near(self) -> Words:
        """Return its words with those that lead up to it."""
        return Words(f"{self.before} {self.sentence.words}")

    @cached_property
    def part(self) -> Words:
        """Return all words of its part."""
        return Words(self.around)


def judged_once(look: Callable[[Statement, R], Iterator[Met]]) -> Callable[[Statement, R], tuple[Met, ...]]:
    """Look for what rules meet in a statement, and not again in one that says the same amid the same."""

    @remembered(_MOST_SAID, Statement)
    @wraps(look)
    def in_words(alone: Statement, rules: R) -> tuple[Met, ...]:
        return tuple(look(replace(alone), rules))  # a copy: what it knows of its words is not kept

    @wraps(look)
    def judge(statement: Statement, rules: R) -> tuple[Met, ...]:
        return in_words(statement.alone, rules)

    return judge


def statements_of(studio: Studio) -> Iterator[Statement]:
    """Yield everything that a studio says."""
    for studio_class in studio.classes.values():
        yield from _of_class(studio_class, studio)
    for recipe in studio.recipes.values():
        yield from _of_recipe(recipe, studio)
    for page in studio.pages.values():
        yield from (Statement(one, Said.TITLE, heading=page.title) for one in page.title_says)
        yield from _of_blocks(page.blocks, "", page.title, frozenset(), None, frozenset())
    yield from (Statement(one, Said.TEXT) for one in _of_value(studio.profile.tagline, studio.profile.at("tagline")))


def _of_class(studio_class: StudioClass, studio: Studio) -> Iterator[Statement]:
    made = [studio.recipes[make.recipe.text] for make in studio_class.makes if make.recipe.text in studio.recipes]
    holds = Holds().union(*(conditions_of(recipe, studio) for recipe in made))
    about: frozenset[Subject] = frozenset({WholeClass(studio_class.key)})
    youngest = studio_class.youngest
    for key, text in (("title", studio_class.title), ("summary", studio_class.summary), ("for", studio_class.for_whom)):
        said = Said.TITLE if key == "title" else Said.TEXT
        yield from (Statement(one, said, holds=holds, youngest=youngest, about=about) for one in _of_value(text, studio_class.at(key)))
    yield from (
        Statement(one, Said.TEXT, holds=holds, youngest=youngest, about=about)
        for one in _of_value(studio_class.take_home, studio_class.at("take home"))
    )
    lists = (("wear", studio_class.wear), ("on each bench", studio_class.on_each_bench), ("at the sink", studio_class.at_the_sink))
    for key, items in (*lists, ("on the demo table", studio_class.on_the_demo_table)):
        yield from _of_list(items, studio_class.at(key), Said.TOOL, holds, youngest, about)
    lesson = studio_class.lesson
    yield from (Statement(one, Said.TITLE, holds=holds, youngest=youngest, about=about) for one in lesson.title_says)
    yield from _of_blocks(lesson.introduction, "", lesson.title, holds, youngest, about)
    for part in lesson.parts:
        recipe = recipe_of(part, studio_class, studio)
        own = conditions_of(recipe, studio) if recipe and (part.recipe or part.mentions) else holds
        yield from _of_part(part, own, youngest, about)


def _of_part(part: Part, holds: Holds, youngest: int | None, about: frozenset[Subject]) -> Iterator[Statement]:
    around = " ".join(one.words for one in part.sentences)
    for one in part.title_says:
        yield Statement(one, Said.TITLE, "", around, part.title, holds, youngest, about)
    yield from _of_blocks(part.blocks, around, part.title, holds, youngest, about)


def _of_blocks(
    blocks: Iterable[Block], around: str, heading: str, holds: Holds, youngest: int | None, about: frozenset[Subject]
) -> Iterator[Statement]:
    before = ""
    for block in blocks:
        runs: list[tuple[Said, tuple[Sentence, ...]]] = []
        if isinstance(block, Prose):
            runs = [(Said.TEXT, block.sentences)]
        elif isinstance(block, Steps):
            runs = [(Said.STEP, step.sentences) for step in block.steps]
        for said, sentences in runs:
            for one in sentences:
                yield Statement(one, said, f"{heading}. {before}", around, heading, holds, youngest, about)
                before = one.words


def _of_recipe(recipe: Recipe, studio: Studio) -> Iterator[Statement]:
    holds, youngest = conditions_of(recipe, studio), recipe.youngest_user
    texts = (
        ("name", recipe.name, Said.TITLE), ("about", recipe.about, Said.TEXT), ("directions", recipe.directions, Said.STEP),
        ("storage", recipe.storage, Said.STEP), ("keeps", recipe.keeps, Said.TEXT),
    )  # fmt: skip
    for key, text, said in texts:
        before = ""
        for one in _of_value(text, recipe.at(key)):
            yield Statement(one, said, f"{recipe.name}. {before}", text, recipe.name, holds, youngest)
            before = one.words
    yield from _of_list(recipe.label_cautions, recipe.at("label cautions"), Said.STEP, holds, youngest)
    if recipe.language != OWN:
        english = recipe.told_in(OWN)
        yield from _of_list(filter(None, english.texts), recipe.at("translations"), Said.STEP, holds, youngest)
    yield from _of_list(recipe.tools, recipe.at("tools"), Said.TOOL, holds, youngest)


def _of_value(text: str, place: Place) -> tuple[Sentence, ...]:
    return sentences_of(value_as_text(text, place)) if text else ()


def _of_list(
    items: Iterable[str], place: Place, said: Said, holds: Holds, youngest: int | None, about: frozenset[Subject] = frozenset()
) -> Iterator[Statement]:
    for item in items:
        for one in _of_value(item, place):
            yield Statement(one, said, "", item, "", holds, youngest, about)


def conditions_of(recipe: Recipe, studio: Studio) -> Holds:
    """Return the conditions of `unsafe_steps.yaml` that hold for a recipe; what has no card is not known to hold."""
    product = studio.products[recipe.product]
    cards = [card for card in (studio.ingredient(name) for name in recipe.names) if card]
    kinds = {card.kind for card in cards}
    lye = product.made_with_lye or recipe.lye is not None
    base = bool(kinds & {IngredientKind.PRESERVATIVE, IngredientKind.SOAP_BASE, IngredientKind.LOTION_BASE})
    watery = any(card.counts_as.is_watery for card in cards)
    fat = any(card.counts_as is CountsAs.FAT for card in cards)
    wet = not product.contact.stays_on
    fizzing = any(map(carbonate, cards))
    neat = any(Hazard.NEAT_ESSENTIAL_OIL in card.hazards for card in cards)
    scented = neat or bool(kinds & {IngredientKind.ESSENTIAL_OIL, IngredientKind.FRAGRANCE})
    families = {family for card in cards for family in card.allergens}
    said = {
        Condition.LYE: lye,
        Condition.NO_LYE: not lye,
        Condition.UNPRESERVED: watery and not base and not lye,
        Condition.FIZZ: fizzing and IngredientKind.ACID in kinds and not lye,
        Condition.WET: wet,
        Condition.BATH: product.contact == Contact.BATH,
        Condition.SCENTED: scented,
        Condition.OILY: wet and fat and not lye and IngredientKind.SOAP_BASE not in kinds,
        Condition.ANIMAL: any(word in card.key for card in cards for word in _OF_ANIMALS),
        Condition.UNCURED: lye and not product.cooked,
        Condition.NUTS: bool(families & {AllergenFamily.TREE_NUT, AllergenFamily.PEANUT}),
        Condition.MILK: AllergenFamily.MILK in families,
        Condition.WHEAT: AllergenFamily.WHEAT in families,
        Condition.SOY: AllergenFamily.SOY in families,
    }
    return frozenset((*product.counts_as, *(condition for condition, holds in said.items() if holds)))
