"""A region of which nobody has written how high the type of a label has to be.

Decided: it stops all labels, and cannot be accepted. Why: without a height nothing says what fits, and labels of a guessed size would look
as lawful as all others.
"""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio
from builder.model.subject import Labels, Subject


@rule_on(STUDIO, FindingKind("type-heights-unknown", STOP, "Nothing says how high the type of a label has to be in the studio's region."))
def find_type_heights_unknown(studio: Studio) -> Iterator[Finding]:
    """Look up the rows of the region; a region that cannot be read is a finding of its own."""
    made = list(studio.recipes_made)
    if not made or studio.profile.region not in studio.regions or studio.knows_type_heights:
        return
    yield stop(
        "type-heights-unknown",
        studio.profile.at("region"),
        f"Nothing says how high the type of a label has to be in this region ({studio.profile.region}), so no product gets a label.",
        "Write `region:` of a law whose heights are known, or add rows with their source to content/tables/type_heights.csv.",
        about=frozenset[Subject](Labels(recipe.key) for recipe in made),
    )
