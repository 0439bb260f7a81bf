"""A superfat that leaves lye in the soap, or leaves no soap."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE
from builder.words.plain_number import plain_number

SUPERFAT_TOO_HIGH = FindingKind(
    "superfat-too-high", STOP, "So high a superfat is asked for, or worked out, that little or none of the fat becomes soap."
)


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("superfat-below-zero", STOP, "The superfat asked for is below zero, which leaves lye in the soap."),
    SUPERFAT_TOO_HIGH,
)
def find_superfat_out_of_range(studio: Studio) -> Iterator[Finding]:
    """Look at the superfat that each soap asks for."""
    for recipe in studio.recipes.values():
        if recipe.lye is None or recipe.lye.superfat is None:
            continue
        superfat = recipe.lye.superfat.fraction
        if superfat < 0:
            usual = studio.constants["usual superfat of bars"]
            yield stop(
                "superfat-below-zero",
                recipe.lye.at("superfat"),
                "A superfat below zero leaves lye in the soap. It burns the skin, and no curing takes it away.",
                f"Write a superfat of 0 % or more; {plain_number(usual.low)} % to {plain_number(usual.highest)} % is usual for bars "
                f"({PRACTICE}).",
            )
        elif superfat >= Fraction(1):
            yield stop(
                "superfat-too-high",
                recipe.lye.at("superfat"),
                "At a superfat of 100 % or more none of the fat becomes soap.",
                "Write the share of the fat that stays unsaponified, for example `5 %`.",
            )
