"""A name in braces that the recipe of that part does not know, and strokes of a pump that nobody measured."""

from collections.abc import Iterator

from builder.check.recipe.unknown_ingredient import unknown_names
from builder.check.rule import STUDIO, rule_on
from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.model.subject import Subject, WholeClass
from builder.model.teaching.lesson import Block, Mention, Part, mentions_in
from builder.rules.named_weighings import BRACES, FOR_ALL, IN_ALL, LEFT_IN_THE_POT, STROKES, VOLUME
from builder.words.fold import fold
from builder.words.nearest import did_you_mean, nearest

FOR_SOAP = ("oils", "lye", "lye water", "lye solution", "superfat")


def known_names(recipe: Recipe, studio: Studio) -> set[str]:
    """Give every name that braces may hold for a recipe, folded."""
    names = {*_for_all(recipe, studio), *(what for choice in recipe.choices for what in (choice.what, choice.what + IN_ALL))}
    if recipe.lye:
        names |= {*(liquid.name.text for liquid in recipe.lye.liquids), *(alkali.name.text for alkali in recipe.lye.alkalis)}
    names |= {phase.name.text for phase in recipe.phases} | {line.ingredient.text for line in recipe.lines}
    for name in tuple(names):
        card = studio.ingredient(name)
        if card:
            names |= {card.name, *card.also_called}
    return {fold(name) for name in names} | {fold(name) + STROKES for name in names if _is_pumped(name, studio)}


def _is_pumped(name: str, studio: Studio) -> bool:
    card = studio.ingredient(name)
    return card is not None and any(supply.stroke(card) for supply in studio.supplies if studio.ingredient(supply.name) is card)


def _for_all(recipe: Recipe, studio: Studio) -> tuple[str, ...]:
    """Give the names that need no ingredient. A soap whose lye is still missing is spoken of as a soap all the same."""
    return (*FOR_ALL, *FOR_SOAP) if recipe.lye or studio.products[recipe.product].made_with_lye else FOR_ALL


@rule_on(
    STUDIO,
    FindingKind("mention-unknown", STOP, "Braces name something that the recipe does not have."),
    FindingKind("mention-without-figure", STOP, "Braces ask for an amount that lacks a figure to work it out."),
    FindingKind("pump-missing", STOP, "Strokes of a pump are asked for that nobody has measured."),
    FindingKind("mention-without-recipe", STOP, "Braces with an amount stand where no batch is meant."),
)
def find_unknown_mentions(studio: Studio) -> Iterator[Finding]:
    """Look up each name in braces of each lesson, and of the pages and introductions, which have no recipe."""
    for made in studio.recipes.values():
        yield from _in_tools(made, studio)
    for studio_class in studio.classes.values():
        for part in studio_class.lesson.parts:
            recipe = recipe_of(part, studio_class, studio)
            if recipe is not None:
                yield from _in_part(part, recipe, studio_class.key, studio)
                yield from _without_their_figure(part.mentions, recipe, studio_class)
        yield from _without_recipe(studio_class.lesson.introduction)
    for page in studio.pages.values():
        yield from _without_recipe(page.blocks)


def _in_part(part: Part, recipe: Recipe, class_key: str, studio: Studio) -> Iterator[Finding]:
    known = known_names(recipe, studio)
    # The right name of an ingredient that the recipe misspells is no second mistake.
    misspelt = [name.text for name in unknown_names(recipe, studio)]
    for mention in part.mentions:
        if mention.name.key.endswith(STROKES) and mention.name.key.removesuffix(STROKES) in known:
            if mention.name.key not in known:
                yield _pump_missing(mention.name, class_key)
        elif mention.name.key not in known and not nearest(mention.name.text, misspelt):
            yield _unknown(mention, recipe, studio, known, frozenset({WholeClass(class_key)}))


def _in_tools(recipe: Recipe, studio: Studio) -> Iterator[Finding]:
    """Look up the names in braces of a recipe's tools; what depends on the class is known of all classes that make it, or of none."""
    known = known_names(recipe, studio)
    found = [Mention(Name(inside, recipe.at("tools"))) for tool in recipe.tools for inside in BRACES.findall(tool)]
    for mention in found:
        if mention.name.key not in known:
            yield _unknown(mention, recipe, studio, known, frozenset())
    for studio_class in studio.classes.values():
        if any(make.recipe.text == recipe.key for make in studio_class.makes):
            yield from _without_their_figure(tuple(found), recipe, studio_class)


def _unknown(mention: Mention, recipe: Recipe, studio: Studio, known: set[str], about: frozenset[Subject]) -> Finding:
    return stop(
        "mention-unknown",
        mention.name.place,
        f'"{mention.name}" is not in the recipe "{recipe.key}", so no amount can stand here.',
        f"Write an ingredient, a phase, or one of {', '.join(_for_all(recipe, studio))}.{did_you_mean(mention.name.text, known)}",
        about=about,
    )


def _without_their_figure(mentions: tuple[Mention, ...], recipe: Recipe, studio_class: StudioClass) -> Iterator[Finding]:
    """Look for a volume that nobody can work out, and for a pot of which nobody has said what stays in it."""
    make = next((make for make in studio_class.makes if make.recipe.text == recipe.key), None)
    for mention in mentions:
        if mention.name.key == VOLUME and recipe.density is None and recipe.lye is None:
            wrong = f"Nobody has measured the density of {recipe.name}, so that its volume cannot be worked out."
            remedy = 'Weigh a measured volume of it, and write into the recipe: density: {value: 0.98 g/mL, measured: "how and when"}.'
        elif mention.name.key == LEFT_IN_THE_POT and make is not None and not make.left_in_the_pot:
            wrong = f'The class does not say how much of "{recipe.key}" stays in the pot.'
            remedy = "Weigh the pot and the tools before they are washed, and write under `makes:`: left in the pot: 30 g."
        else:
            continue
        yield stop("mention-without-figure", mention.name.place, wrong, remedy, about=frozenset({WholeClass(studio_class.key)}))


def _pump_missing(name: Name, class_key: str) -> Finding:
    what = name.text[: -len(STROKES)]
    return stop(
        "pump-missing",
        name.place,
        f'Nobody has measured a pump for "{what}", so that its strokes cannot be counted.',
        'Weigh ten strokes, and write beside its pack in shelf/supplies.yaml: pump: {strokes: 10, weigh: 78 g, measured: "how and when"}.',
        about=frozenset({WholeClass(class_key)}),
    )


def recipe_of(part: Part, studio_class: StudioClass, studio: Studio) -> Recipe | None:
    """Give the recipe that a part is about, of those that the class makes: the one it names, or the first."""
    made = [make.recipe.text for make in studio_class.makes]
    key = part.recipe.text if part.recipe is not None else made[0]
    return studio.recipes.get(key) if key in made else None


def _without_recipe(blocks: tuple[Block, ...]) -> Iterator[Finding]:
    for mention in mentions_in(blocks):
        yield stop(
            "mention-without-recipe",
            mention.name.place,
            "Amounts in braces can stand only in the parts of a lesson, where it is known which batch is meant.",
            "Write the words without braces, or move the sentence into a part.",
        )
