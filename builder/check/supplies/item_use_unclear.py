"""Something to be used up of which nobody says how much, or which says it on two of its packs."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.library import ANY
from builder.model.studio import Studio
from builder.model.supplies.supply import Supply, SupplyKind


@rule_on(STUDIO, FindingKind("item-use-unclear", CAUTION, "Nobody says how much of something is used up, so that it costs nothing."))
def find_unclear_uses(studio: Studio) -> Iterator[Finding]:
    """See that one pack of each item says how much of it is used up."""
    items: dict[str, list[Supply]] = {}
    for supply in studio.supplies:
        if supply.kind is SupplyKind.ITEM:
            items.setdefault(supply.name.key, []).append(supply)
    for packs in items.values():
        uses = [supply for supply in packs if supply.use]
        if not uses and not studio.unread.items & {packs[0].name.key, ANY}:
            yield caution(
                "item-use-unclear",
                packs[0].name.place,
                f'Nothing says how many "{packs[0].name}" are used up, so that they cost nothing.',
                'Write "each student: 2", or each group, each class or each container; "each class: 1/4" for what lasts four classes.',
            )
        for again in uses[1:]:
            yield caution(
                "item-use-unclear",
                again.name.place,
                f'How many "{again.name}" are used up stands on line {uses[0].place.line} already, and that is what counts.',
                "Say it on one of the packs only.",
            )
