"""The table of all findings: every name that reading or a rule can give."""

from collections.abc import Mapping

from builder.check import RULES
from builder.model.finding_kind import FindingKind
from builder.model.remembered import remembered


@remembered(1)
def finding_kinds() -> Mapping[str, FindingKind]:
    """Return every kind of finding by its name, in the order of the names. A name that is declared twice is declared alike."""
    # Loaded here, since it is all that reads, and the last run knew what it finds.
    from builder.read.findings import FINDS

    kinds: dict[str, FindingKind] = {}
    for kind in (*FINDS, *(kind for rule in RULES for kind in rule.finds)):
        if kinds.setdefault(kind.name, kind) != kind:
            raise AssertionError(f"two declarations of {kind.name} differ")
    return dict(sorted(kinds.items()))
