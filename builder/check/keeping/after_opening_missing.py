"""Something that keeps so long that the law of the region asks for the time after opening in place of a date."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.rules.durability import durability_in


@rule_on(
    STUDIO,
    FindingKind(
        "after-opening-missing", CAUTION, "The product keeps so long that its label has to give a time after opening, and none is stated."
    ),
)
def find_times_after_opening_missing(studio: Studio) -> Iterator[Finding]:
    """Compare how long each recipe keeps with the limit (Regulation 1223/2009 Art. 19(1)(c), read)."""
    most_dated = studio.region.open_jar_above
    for recipe in studio.recipes.values():
        keeps = durability_in(recipe.keeps)
        if most_dated is None or keeps is None or keeps.months <= most_dated:
            continue
        opened = durability_in(recipe.after_opening)
        if recipe.after_opening and not (opened and opened.months):
            yield caution(
                "after-opening-missing",
                recipe.at("after opening"),
                f"{recipe.name} says how long it is good once opened, but not in months or years, as its label has to behind the sign of "
                "an open jar.",
                "Write a number of months or years, for example `after opening: 12 months`.",
            )
        elif not recipe.after_opening:
            yield caution(
                "after-opening-missing",
                recipe.at("keeps"),
                f"{recipe.name} keeps for more than {most_dated} months, so that its label has to say how long it is good once opened, and "
                "nobody has said that.",
                "Add `after opening:` to the recipe, for example `after opening: 12 months`.",
            )
