"""The ingredient list of a product, from the amounts as weighed and what students may add, by the rules of a region.

Order: what is above one per cent by weight, descending; then what is below, in any order; colours last. Blends are expanded, the same name
from several sources is added up, and an order is printed only if it is proven (`label_order.py`). Scents are one entry, and the allergens
that they may hold more of than the region's threshold are named besides.

Decided: an essential oil on the lips goes by its name in the United States, a flavour off the lips is fragrance. Why: 21 CFR 701.3(a): by
each function or by name; nobody tastes a lotion.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from builder.model.label.declaration import NOTHING, polytopes_of
from builder.model.label.ingredient_list import Declared, IngredientList
from builder.model.label.labelling import ANY_REGION, Labelling
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact
from builder.reckon.label.label_order import ListedAmount, Order, sort_names
from builder.reckon.label.label_question import find_question
from builder.reckon.label.scent_allergens import CardAmount, allergen_sources, may_hold, without_statement

COLLECTIVE = {DeclaredAs.FRAGRANCE: ("Parfum", "Fragrance"), DeclaredAs.FLAVOUR: ("Aroma", "Flavor")}
_ALONE = polytopes_of(1, None, {})


@dataclass
class _Product:
    """What a list is made from: the sources of the product, and the entry under each key, its amounts still to be worked out."""

    labelling: Labelling
    contact: Contact = Contact.LEAVE_ON
    sources: list[ListedAmount] = field(default_factory=list)
    entries: dict[str, Declared] = field(default_factory=dict)

    def add(self, card: Ingredient, least: Fraction, most: Fraction) -> None:
        """Take in what one card makes up of the product."""
        declared_as = declared_where(card, self.contact, self.labelling)
        if declared_as in COLLECTIVE:
            inci, plain = COLLECTIVE[declared_as]
            keys = [self._enter(str(declared_as), Declared(inci, plain, declared_as, NOTHING, NOTHING))]
            self.sources.append(ListedAmount(card.name, tuple(keys), least, most, _ALONE))
        elif card.label_name is not None:
            names, keys = card.label_name, []
            for number, (inci, plain) in enumerate(zip(names.inci, names.plain, strict=True)):
                kind = DeclaredAs.COLOUR if number in names.colours else declared_as
                # Two colours of one INCI name, such as red and yellow iron oxides, can have names of their own where numbers are used.
                coloured = card.colour_name.get(self.labelling.region.says("colours"), inci) if kind is DeclaredAs.COLOUR else inci
                key = self.labelling.common_name(coloured)
                kind = DeclaredAs(key) if key in COLLECTIVE else kind
                entry = Declared(inci, plain, kind, NOTHING, NOTHING, card.colour_name, number in names.nano)
                keys.append(self._enter(key, entry))
            self.sources.append(ListedAmount(card.name, tuple(keys), least, most, names.polytopes))

    def name_allergens(self, weighed: Iterable[CardAmount], contact: Contact) -> None:
        """Take in the allergens of scents, and name those that there can be more of than need not be named."""
        found = list(allergen_sources(weighed, self.labelling))
        order = Order([*self.sources, *(source for _, source in found)], free_at_one=True)
        for allergen, source in found:
            key = source.names[0]
            if key in self.entries or order.range_of(key)[1] > allergen.unnamed_up_to(contact):
                name = allergen.label_name
                self._enter(key, Declared(name, name, DeclaredAs.INGREDIENT, NOTHING, NOTHING, is_allergen=True))
                self.sources.append(source)

    def _enter(self, key: str, entry: Declared) -> str:
        before = self.entries.setdefault(key, entry)
        if entry.declared_as is DeclaredAs.COLOUR is not before.declared_as:
            self.entries[key] = replace(before, declared_as=DeclaredAs.COLOUR, colour_name=entry.colour_name)
        return key


def declared_where(card: Ingredient, contact: Contact, labelling: Labelling) -> DeclaredAs:
    """Return what a card is declared as in a product that goes there.

    A flavour that is not for the lips is there for its scent. An oil on the lips flavours and scents, and where the region wants such a
    thing declared by both or by its name, it goes by its name.
    """
    if card.declared_as is DeclaredAs.FLAVOUR and contact != Contact.LIPS:
        return DeclaredAs.FRAGRANCE
    both = (
        card.declared_as is DeclaredAs.FRAGRANCE
        and card.kind is IngredientKind.ESSENTIAL_OIL
        and contact == Contact.LIPS
        and card.label_name
    )
    return DeclaredAs.INGREDIENT if both and labelling.region.says("flavours and scents") == "by name" else card.declared_as


def list_ingredients(
    weighed: Sequence[CardAmount], labelling: Labelling = ANY_REGION, contact: Contact = Contact.LEAVE_ON
) -> IngredientList:
    """Return the list for a product made of `(card, least, most)`, the parts of it that each card can make up.

    `contact` is where the product goes, which decides on the thresholds of allergens. Cards without a label name (a base whose
    declaration was not copied) are named in `nameless`. Errors: none; what is not proven is in `open_pairs`.
    """
    weighed = [one for one in weighed if one[2]]
    nameless = tuple(card.name for card, _, _ in weighed if not card.label_name and card.declared_as not in COLLECTIVE)
    made = _Product(labelling, contact)
    for card, least, most in weighed:
        made.add(card, least, most)
    made.name_allergens(weighed, contact)
    order = Order(made.sources, free_at_one=labelling.region.free_at_one)
    entries = {key: _with_range(entry, order.range_of(key)) for key, entry in made.entries.items()}
    body, last = _blocks(entries, labelling)
    found = sort_names(order, body)
    return IngredientList(
        entries=tuple(entries[key] for key in (*found.names, *last)),
        open_pairs=tuple((entries[one].plain, entries[other].plain) for one, other in found.open_pairs),
        nameless=nameless,
        question=find_question(order, found.open_pairs, {key: entry.plain for key, entry in entries.items()}),
        without_statement=without_statement(weighed, labelling, contact),
        may_hold=may_hold(weighed, labelling, contact),
    )


def _with_range(entry: Declared, ends: tuple[Fraction, Fraction]) -> Declared:
    return replace(entry, least=ends[0], most=ends[1])


def _blocks(entries: Mapping[str, Declared], labelling: Labelling) -> tuple[list[str], list[str]]:
    """Return the keys that stand in order of weight, by the most they can be, and those that stand last: colours, then scent if it may."""
    by_most = sorted(entries, key=lambda key: (-(entries[key].least + entries[key].most), entries[key].inci))
    colours = [key for key in by_most if entries[key].declared_as is DeclaredAs.COLOUR]
    scents = [key for key in by_most if entries[key].declared_as in COLLECTIVE] if labelling.region.scent_may_be_last else []
    return [key for key in by_most if key not in colours and key not in scents], colours + scents
