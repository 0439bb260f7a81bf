"""A soap with no fat that takes the lye when it goes into the pot."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.ingredient import CountsAs
from builder.model.studio import Studio


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("fats-all-late", STOP, "All the fat goes in after the cook, so that the lye would find none and stay caustic."),
    FindingKind("fats-all-waxes", STOP, "The only fats are waxes, which take up next to no lye, so that it would stay in the soap."),
)
def find_lye_without_fat(studio: Studio) -> Iterator[Finding]:
    """See that each soap has a fat from the start that is no wax. A soap without any fat is a finding of its own."""
    for recipe in studio.recipes.values():
        lines = [(phase, line, studio.ingredient(line.ingredient)) for phase in recipe.phases for line in phase.lines]
        fats = [(phase, card) for phase, _, card in lines if card and card.counts_as.is_oil]
        if recipe.lye is None or not fats or any(card is None for _, _, card in lines):
            continue
        early = [card for phase, card in fats if not phase.after_the_cook]
        if not early:
            yield stop(
                "fats-all-late",
                fats[0][0].name.place,
                "All the fat goes in after the cook, so the lye would cook alone: there is no soap, and the lye stays caustic.",
                "Move the fats that are to become soap to a phase without `after the cook: yes`.",
            )
        elif all(card.counts_as is CountsAs.WAX for card in early):
            yield stop(
                "fats-all-waxes",
                recipe.lye.place,
                "The only fats in the pot are waxes, and a wax takes up its lye only when it is boiled for hours: lye would be left over.",
                "Make most of the fat an oil or a butter.",
            )
