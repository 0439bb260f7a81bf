"""label-untranslated: a text of a label that is missing in a language which the region asks for."""

from collections.abc import Iterator

from builder.check.reach import classes_of_file
from builder.model.finding import Finding, stop
from builder.model.language import OWN, Language
from builder.model.recipe import Recipe
from builder.model.studio import Studio
from builder.model.untranslated import untranslated

_EXAMPLES = {"label cautions": "[...]", "options": "{{{options}}}"}


def find_labels_untranslated(studio: Studio) -> Iterator[Finding]:
    """Compare what each recipe says with what it says in the other languages of its region; all that a recipe lacks is one finding.

    It holds back the classes that make it, and no weighing of it; what no class makes has no label.
    """
    for recipe in studio.recipes.values():
        for language in studio.label_languages:
            missing, about = untranslated(recipe, studio, language), classes_of_file(recipe.place.file, studio)
            if missing and about:
                yield _untold(recipe, studio, language, missing, about)


def _untold(recipe: Recipe, studio: Studio, language: Language, missing: tuple[tuple[str, str], ...], about: frozenset[str]) -> Finding:
    region = studio.labelling.region
    rule = region.rules["languages"]
    lacks = ", ".join(f'{key} "{english}"' for key, english in missing)
    given = len(recipe.told_in(language.name).label_cautions)
    counted = f" There are {len(recipe.label_cautions)} label cautions in {OWN} and {given} in {language.name}." if given else ""
    return stop(
        "label-untranslated",
        recipe.at("translations"),
        f"{recipe.name}: a label in this region ({region.name}) is in {rule.says} ({rule.source.title}, {rule.at}), and this is missing in "
        f"{language.name}: {lacks}.{counted}",
        f"Have it translated by someone who speaks {language.name}, and write it into the recipe: {_form(language, missing)}. A name that "
        "stays the same is written again. Accepted with a reason, this product gets no label sheet.",
        about=about,
        acceptable=True,
    )


def _form(language: Language, missing: tuple[tuple[str, str], ...]) -> str:
    """Show what to write, with its keys."""
    options = ", ".join(f"{english}: ..." for key, english in missing if key == "options")
    keys = dict.fromkeys(key for key, _ in missing)
    lines = ", ".join(f"{key}: {_EXAMPLES.get(key, '...').format(options=options)}" for key in keys)
    return f"`translations: {{{language.name}: {{{lines}}}}}`"
