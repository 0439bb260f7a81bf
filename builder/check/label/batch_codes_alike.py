"""Two recipes of classes whose batch codes begin with the same letters, so that a jar cannot be traced to its batch."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio


@rule_on(
    STUDIO,
    FindingKind(
        "batch-codes-alike", CAUTION, "Two recipes have the same letters in their batch codes, so that their jars cannot be told apart."
    ),
)
def find_batch_codes_alike(studio: Studio) -> Iterator[Finding]:
    """Compare the letters of all recipes that a class makes; the later one in the order of their names is told."""
    first: dict[str, str] = {}
    made = {make.recipe.text for a_class in studio.classes.values() for make in a_class.makes}
    for key, recipe in sorted((key, recipe) for key, recipe in studio.recipes.items() if key in made):
        other = first.setdefault(recipe.letters, key)
        if other != key:
            yield caution(
                "batch-codes-alike",
                recipe.at("code"),
                f'The batch codes of "{key}" and of "{other}" both begin with {recipe.letters}, so that jars of one day cannot be told '
                "apart by them.",
                'Give one of the two letters of its own, for example `code: "' + _other(recipe.letters) + '"`.',
            )


def _other(letters: str) -> str:
    return f"{letters[:3]}{'X' if not letters.endswith('X') else 'Z'}"
