"""The fragrance allergens of scents, from their suppliers' statements: how much of each a product can hold, and whose are not known."""

from collections.abc import Iterable, Iterator
from fractions import Fraction

from builder.model.declaration import NOTHING, WHOLE, Cell
from builder.model.ingredient import DeclaredAs, Ingredient
from builder.model.labelling import Allergen, Labelling
from builder.reckon.label_order import Source

SCENTS = (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR)
Weighed = tuple[Ingredient, Fraction, Fraction]


def allergen_sources(weighed: Iterable[Weighed], labelling: Labelling) -> Iterator[tuple[Allergen, Source]]:
    """Give what each scent brings of each allergen that the region wants named, the isomers of one together.

    A whole oil that is an allergen itself counts as it is. All are parts of a scent that is weighed, and add no weight of their own.
    """
    for card, least, most in weighed:
        if card.declared_as not in SCENTS:
            continue
        held = card.allergen_statement.contains if card.allergen_statement else {}
        names = {name.casefold() for name in card.label_name.inci} if card.label_name else set()
        for allergen in labelling.to_name:
            ranges = [held[name] for name in allergen.counts if name in held]
            if names & set(allergen.oils):
                ranges.append((WHOLE, WHOLE))
            high = min(sum((one[1] for one in ranges), NOTHING), WHOLE)
            if high:
                low = min(sum((one[0] for one in ranges), NOTHING), WHOLE)
                whole = (Cell((0,), (), (WHOLE,), (WHOLE,), plain=False),)
                yield allergen, Source(card.name, (allergen.label_name.casefold(),), least * low, most * high, whole, counts=False)


def without_statement(weighed: Iterable[Weighed], labelling: Labelling, contact: str) -> tuple[str, ...]:
    """Name the scents that may hold an allergen above its threshold for all that is stated."""
    if not labelling.covers:
        return ()
    unstated = [
        (card.name, most)
        for card, _, most in weighed
        if card.declared_as in SCENTS and (card.allergen_statement is None or card.allergen_statement.covers not in labelling.covers)
    ]
    needs_none = min(one.unnamed_up_to(contact) for one in labelling.to_name)
    return tuple(dict.fromkeys(name for name, _ in unstated)) if sum(most for _, most in unstated) > needs_none else ()
