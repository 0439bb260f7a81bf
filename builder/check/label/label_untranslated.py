"""A text of a label that is missing in one of the languages which the region asks for.

Decided: a text that is missing in a language of the region is a stop that may be accepted, and then there is no label. Why: one language
alone is unlawful in Canada (C.R.C. c. 869 s. 18); what stays in the studio needs no label.

Decided: a recipe that no class makes may lack its French, and can be weighed without it. Why: it has no label.
"""

from collections.abc import Iterator

from builder.check.batches import NO_LABEL
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, FindingKind
from builder.model.label.language import Language
from builder.model.recipe.product import Product
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.model.subject import Labels
from builder.rules.reach import classes_making
from builder.rules.untranslated import said_alone, untranslated

_EXAMPLES = {"label cautions": "[...]", "options": "{{{options}}}"}


@rule_on(
    STUDIO,
    FindingKind(
        "label-untranslated", ACCEPTABLE_STOP, "The label has to be in several languages, and something is missing in one of them."
    ),
)
def find_labels_untranslated(studio: Studio) -> Iterator[Finding]:
    """Compare what each recipe says with what it says in the other languages of its region; all that a recipe lacks is one finding.

    It holds back the labels; what no class makes has none.
    """
    for kind in studio.products.values():
        of_kind = [key for key, recipe in studio.recipes.items() if recipe.product == kind.name and classes_making(key, studio)]
        for language in studio.label_languages:
            if of_kind and not kind.identity_in(language):
                yield _kind_untold(kind, studio, language, of_kind)
    for recipe in studio.recipes.values():
        for language in studio.label_languages:
            missing, is_made = untranslated(recipe, studio, language), classes_making(recipe.key, studio)
            if missing and is_made:
                yield _untold(recipe, studio, language, missing)
            alone = said_alone(recipe, language)
            if alone and is_made:
                yield _told_alone(recipe, studio, language, alone)


def _kind_untold(kind: Product, studio: Studio, language: Language, recipes: list[str]) -> Finding:
    return stop(
        "label-untranslated",
        kind.place,
        f'{_asked_for(studio)[0].upper()}{_asked_for(studio)[1:]}, and the kind "{kind.name}" has no {language.name} for '
        f'"{kind.identity}".',
        f"{_translated(language)}, and write it beside the identity: `translations: {{{language.name}: ...}}`. {NO_LABEL}",
        about=frozenset(Labels(key) for key in recipes),
        acceptable=True,
    )


def _untold(recipe: Recipe, studio: Studio, language: Language, missing: tuple[tuple[str, str], ...]) -> Finding:
    lacks = ", ".join(f'{key} "{text}"' for key, text in missing)
    given = len(recipe.told_in(language.name).label_cautions)
    differ = given and "label cautions" in dict(missing)
    counted = (
        f" There are {len(recipe.label_cautions)} label cautions in {recipe.language} and {given} in {language.name}." if differ else ""
    )
    return stop(
        "label-untranslated",
        recipe.at("translations"),
        f"{recipe.name}: {_asked_for(studio)}, and this is missing in {language.name}: {lacks}.{counted}",
        f"{_translated(language)}, and write it into the recipe: {_form(language, missing)}. A name that "
        f"stays the same is written again. {NO_LABEL}",
        about=frozenset({Labels(recipe.key)}),
        acceptable=True,
    )


def _told_alone(recipe: Recipe, studio: Studio, language: Language, alone: tuple[tuple[str, str], ...]) -> Finding:
    told = ", ".join(f'{key} "{text}"' for key, text in alone)
    return stop(
        "label-untranslated",
        recipe.at("translations"),
        f"{recipe.name}: {_asked_for(studio)}, and this stands in {language.name} alone: {told}.",
        f"Write it in {recipe.language} too, or take it out of `translations:`; under `options:` stand names of what the recipe lets "
        f"students choose. {NO_LABEL}",
        about=frozenset({Labels(recipe.key)}),
        acceptable=True,
    )


def _translated(language: Language) -> str:
    return f"Have it translated by someone who speaks {language.name}"


def _asked_for(studio: Studio) -> str:
    region = studio.labelling.region
    rule = region.rules["languages"]
    return f"a label in this region ({region.name}) is in {rule.says} ({rule.source.title}, {rule.at})"


def _form(language: Language, missing: tuple[tuple[str, str], ...]) -> str:
    """Show what to write, with its keys."""
    options = ", ".join(f"{english}: ..." for key, english in missing if key == "options")
    keys = dict.fromkeys(key for key, _ in missing)
    lines = ", ".join(f"{key}: {_EXAMPLES.get(key, '...').format(options=options)}" for key in keys)
    return f"`translations: {{{language.name}: {{{lines}}}}}`"
