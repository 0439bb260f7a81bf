"""What a finding is about where its rule does not say, and what is held back by a stop about it.

Decided: a caution about the studio as a whole stands on every teacher's sheet, one about a card on those of all classes that use it. Why:
which classes a finding concerns is decided in one place, and a caution is printed.
"""

from collections.abc import Collection, Iterable, Iterator
from posixpath import basename, splitext

from builder.model.finding import Finding, Weight
from builder.model.held_back import HeldBack
from builder.model.library import ANY
from builder.model.studio import Studio
from builder.model.subject import (
    HomeSheet,
    Labels,
    OneDate,
    ShoppingList,
    Subject,
    TextPage,
    UnusedCard,
    WholeClass,
    WholeRecipe,
    WholeStudio,
)
from builder.model.teaching.class_plan import ClassPlan
from builder.words.fold import fold


def subjects_of(finding: Finding, studio: Studio) -> frozenset[Subject]:
    """Return what a finding is about: what its rule says, or what the file in which it stands is for."""
    return finding.about or subjects_of_file(finding.place.file, studio)


def subjects_of_file(file: str, studio: Studio) -> frozenset[Subject]:
    """Return what a file of the studio is for: the whole studio where it is not a class's, a recipe's, a card's, a page's or the library's.

    A card that cannot be read is one of those that recipes name and nobody knows.
    """
    folder, _, rest = file.partition("/")
    stem = splitext(basename(file))[0]
    if folder == "classes" and "/" in rest:
        return frozenset({WholeClass(rest.partition("/")[0])})
    if folder == "recipes" and file.endswith(".yaml"):
        return frozenset({WholeRecipe(stem)})
    if folder == "pages" and file.endswith(".md"):
        return frozenset({TextPage(stem)})
    if file == "inventory.yaml":
        return frozenset({ShoppingList()})
    if file.startswith("shelf/ingredients/"):
        cards = [card for card in studio.ingredients.values() if card.place.file == file]
        names = {fold(name) for card in cards for name in (card.name, *card.also_called)}
        return (recipes_using(names, studio) if cards else _of_unread_card(studio)) or frozenset({UnusedCard(file)})
    return frozenset({WholeStudio()})


def _of_unread_card(studio: Studio) -> frozenset[Subject]:
    """Return the recipes that name what cannot be read; where not even its name is known, it may stand for any card."""
    unread = studio.unread.ingredients
    unknown = {name.key for recipe in studio.recipes.values() for name in recipe.names if studio.ingredient(name) is None}
    return recipes_using(unknown | unread, studio) | (frozenset({WholeStudio()}) if ANY in unread else frozenset())


def recipes_using(names: Collection[str], studio: Studio) -> frozenset[Subject]:
    """Return the recipes that use an ingredient, by its folded names."""
    return frozenset(WholeRecipe(key) for key, recipe in studio.recipes.items() if any(name.key in names for name in recipe.names))


def classes_making(recipe: str, studio: Studio) -> frozenset[str]:
    """Return the keys of the classes that make a recipe."""
    return frozenset(one.key for one in studio.classes_by_recipe.get(recipe, ()))


def classes_of(subject: Subject, studio: Studio) -> frozenset[str]:
    """Return the keys of the classes that a subject is part of, or that make something of it."""
    match subject:
        case WholeStudio():
            return frozenset(studio.classes) | studio.unread.classes
        case WholeClass(key) | OneDate(key) | HomeSheet(key):
            return frozenset({key})
        case WholeRecipe(key):
            return classes_making(key, studio)
        case Labels(recipe, class_key):
            return frozenset({class_key}) if class_key else classes_making(recipe, studio)
        case _:  # a card that no recipe names, a page of text, the list of what to buy
            return frozenset()


def classes_concerned(finding: Finding, studio: Studio) -> frozenset[str]:
    """Return the keys of the classes that a finding has to do with."""
    return frozenset().union(*(classes_of(subject, studio) for subject in subjects_of(finding, studio)))


def concerns_plan(finding: Finding, plan: ClassPlan, studio: Studio) -> bool:
    """Tell whether a finding has to do with one date of a class: not what is about another date of it."""
    key = plan.studio_class.key
    subjects = subjects_of(finding, studio)
    return any(key in classes_of(one, studio) and (not isinstance(one, OneDate) or one == plan.subject) for one in subjects)


def what_is_held(findings: Iterable[Finding], studio: Studio) -> HeldBack:
    """Return what the stops among some findings hold back.

    A stop about the words of a label holds the label back also where it has been accepted: the studio then does without the label, and
    nobody can print what nobody knows.
    """
    found: set[Subject] = set()
    for finding in findings:
        for subject in subjects_of(finding, studio) if finding.weight is Weight.STOP else ():
            if finding.stops or isinstance(subject, Labels):
                found |= set(_spread(subject, studio))
    return HeldBack(frozenset(found))


def _spread(subject: Subject, studio: Studio) -> Iterator[Subject]:
    match subject:
        case WholeRecipe():
            yield subject
            yield from map(WholeClass, classes_of(subject, studio))
        case Labels(recipe):
            yield from (Labels(recipe, key) for key in classes_of(subject, studio))
        case _:
            yield subject
