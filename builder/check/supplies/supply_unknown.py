"""A pack of an ingredient or a container that nothing answers to, or an item for a class that there is not."""

from collections.abc import Iterable, Iterator

from builder.check.rule import STUDIO, rule_on
from builder.check.supplies.inventory_unknown import OTHERWISE, meanings_of
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.library import ANY
from builder.model.place import Name
from builder.model.studio import Studio
from builder.model.supplies.supply import Supply, SupplyKind
from builder.words.nearest import did_you_mean


@rule_on(
    STUDIO, FindingKind("supply-unknown", CAUTION, "A pack holds something that is no ingredient, container or class that is known here.")
)
def find_unknown_supplies(studio: Studio) -> Iterator[Finding]:
    """Look up what each pack holds."""
    ingredients = [card.name for card in (*studio.ingredients.values(), *studio.bought_solutions.values())]
    containers = [container.name for container in studio.containers.values()]
    for supply in studio.supplies:
        name = supply.name
        if supply.kind is SupplyKind.INGREDIENT and not (studio.stocked(name) or name.key in studio.unread.ingredients):
            yield _unknown(supply.kind, name, ingredients, studio)
        if supply.kind is SupplyKind.CONTAINER and not (studio.container(name) or studio.unread.containers & {name.key, ANY}):
            yield _unknown(supply.kind, name, containers, studio)
        yield from _classes(supply, studio)


def _unknown(kind: SupplyKind, name: Name, known: Iterable[str], studio: Studio) -> Finding:
    near = did_you_mean(name.text, known, meanings_of(kind, studio))
    return caution(
        "supply-unknown",
        name.place,
        f'No {kind} is called "{name}", so this pack counts for nothing.',
        f"Correct the name, or {OTHERWISE[kind]}.{near}",
    )


def _classes(supply: Supply, studio: Studio) -> Iterator[Finding]:
    for key in supply.use.classes if supply.use else ():
        if key.text not in studio.classes and key.text not in studio.unread.classes:
            wrong = f'No class is called "{key}", so these {supply.name} are not counted there.'
            remedy = f"Write the name of a folder in classes/.{did_you_mean(key.text, studio.classes)}"
            yield caution("supply-unknown", key.place, wrong, remedy)
