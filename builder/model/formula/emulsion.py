"""Water and oil that meet in a batch, and what holds them together."""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.working import Working


@dataclass(frozen=True)
class CreamSoap:
    """The soap that an alkali which is no lye (borax) makes in a cream of the free acids of a wax or a fatty acid.

    From `low` to `high` is the share of the acids that the alkali neutralises; above one, some of it is left over.
    """

    acids: tuple[Ingredient, ...]
    alkalis: tuple[Ingredient, ...]
    low: Fraction
    high: Fraction


@dataclass(frozen=True)
class Emulsion:
    """Water and oil that meet in a batch: the oils, the emulsifiers (the highest HLB first), and the shares of oil and of
    water in the whole.

    `required` is the HLB that the oils require, `has` that of the emulsifiers together; each is None where a figure is not known.
    `share_of_first` is the share of the first of two emulsifiers with which they would come to what is required (None: no share does).
    `takers` take up water by themselves, `takes_up` in all of the whole. `soap` is what an alkali makes of free acids.
    """

    oils: tuple[Ingredient, ...]
    emulsifiers: tuple[Ingredient, ...]
    oil_share: Fraction
    required: Fraction | None
    has: Fraction | None
    share_of_first: Fraction | None
    water_share: Fraction
    takers: tuple[Ingredient, ...] = ()
    takes_up: Fraction = Fraction(0)
    soap: CreamSoap | None = None
    workings: tuple[Working, ...] = ()
