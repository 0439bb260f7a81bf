"""Lists of things, each an ingredient, a container or an item: the packs in `shelf/supplies.yaml`, and what `inventory.yaml` counts.

What cannot be read is left out, and everything else is read.

Decided: a supply that cannot be read stops, one that can be read but is doubtful cautions. Why: prices hurt nobody.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.library import ANY
from builder.model.place import Place, Placed
from builder.model.supplies.supply import SupplyKind
from builder.read.makes import Makes
from builder.read.shapes.supplies import (
    ContainerInventoryShape,
    ContainerPackShape,
    IngredientInventoryShape,
    IngredientPackShape,
    ItemInventoryShape,
    ItemPackShape,
)
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.in_part import made_in_part
from builder.words.fold import fold
from builder.words.nearest import did_you_mean

FINDS = (
    FindingKind("supply-unclear", STOP, "It is not clear what is in a pack."),
    FindingKind("inventory-unclear", STOP, "It is not clear what is in stock."),
)


def _unclear_pack(place: Place, wrong: str, remedy: str) -> Finding:
    return stop("supply-unclear", place, wrong, remedy)


def _unclear_entry(place: Place, wrong: str, remedy: str) -> Finding:
    return stop("inventory-unclear", place, wrong, remedy)


@dataclass(frozen=True)
class Things:
    """A list: the finding of an entry of which nobody can tell what it is; how findings speak of the list, of one entry, of what an entry
    has to say, and an example of one; the shape of each kind.
    """

    unclear: Callable[[Place, str, str], Finding]
    of: str
    each: str
    says: str
    example: str
    shapes: Mapping[SupplyKind, type[Makes[Any]]]


PACKS = Things(
    _unclear_pack, "packs", "pack", "what is in this pack", "- {ingredient: lotion base, pack: 1 gal, price: 68.00}",
    dict(zip(SupplyKind, (IngredientPackShape, ContainerPackShape, ItemPackShape), strict=True)),
)  # fmt: skip
INVENTORY = Things(
    _unclear_entry, "what is in stock", "entry", "what this is in stock",
    "- {ingredient: olive oil, have: 2.3 kg, counted: 2027-02-20}",
    dict(zip(SupplyKind, (IngredientInventoryShape, ContainerInventoryShape, ItemInventoryShape), strict=True)),
)  # fmt: skip


def read_things(things: Things, placed: PlacedData | None, findings: list[Finding]) -> tuple[tuple[Any, ...], tuple[Any, ...]]:
    """Read the entries of one file, in order, and beside them those of which not all can be read."""
    if placed is None:
        return (), ()
    if not isinstance(placed.data, list):
        wrong = f"A list of {things.of} is wanted in this file."
        findings.append(stop("wrong-kind-of-value", placed.place(), wrong, f'Begin each {things.each} with a hyphen: "{things.example}".'))
        return (), ()
    whole: list[Any] = []
    in_part: list[Any] = []
    for number, entry in enumerate(placed.data):
        kinds = [kind for kind in SupplyKind if isinstance(entry, dict) and kind in entry]
        if len(kinds) == 1:
            thing, is_whole = made_in_part(things.shapes[kinds[0]], placed.inside(number), findings, kind=kinds[0])
            if thing is not None:
                (whole if is_whole else in_part).append(thing)
        else:
            near = did_you_mean(next(iter(entry)), list(SupplyKind)) if not kinds and isinstance(entry, dict) and entry else ""
            wrong = f"It is not clear {things.says}: exactly one of ingredient, container and item says it."
            findings.append(things.unclear(placed.place(number), wrong, f'Write for example "{things.example}".{near}'))
    return tuple(whole), tuple(in_part)


def unread_items(placed: PlacedData | None, whole: Sequence[Placed], in_part: Sequence[Placed]) -> frozenset[str]:
    """Return the folded names of the items that stand there and cannot be read whole; ANY where not even the names can be."""
    if placed is None or not isinstance(placed.data, list) or len(placed.data) > len(whole) + len(in_part):
        return frozenset({ANY})
    entries = map(placed.inside, range(len(placed.data)))
    names = (entry.inside(SupplyKind.ITEM).data for entry in entries if entry.place() in {one.place for one in in_part})
    return frozenset(fold(name) for name in names if isinstance(name, str))
