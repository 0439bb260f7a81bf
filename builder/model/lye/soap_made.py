"""What comes out of a pot of soap, by weight."""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Mass


@dataclass(frozen=True)
class SoapOf:
    """What one fat, wax or fatty acid became: the soap of it, what of it stays unsaponified, and the alkali that it `took`, in mol."""

    ingredient: Ingredient
    soap: Mass
    unsaponified: Mass
    took: Fraction


@dataclass(frozen=True)
class SaltOf:
    """What one acid became: its salt (citrate, lactate, acetate), and the alkali that it `took`, in mol."""

    ingredient: Ingredient
    salt: Mass
    took: Fraction


@dataclass(frozen=True)
class SoapMade:
    """What comes out of the pot once the lye has done its work; the parts add to the weight of the column exactly.

    `salts` are those of the acids, in the order of the column. `rest_of_alkali` is what the alkali as bought holds beside
    hydroxide. `water` is all of it, that in milks and in solutions of acids too. `others` are the ingredients that take no part, less
    their water. `free_alkali` is hydroxide that found no fat: a finding stops such a batch.
    """

    soaps: tuple[SoapOf, ...]
    glycerol: Mass
    water: Mass
    salts: tuple[SaltOf, ...]
    rest_of_alkali: Mass
    free_alkali: Mass
    others: tuple[tuple[Ingredient, Mass], ...]
    total: Mass
