"""Something in stock that is no ingredient, no container, or no item of the supplies."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.library import ANY
from builder.model.studio import Studio
from builder.model.supplies.supply import SupplyKind
from builder.words.nearest import Meanings, did_you_mean


@rule_on(STUDIO, FindingKind("inventory-unknown", CAUTION, "Something in stock is no ingredient, container or item that is known here."))
def find_unknown_inventory(studio: Studio) -> Iterator[Finding]:
    """Look up each thing that is in stock."""
    items = {supply.name.key: supply.name.text for supply in studio.supplies if supply.kind is SupplyKind.ITEM}
    known = {
        SupplyKind.INGREDIENT: {key: card.name for key, card in (*studio.ingredients.items(), *studio.bought_solutions.items())},
        SupplyKind.CONTAINER: {key: container.name for key, container in studio.containers.items()},
        SupplyKind.ITEM: items,
    }
    unread = {
        SupplyKind.INGREDIENT: studio.unread.ingredients,
        SupplyKind.CONTAINER: studio.unread.containers,
        SupplyKind.ITEM: studio.unread.items,
    }
    for one in studio.inventory:
        there = one.name.key in known[one.kind] or unread[one.kind] & {one.name.key, ANY}
        if not there:
            near = did_you_mean(one.name.text, known[one.kind].values(), meanings_of(one.kind, studio))
            yield caution(
                "inventory-unknown",
                one.name.place,
                f'No {one.kind} is called "{one.name}", so what is there of it is not taken off the shopping list.',
                f"Correct the name, or {OTHERWISE[one.kind]}.{near}",
            )


OTHERWISE = {
    SupplyKind.INGREDIENT: "add a card for it to shelf/ingredients/",
    SupplyKind.CONTAINER: "add it to shelf/containers.yaml",
    SupplyKind.ITEM: "add it to shelf/supplies.yaml",
}


def meanings_of(kind: SupplyKind, studio: Studio) -> Meanings:
    """Return what is meant by words that people type for a kind of thing to buy."""
    return {SupplyKind.INGREDIENT: studio.synonyms.ingredients, SupplyKind.CONTAINER: studio.synonyms.containers}.get(kind, {})
