"""Names that students give to what they have made, where the studio does not print them.

Decided: such a name is printed only where studio.yaml allows it, and on labels alone. Why: it may say who somebody is, and a label is seen
by whoever the jar is given to.
"""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio


@rule_on(
    STUDIO,
    FindingKind("own-name-not-printed", CAUTION, "A roster has names that students gave to what they made, and the studio prints none."),
)
def find_own_names_not_printed(studio: Studio) -> Iterator[Finding]:
    """Tell of the first such name of each roster."""
    if studio.profile.labels.own_names:
        return
    for roster in studio.rosters.values():
        first = next((row.own_name for row in roster.rows if row.own_name.text), None)
        if first is not None:
            yield caution(
                "own-name-not-printed",
                first.place,
                "A name of their own stands here, and this studio prints none on labels: the label bears the product's name.",
                "Write `labels: {names of their own: yes}` in studio.yaml, which prints it on the label of that person alone; or leave the "
                "column out.",
            )
