"""The ingredient list of a product in descending order of weight, from the amounts as weighed.

Order: what is above one per cent by weight, descending; then what is below, in any order (here descending too); colours last.
A blend or ready-made base declares its parts in descending order without amounts: of a base of k parts the i-th is at most 1/i of it,
the first at least 1/k. Where that leaves the order of two names open, the pair is reported rather than guessed.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.model.batch_sheet import Declared, IngredientList
from builder.model.ingredient import DeclaredAs, Ingredient

ONE_PER_CENT = Fraction(1, 100)
COLLECTIVE = {DeclaredAs.FRAGRANCE: ("Parfum", "Fragrance"), DeclaredAs.FLAVOUR: ("Aroma", "Flavor")}


@dataclass(frozen=True)
class _Entry:
    declared: Declared
    blend: str
    rank: int


def list_ingredients(weighed: Sequence[tuple[Ingredient, Fraction, Fraction]]) -> IngredientList:
    """Give the list for a product made of `(card, least, most)`, the shares of it that each card can make up.

    Cards without a label name (a base whose declaration was not copied) are named in `nameless`.
    """
    nameless = tuple(card.name for card, _, most in weighed if most and not card.label_name)
    entries = _merge(entry for card, least, most in weighed if most for entry in _declare(card, least, most))
    body = [entry for entry in entries if entry.declared.declared_as is not DeclaredAs.COLOUR]
    colours = [entry for entry in entries if entry.declared.declared_as is DeclaredAs.COLOUR]
    body = _in_order(body)
    colours.sort(key=lambda entry: (-entry.declared.most, entry.declared.inci))
    open_pairs = tuple(
        (first.declared.plain, second.declared.plain)
        for index, first in enumerate(body)
        for second in body[index + 1 :]
        if not _proven(first, second)
    )
    return IngredientList(tuple(entry.declared for entry in (*body, *colours)), open_pairs, nameless)


def _declare(card: Ingredient, least: Fraction, most: Fraction) -> Iterable[_Entry]:
    if card.declared_as in COLLECTIVE:
        inci, plain = COLLECTIVE[card.declared_as]
        yield _Entry(Declared(inci, plain, card.declared_as, least, most), "", 0)
        return
    if card.label_name is None:
        return
    names = list(zip(card.label_name.inci, card.label_name.plain, strict=True))
    for rank, (inci, plain) in enumerate(names, start=1):
        low = least if len(names) == 1 else (least / len(names) if rank == 1 else Fraction(0))
        declared = Declared(inci, plain, card.declared_as, low, most / rank, card.colour_name)
        yield _Entry(declared, card.name if len(names) > 1 else "", rank)


def _merge(entries: Iterable[_Entry]) -> list[_Entry]:
    """Add up what goes by the same name. A part of a blend that gains from elsewhere keeps its rank only as the first of its blend."""
    merged: dict[str, _Entry] = {}
    for entry in entries:
        name = entry.declared.inci.casefold()
        if name not in merged:
            merged[name] = entry
            continue
        first = merged[name]
        declared = replace(
            first.declared, least=first.declared.least + entry.declared.least, most=first.declared.most + entry.declared.most
        )
        leader = next((part for part in (first, entry) if part.blend and part.rank == 1), None)
        merged[name] = _Entry(declared, leader.blend if leader else "", 1 if leader else 0)
    return list(merged.values())


def _in_order(entries: Sequence[_Entry]) -> list[_Entry]:
    """Sort so that each blend keeps its own order and everything else stands by the most it can be."""
    loose = sorted((e for e in entries if not e.blend), key=lambda e: (-e.declared.most, e.declared.inci))
    blends: dict[str, list[_Entry]] = {}
    for entry in entries:
        if entry.blend:
            blends.setdefault(entry.blend, []).append(entry)
    queues = [sorted(parts, key=lambda e: e.rank) for parts in blends.values()] + [[entry] for entry in loose]
    ordered: list[_Entry] = []
    while queues:
        queues.sort(key=lambda queue: (-queue[0].declared.most, queue[0].declared.inci))
        ordered.append(queues[0].pop(0))
        queues = [queue for queue in queues if queue]
    return ordered


def _proven(first: _Entry, second: _Entry) -> bool:
    if first.blend and first.blend == second.blend:
        return True
    return first.declared.least >= second.declared.most or second.declared.most < ONE_PER_CENT
