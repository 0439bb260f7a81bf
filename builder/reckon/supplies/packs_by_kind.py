"""The studio's packs by what is in them, and the cheapest of them for a need."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.ingredient import Ingredient
from builder.model.studio import Studio
from builder.model.supplies.cost import Bought, Need, Purchase
from builder.model.supplies.supply import Supply, SupplyKind
from builder.reckon.supplies.packs import Pack, cheapest_packs

Key = tuple[SupplyKind, str]


@dataclass(frozen=True)
class PacksByKind:
    """Packs by kind and by the key of what is in them, each with what it holds: grams of an ingredient, pieces of anything else."""

    packs: dict[Key, list[tuple[Supply, Fraction]]]

    def need(self, key: Key, name: str, used: Fraction, if_chosen: Fraction = Fraction(0)) -> Need:
        """Return a need with the packs that cover it."""
        return Need(key[0], name, used, if_chosen, self._buy(used + if_chosen, self.packs.get(key, [])))

    def _buy(self, needed: Fraction, packs: Sequence[tuple[Supply, Fraction]]) -> Purchase | None:
        if not packs:
            return None
        # Of what rounds to nothing one pack is on the table all the same, so that what it is worth can be said.
        least = min(size for _, size in packs)
        counts, proven = cheapest_packs(needed or least, *(Pack(size, supply.price) for supply, size in packs))
        bought = [(supply, holds, count) for (supply, holds), count in zip(packs, counts, strict=True) if count]
        price = sum((supply.price * count for supply, _, count in bought), Fraction(0))
        holds = sum((size * count for _, size, count in bought), Fraction(0))
        return Purchase(tuple(Bought(supply, count) for supply, _, count in bought), price, holds, holds - needed, proven)


def ingredient_key(card: Ingredient) -> Key:
    """Return the key under which the packs of an ingredient stand, whichever of its names they are written with."""
    return SupplyKind.INGREDIENT, card.key


def packs_of(studio: Studio) -> PacksByKind:
    """Sort the packs; those whose content cannot be told are left out, and a finding says so."""
    packs: dict[Key, list[tuple[Supply, Fraction]]] = {}
    for supply in studio.supplies:
        key = (supply.kind, supply.name.key)
        if supply.kind is SupplyKind.INGREDIENT:
            card = studio.stocked(supply.name)
            weight = supply.weight(card) if card else None
            key, holds = (supply.kind, card.key if card else ""), weight.grams if weight else None
        else:
            holds = Fraction(supply.size) if isinstance(supply.size, int) else None
        if holds is not None:
            packs.setdefault(key, []).append((supply, holds))
    return PacksByKind(packs)
