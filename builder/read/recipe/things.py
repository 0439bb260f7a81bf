"""Lists of things that are each an ingredient, a container or an item: the packs of the supplies, and what is in stock."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from builder.model.finding import Finding, stop
from builder.model.supplies.supply import SupplyKind
from builder.read.makes import Makes
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.in_part import made_in_part
from builder.words.nearest import did_you_mean

M = TypeVar("M")


@dataclass(frozen=True)
class ThingWords:
    """How findings speak of a list: what it is a list of, what one entry is called, what an entry has to say, and an example of one."""

    of: str
    each: str
    says: str
    example: str


def read_things(
    unclear: str, words: ThingWords, shapes: Mapping[SupplyKind, type[Makes[M]]], placed: PlacedData, findings: list[Finding]
) -> tuple[tuple[M, ...], tuple[M, ...]]:
    """Read the entries of one file, in order, and beside them those of which not all can be read.

    `unclear` is the finding of an entry of which nobody can tell what it is.
    """
    if not isinstance(placed.data, list):
        wrong = f"A list of {words.of} is wanted in this file."
        findings.append(stop("wrong-kind-of-value", placed.place(), wrong, f'Begin each {words.each} with a hyphen: "{words.example}".'))
        return (), ()
    things: list[M] = []
    in_part: list[M] = []
    for number, entry in enumerate(placed.data):
        kinds = [kind for kind in SupplyKind if isinstance(entry, dict) and kind in entry]
        if len(kinds) == 1:
            thing, is_whole = made_in_part(shapes[kinds[0]], placed.inside(number), findings, kind=kinds[0])
            if thing is not None:
                (things if is_whole else in_part).append(thing)
        else:
            near = did_you_mean(next(iter(entry)), list(SupplyKind)) if not kinds and isinstance(entry, dict) and entry else ""
            wrong = f"It is not clear {words.says}: exactly one of ingredient, container and item says it."
            findings.append(stop(unclear, placed.place(number), wrong, f'Write for example "{words.example}".{near}'))
    return tuple(things), tuple(in_part)
