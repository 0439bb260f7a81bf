"""A product of which nobody says how long it is good, in a region whose law asks for that on every label."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio


@rule_on(STUDIO, FindingKind("keeps-missing", CAUTION, "Nothing says how long the product is good."))
def find_keeps_missing(studio: Studio) -> Iterator[Finding]:
    """Look at each recipe that a class makes (Regulation 1223/2009 Art. 19(1)(c), read; kept in Great Britain)."""
    for recipe in studio.recipes_made:
        if studio.region.open_jar_above is not None and not recipe.keeps:
            yield caution(
                "keeps-missing",
                recipe.place,
                f"Nothing says how long {recipe.name} is good, so that its label bears neither a date nor a time after opening. The law of "
                "the region asks for one of them (Regulation 1223/2009 Article 19(1)(c)).",
                "Write `keeps:`, for example `keeps: 6 months`.",
            )
