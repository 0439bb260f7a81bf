"""A loose powder for the skin whose label does not say that it is not to be breathed in."""

from collections.abc import Iterator

from builder.check.formula.formulas import formulas_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.hazard import Hazard
from builder.model.recipe.ingredient import WATERY, CountsAs
from builder.model.studio import Studio
from builder.words.listed import listed_once

_BINDS = (*WATERY, CountsAs.BASE)
_SAID = ("breath", "inhal", "nose", "dust")


@rule_on(
    STUDIO,
    FindingKind("dust-unsaid", CAUTION, "A loose powder hangs in the air, and its label does not say that it is not to be breathed in."),
)
def find_dust_unsaid(studio: Studio) -> Iterator[Finding]:
    """Look at products that stay on and hold nothing that binds their powder."""
    for formula in formulas_of(studio):
        dusts = [part for part in formula.parts if Hazard.DUST in part.card.hazards]
        bound = any(part.card.is_oily or part.card.counts_as in _BINDS for part in formula.parts)
        if formula.stays_on and dusts and not bound and not any(word in formula.label_text for word in _SAID):
            names = listed_once([part.card.name for part in dusts])
            yield caution(
                "dust-unsaid",
                dusts[0].place,
                f"{formula.recipe.name} is a loose powder ({names}), and its label does not say that it is not to be breathed in. Shaken "
                "out, it hangs in the air, and the finest of it reaches the lungs (EU law asks for the warning on powders with talc for "
                "small children: Regulation (EC) 1223/2009, Annex III entry 59; common practice for others).",
                "Add to `label cautions:` a line such as “Keep powder away from children's nose and mouth. Do not breathe it in.”",
            )
