"""The fragrance allergens of scents and of scented bases, from their suppliers' statements: how much of each a product can hold.

Decided: an allergen that may pass its threshold is named. Why: a name too many misleads nobody.
"""

from collections.abc import Iterable, Iterator
from fractions import Fraction

from builder.model.label.declaration import NOTHING, WHOLE, polytopes_of
from builder.model.label.ingredient_list import MayHold
from builder.model.label.labelling import Allergen, Labelling
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.product import Contact
from builder.reckon.label.label_order import ListedAmount

SCENTS = (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR)
CardAmount = tuple[Ingredient, Fraction, Fraction]
_ALONE = polytopes_of(1, None, {})


def allergen_sources(weighed: Iterable[CardAmount], labelling: Labelling) -> Iterator[tuple[Allergen, ListedAmount]]:
    """Yield what each scent, or ready-made base with a statement, brings of each allergen that the region wants named, isomers together.

    A whole oil that is a scent and an allergen itself counts as it is. All are parts of what is weighed, and add no weight of their own;
    what a base declares in its list is named anyway.
    """
    for card, least, most in weighed:
        held = card.allergen_statement.contains if card.allergen_statement else {}
        names = {name.casefold() for name in card.label_name.inci} if card.label_name else set()
        is_scent = card.declared_as in SCENTS
        declared = set() if is_scent else _keys(card, labelling)
        for allergen in labelling.to_name:
            ranges = [held[name] for name in allergen.counts if name in held]
            if is_scent and names & set(allergen.oils):
                ranges.append((WHOLE, WHOLE))
            key = allergen.label_name.casefold()
            high = min(sum((one[1] for one in ranges), NOTHING), WHOLE)
            if high and key not in declared:
                low = min(sum((one[0] for one in ranges), NOTHING), WHOLE)
                yield allergen, ListedAmount(card.name, (key,), least * low, most * high, _ALONE, counts=False)


def without_statement(weighed: Iterable[CardAmount], labelling: Labelling, contact: Contact) -> tuple[str, ...]:
    """Name the scents, and the bases with scent in their list, that may hold an allergen above its threshold for all that is stated."""
    if not labelling.covers:
        return ()
    unstated = [
        (card.name, most)
        for card, _, most in weighed
        if _is_scented(card, labelling) and (card.allergen_statement is None or card.allergen_statement.covers not in labelling.covers)
    ]
    needs_none = min(one.unnamed_up_to(contact) for one in labelling.to_name)
    return tuple(dict.fromkeys(name for name, _ in unstated)) if sum(most for _, most in unstated) > needs_none else ()


def may_hold(weighed: Iterable[CardAmount], labelling: Labelling, contact: Contact) -> tuple[MayHold, ...]:
    """Return what is published of the scents `without_statement`: the allergens of which there can be more than need not be named."""
    weighed = tuple(weighed)
    unstated = without_statement(weighed, labelling, contact)
    found = {}
    for card, _, amount in weighed:
        if card.name in unstated:
            held = [(one, _most_held(card, one)) for one in labelling.to_name]
            named = [(one.label_name, most) for one, most in held if most * amount > one.unnamed_up_to(contact)]
            found[card.name] = MayHold(card.name, tuple(sorted(named, key=lambda one: (-one[1], one[0]))))
    return tuple(found.values())


def _most_held(card: Ingredient, allergen: Allergen) -> Fraction:
    """Return the most that is published of an allergen in a card, its isomers together. An oil that is one itself is named anyway."""
    of_parts = (sum((part[name].high for name in allergen.counts if name in part), NOTHING) for part in card.holds)
    return min(max(of_parts, default=NOTHING), WHOLE)


def _is_scented(card: Ingredient, labelling: Labelling) -> bool:
    return card.declared_as in SCENTS or not _keys(card, labelling).isdisjoint(SCENTS)


def _keys(card: Ingredient, labelling: Labelling) -> set[str]:
    """Return the keys under which the parts of a declared list are entered."""
    return {labelling.common_name(name) for name in card.label_name.inci} if card.label_name else set()
