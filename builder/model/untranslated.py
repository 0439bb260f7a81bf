"""What a recipe has not said in a language that its labels carry."""

from collections.abc import Iterator

from builder.model.durability import plain_length_in
from builder.model.language import Language
from builder.model.place import fold
from builder.model.recipe import Recipe, left_out
from builder.model.studio import Studio


def untranslated(recipe: Recipe, studio: Studio, language: Language) -> tuple[tuple[str, str], ...]:
    """Give the keys of what is missing, each with what the recipe says in English (for an option, its name under `options`)."""
    return () if language.is_own else tuple(_missing(recipe, studio, language))


def is_translated(recipe: Recipe, studio: Studio) -> bool:
    """Say whether a recipe has everything that its labels say in every language of its region."""
    return not any(untranslated(recipe, studio, language) for language in studio.label_languages)


def _missing(recipe: Recipe, studio: Studio, language: Language) -> Iterator[tuple[str, str]]:
    told = recipe.told_in(language.name)
    for key, english, other in (
        ("name", recipe.name, told.name),
        ("directions", recipe.directions, told.directions),
        ("storage", recipe.storage, told.storage),
        ("keeps", "" if plain_length_in(recipe.keeps) else recipe.keeps, told.keeps),
    ):
        if english and not other:
            yield key, english
    if len(told.label_cautions) != len(recipe.label_cautions):
        yield "label cautions", " ".join(recipe.label_cautions)
    for option in _options(recipe):
        if fold(option) not in told.options and not studio.name_in(language, option):
            yield "options", option


def _options(recipe: Recipe) -> tuple[str, ...]:
    """Give the names of what students choose or leave out, each once."""
    named = (option.text if option else left_out(choice.what) for choice in recipe.choices for option in choice.options)
    return tuple(dict.fromkeys(named))
