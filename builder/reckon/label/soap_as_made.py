"""What a soap is made of once it has come out of the pot, as an ingredient list takes it: salts of the fats, glycerin, water, free fat.

The fats keep their proportions; how much of them stays free lies between the lowest and the highest superfat. A bar dries: its water is
what the studio's own weighing leaves after the cure, and without one lies between none and all of it.

Decided: the names of salts of fats (`saponified as`) are from memory, and only those that are common. Why: the glossary was not read; a
missing one is a finding.

Decided: `as it came out` takes the water that the studio weighed after the cure, and the superfat from its lowest to its highest. Why:
the list is true on the day it is labelled.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from builder.model.label.declaration import NOTHING, WHOLE
from builder.model.lye.soap_made import SoapMade
from builder.model.recipe.column import Column
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import Cards, CountsAs, DeclaredAs, Ingredient, LabelName, MixesWith
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import DeclaredBy, Product
from builder.reckon.label.scent_allergens import CardAmount
from builder.reckon.lye.equivalents import molar_mass

Named = tuple[LabelName, Fraction]


def soap_as_made(made: SoapMade, column: Column, product: Product, cards: Cards, drop: Fraction | None) -> tuple[CardAmount, ...]:
    """Return the parts of a soap as shares of what went into the pot; `drop` is the share of its weight that a bar loses in its cure.

    A fat or an acid whose card does not say what its salt is called comes without a label name.
    """
    whole, lye = made.total, column.lye
    assert lye is not None
    nameless = [soap.ingredient for soap in made.soaps if not soap.ingredient.saponified_as or not soap.ingredient.label_name]
    nameless += [one.ingredient for one in made.salts if not one.ingredient.saponified_as]
    if nameless:
        return tuple((replace(card, label_name=None, declared_as=DeclaredAs.INGREDIENT), WHOLE, WHOLE) for card in nameless)
    by_alkali = [(_metal(part.card), part.by_equivalents, molar_mass(part.card)) for part in lye.parts]
    per_mol = sum((share * molar for _, share, molar in by_alkali), NOTHING)
    salts = [
        (_salt(metal, soap.ingredient), share * (soap.soap.grams + soap.took * (molar - per_mol)) / whole.grams)
        for soap in made.soaps
        for metal, share, molar in by_alkali
    ]
    # Glycerin is freed as soap is made, so that there is more or less of both together.
    glycerin = cards["glycerin"].label_name
    salts += [(glycerin, made.glycerol / whole)] if glycerin and made.glycerol else []
    used, lowest, highest = 1 - lye.superfat, max(lye.lowest, NOTHING), max(lye.highest, NOTHING)
    found = [
        *_blend("Soap of the fats", salts, (1 - highest) / used, (1 - lowest) / used),
        *_free_fat(made, lye.superfat, lowest, highest),
        *(
            (_card(one.ingredient.name, _salt(metal, one.ingredient)), amount, amount)
            for one in made.salts
            for metal, share, molar in by_alkali
            for amount in [share * (one.salt.grams + one.took * (molar - per_mol)) / whole.grams]
        ),
        *((card, mass / whole, mass / whole) for card, mass in made.others),
    ]
    water = made.water / whole
    least = max(water - drop, NOTHING) if drop is not None else NOTHING if product.declared_by == DeclaredBy.WEIGHT else water
    return (*found, (cards["water"], least, least if drop is not None else water))


def _free_fat(made: SoapMade, superfat: Fraction, lowest: Fraction, highest: Fraction) -> Sequence[CardAmount]:
    """Return the fat that stays free; where none is meant to, what may, in the proportions of the soaps."""
    named = [(soap.ingredient.label_name, soap) for soap in made.soaps if soap.ingredient.label_name]
    if superfat <= 0:
        return _blend("Fat left free", [(name, soap.soap / made.total) for name, soap in named], NOTHING, highest)
    return _blend("Fat left free", [(name, soap.unsaponified / made.total) for name, soap in named], lowest / superfat, highest / superfat)


def _metal(alkali: Ingredient) -> str:
    """Return the first word of the name of its soaps."""
    return alkali.name.split()[0].title()


def _salt(metal: str, card: Ingredient) -> LabelName:
    name = f"{metal} {card.saponified_as}"
    return LabelName((name,), (name,), Known.MEMORY)


def _card(name: str, label: LabelName) -> Ingredient:
    return Ingredient(name, IngredientKind.OTHER, CountsAs.OTHER, MixesWith.BOTH, label_name=label)


def _blend(name: str, parts: Sequence[Named], least: Fraction, most: Fraction) -> Sequence[CardAmount]:
    """Make one thing of parts in fixed proportions, of which there is from `least` to `most` times as much."""
    total = sum((share for _, share in parts), NOTHING)
    ordered = sorted(parts, key=lambda part: -part[1])
    label = LabelName(
        inci=tuple(part.inci[0] for part, _ in ordered),
        plain=tuple(part.plain[0] for part, _ in ordered),
        known=Known.COMPUTED,
        shares={number: (share / total, share / total) for number, (_, share) in enumerate(ordered)},
    )
    return [(_card(name, label), total * least, total * most)]
