"""A kind of product: where it goes on the body, and how it is sold."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Product:
    """One product kind of `content/products.yaml`.

    `contact` is `leave-on`, `rinse-off`, `bath` or `lips`. `made_with_lye` says whether a recipe of this kind must have a lye block.
    `declared_by` is `weight` or `volume`: how the net contents are stated. `usual_ph` is the pH that such a product with water usually
    has. `meets_water`: wet hands go into its jar.
    """

    name: str
    identity: str
    contact: str
    made_with_lye: bool
    declared_by: str
    usual_ph: tuple[Fraction, Fraction] | None = None
    meets_water: bool = False
