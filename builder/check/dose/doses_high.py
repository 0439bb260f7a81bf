"""A portion that may take more scent or colour than anyone adds."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE
from builder.words.plain_number import plain_number


@rule_on(STUDIO_UNWORKED, FindingKind("dose-very-high", CAUTION, "A portion may take far more scent or colour than is usual."))
def find_high_doses(studio: Studio) -> Iterator[Finding]:
    """Compare the most of each choice with what is usual."""
    for recipe in studio.recipes.values():
        for choice in recipe.choices:
            usual, percent = studio.constants["highest usual dose"].typical, choice.at_most.fraction * 100
            if percent > usual:
                yield caution(
                    "dose-very-high",
                    choice.place,
                    f"A portion may take {plain_number(percent)} % of {choice.what}, and more than {plain_number(usual)} % is very much "
                    f"({PRACTICE}).",
                    f'Was "{plain_number(percent / 10)} %" meant? See what the supplier allows on the skin for this kind of product.',
                )
