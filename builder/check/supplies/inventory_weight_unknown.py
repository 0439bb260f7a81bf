"""A volume in stock of something whose density nobody knows."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.quantity import Volume
from builder.model.studio import Studio


@rule_on(STUDIO, FindingKind("inventory-weight-unknown", CAUTION, "A volume is in stock, and without a density nobody knows its weight."))
def find_inventory_without_weight(studio: Studio) -> Iterator[Finding]:
    """See that each volume in stock becomes a weight."""
    for one in studio.inventory:
        card = studio.stocked(one.name)
        if card and isinstance(one.have, Volume) and studio.density_as_bought(one.name) is None:
            yield caution(
                "inventory-weight-unknown",
                one.at("have"),
                f'"{one.written}" becomes a weight only through a density, and none is known for {card.name}, so that it is not taken off'
                " the shopping list.",
                'Weigh what is there less the empty vessel and write the weight, for example "have: 1.9 kg".',
            )
