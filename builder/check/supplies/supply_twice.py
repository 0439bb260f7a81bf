"""The same pack of the same thing with two prices, and two pumps for one ingredient."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.model.supplies.supply import Supply


@rule_on(
    STUDIO,
    FindingKind("supply-twice", CAUTION, "The same pack stands twice, and only the cheaper one counts."),
    FindingKind("pump-twice", CAUTION, "Two pumps are given for one ingredient, and only the first counts."),
)
def find_supplies_twice(studio: Studio) -> Iterator[Finding]:
    """Compare each pack with those above it."""
    packs: dict[tuple[object, ...], Supply] = {}
    pumps: dict[str, Supply] = {}
    for supply in studio.supplies:
        card = studio.stocked(supply.name)
        name = card.key if card else supply.name.key
        first = packs.setdefault((supply.kind, name, supply.size), supply)
        if first is not supply:
            yield caution(
                "supply-twice",
                supply.at("pack"),
                f'This pack of "{supply.name}" stands on line {first.place.line} already, and only the cheaper of the two is counted.',
                "Keep the price that is true.",
            )
        if supply.pump and pumps.setdefault(name, supply) is not supply:
            yield caution(
                "pump-twice",
                supply.pump.place,
                f'A pump for "{supply.name}" stands on line {pumps[name].place.line} already, and strokes are counted with that one.',
                "Keep the pump that is used in class.",
            )
