"""Which classes a finding holds back: those it is about, or those that use the file in which it stands."""

from posixpath import basename, splitext

from builder.check.unknown_ingredient import names_in
from builder.model.finding import Finding
from builder.model.place import fold
from builder.model.studio import Studio


def classes_held_back(finding: Finding, studio: Studio) -> frozenset[str]:
    """Give the keys of the classes that must not be published while the finding stands."""
    return finding.about or classes_of_file(finding.place.file, studio)


def classes_of_file(file: str, studio: Studio) -> frozenset[str]:
    """Give the keys of the classes that use a file of the studio: all of them where it is not a class's, a recipe's or a card's."""
    folder, _, rest = file.partition("/")
    if folder == "classes" and "/" in rest:
        return frozenset({rest.partition("/")[0]})
    if folder == "recipes":
        return _making(studio, {splitext(basename(file))[0]})
    if file.startswith("shelf/ingredients/"):
        cards = [card for card in studio.ingredients.values() if card.place.file == file]
        if cards:
            names = {fold(name) for card in cards for name in (card.name, *card.also_called)}
            return classes_using(names, studio)
    return frozenset(studio.classes)


def classes_using(names: set[str], studio: Studio) -> frozenset[str]:
    """Give the keys of the classes that make something of an ingredient, by its folded names."""
    using = {key for key, recipe in studio.recipes.items() if any(name.key in names for name in names_in(recipe))}
    return _making(studio, using)


def _making(studio: Studio, recipes: set[str]) -> frozenset[str]:
    return frozenset(key for key, studio_class in studio.classes.items() if any(make.recipe.text in recipes for make in studio_class.makes))
