"""What a recipe has said in one language of its labels and not in another."""

from collections.abc import Iterator

from builder.model.label.language import Language
from builder.model.recipe.recipe import Recipe, left_out
from builder.model.studio import Studio
from builder.rules.durability import plain_length_in
from builder.words.fold import fold


def untranslated(recipe: Recipe, studio: Studio, language: Language) -> tuple[tuple[str, str], ...]:
    """Return the keys of what is missing, each with what the recipe says in its own language (for an option, its name under `options`)."""
    return () if language.name == recipe.language else tuple(_missing(recipe, studio, language))


def said_alone(recipe: Recipe, language: Language) -> tuple[tuple[str, str], ...]:
    """Return the keys of what a recipe says in another language and not in its own, each with that, and names of no option of it."""
    return () if language.name == recipe.language else tuple(_alone(recipe, language))


def is_translated(recipe: Recipe, studio: Studio) -> bool:
    """Tell whether the labels of a recipe say the same in every language of its region."""
    kind = studio.products[recipe.product]
    return all(
        kind.identity_in(language) and not untranslated(recipe, studio, language) and not said_alone(recipe, language)
        for language in studio.label_languages
    )


def _missing(recipe: Recipe, studio: Studio, language: Language) -> Iterator[tuple[str, str]]:
    told = recipe.told_in(language.name)
    for key, own, other in _side_by_side(recipe, language):
        if own and not other and not (key == "keeps" and plain_length_in(own)):
            yield key, own
    if recipe.label_cautions and len(told.label_cautions) != len(recipe.label_cautions):
        yield "label cautions", " ".join(recipe.label_cautions)
    for option in _options(recipe):
        # English knows every text by itself: what another language of the library can say is a text of the library.
        known_in = studio.languages[recipe.language] if language.is_own else language
        if fold(option) not in told.options and not studio.name_in(known_in, option):
            yield "options", option


def _alone(recipe: Recipe, language: Language) -> Iterator[tuple[str, str]]:
    told = recipe.told_in(language.name)
    yield from ((key, other) for key, own, other in _side_by_side(recipe, language) if other and not own)
    if told.label_cautions and not recipe.label_cautions:
        yield "label cautions", " ".join(told.label_cautions)
    known = {fold(option) for option in _options(recipe)}
    yield from (("options", option) for option in told.options if option not in known)


def _side_by_side(recipe: Recipe, language: Language) -> Iterator[tuple[str, str, str]]:
    """Yield each single text by its key, in the language of the recipe and in another."""
    own, other = recipe.told_in(recipe.language), recipe.told_in(language.name)
    for key in ("name", "directions", "storage", "keeps"):
        yield key, getattr(own, key), getattr(other, key)


def _options(recipe: Recipe) -> tuple[str, ...]:
    """Return the names of what students choose or leave out, each once."""
    named = (option.text if option else left_out(choice.what) for choice in recipe.choices for option in choice.options)
    return tuple(dict.fromkeys(named))
