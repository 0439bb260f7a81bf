"""Lists of things that are each an ingredient, a container or an item: the packs of the supplies, and what is in stock."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

from builder.model.finding import Finding, stop
from builder.model.supplies.supply import SupplyKind
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.nearest import did_you_mean

T = TypeVar("T")


@dataclass(frozen=True)
class ThingWords:
    """How findings speak of a list: what it is a list of, what one entry is called, what an entry has to say, and an example of one."""

    of: str
    each: str
    says: str
    example: str


def read_things(
    unclear: str, words: ThingWords, placed: PlacedYaml, findings: list[Finding], read: Callable[[SupplyKind, int], T | None]
) -> tuple[T, ...]:
    """Read the entries of one file, in order; `unclear` is the finding of an entry of which nobody can tell what it is."""
    if not isinstance(placed.data, list):
        wrong = f"A list of {words.of} is wanted in this file."
        findings.append(stop("wrong-kind-of-value", placed.place(), wrong, f'Begin each {words.each} with a hyphen: "{words.example}".'))
        return ()
    made = []
    for number in range(len(placed.data)):
        entry = placed.at(number)
        kinds = [kind for kind in SupplyKind if isinstance(entry, dict) and kind in entry]
        if len(kinds) == 1:
            made.append(read(kinds[0], number))
        else:
            near = did_you_mean(next(iter(entry)), list(SupplyKind)) if not kinds and isinstance(entry, dict) and entry else ""
            wrong = f"It is not clear {words.says}: exactly one of ingredient, container and item says it."
            findings.append(stop(unclear, placed.place(number), wrong, f'Write for example "{words.example}".{near}'))
    return tuple(one for one in made if one)
