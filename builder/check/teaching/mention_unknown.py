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
from builder.rules.naming import BRACES, FIXED, LEFT_IN_THE_POT, STROKES, VOLUME, Unknown, Unmeasured, fixed_words, meaning_of, meanings
from builder.rules.part_recipe import parts_with_recipes
from builder.words.nearest import did_you_mean, nearest


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
    for studio_class, part, recipe in parts_with_recipes(studio):
        yield from _in_part(part, recipe, studio_class.key, studio)
        yield from _without_their_figure(part.mentions, recipe, studio_class)
    for studio_class in studio.classes.values():
        yield from _without_recipe(studio_class.lesson.introduction)
    for page in studio.pages.values():
        yield from _without_recipe(page.blocks)


def _in_part(part: Part, recipe: Recipe, class_key: str, studio: Studio) -> Iterator[Finding]:
    # The right name of an ingredient that the recipe misspells is no second mistake.
    misspelt = [name.text for name in unknown_names(recipe, studio)]
    for mention in part.mentions:
        match meaning_of(mention.name, recipe, studio):
            case Unmeasured():
                yield _pump_missing(mention.name, class_key)
            case Unknown() if not nearest(mention.name.text, misspelt):
                yield _unknown(mention, recipe, studio, frozenset({WholeClass(class_key)}))


def _in_tools(recipe: Recipe, studio: Studio) -> Iterator[Finding]:
    """Look up the names in braces of a recipe's tools; what depends on the class is known of all classes that make it, or of none."""
    found = [Mention(Name(inside, recipe.at("tools"))) for tool in recipe.tools for inside in BRACES.findall(tool)]
    for mention in found:
        if isinstance(meaning_of(mention.name, recipe, studio), Unknown | Unmeasured):
            yield _unknown(mention, recipe, studio, frozenset())
    for studio_class in studio.classes_by_recipe.get(recipe.key, ()):
        yield from _without_their_figure(tuple(found), recipe, studio_class)


def _unknown(mention: Mention, recipe: Recipe, studio: Studio, about: frozenset[Subject]) -> Finding:
    known = {name for name, meant in meanings(recipe, studio).items() if not isinstance(meant, Unmeasured)}
    return stop(
        "mention-unknown",
        mention.name.place,
        f'"{mention.name}" is not in the recipe "{recipe.key}", so no amount can stand here.',
        f"Write an ingredient, a phase, or one of {', '.join(fixed_words(recipe, studio))}.{did_you_mean(mention.name.text, known)}",
        about=about,
    )


def _without_their_figure(mentions: tuple[Mention, ...], recipe: Recipe, studio_class: StudioClass) -> Iterator[Finding]:
    """Look for a volume that nobody can work out, and for a pot of which nobody has said what stays in it."""
    make = next((make for make in studio_class.makes if make.recipe.text == recipe.key), None)
    for mention in mentions:
        meant = FIXED.get(mention.name.key)
        if meant == VOLUME and recipe.density is None and recipe.lye is None:
            wrong = f"Nobody has measured the density of {recipe.name}, so that its volume cannot be worked out."
            remedy = 'Weigh a measured volume of it, and write into the recipe: density: {value: 0.98 g/mL, measured: "how and when"}.'
        elif meant == LEFT_IN_THE_POT and make is not None and not make.left_in_the_pot:
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


def _without_recipe(blocks: tuple[Block, ...]) -> Iterator[Finding]:
    for mention in mentions_in(blocks):
        yield stop(
            "mention-without-recipe",
            mention.name.place,
            "Amounts in braces can stand only in the parts of a lesson, where it is known which batch is meant.",
            "Write the words without braces, or move the sentence into a part.",
        )
