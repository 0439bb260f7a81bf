"""One recipe at one size, worked out: what is true of what is in the pot."""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.model.formula.emulsion import Emulsion
from builder.model.formula.warmth import CoolsTo, Dissolving
from builder.model.lye.soap_made import SoapMade
from builder.model.recipe.column import Column, Line, Weighed
from builder.model.recipe.filling import Filling
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import Mass, Volume
from builder.model.recipe.recipe import Cure, Recipe
from builder.model.recipe.size import Size
from builder.model.recipe.working import Working
from builder.model.supplies.cost import Cost, Jug, PumpStrokes


@dataclass(frozen=True)
class WorkedBatch:
    """One batch of one recipe, worked out. The first column is in grams; home sheets have one in ounces beside it.

    `fillings` are the containers that it fills, the recipe's own first; there is always that one. `soap` is what a soap made with lye
    becomes; `smallest` is the smallest batch that these scales can weigh sensibly. `strokes`, `jugs` and `cost` are what the studio's
    supplies add, where it lists any. `unlimited` are the scents, those to choose from included, of which no limit for this use speaks but
    those on all scent together. `emulsion` is water and oil that meet.
    `is_true_soap`: it is proven to be nothing but soap. `volume` is what the batch takes up at the most, for a mould or a pot; None where
    nobody can know. `dissolving` and `cools` say how hot its lye can get, and how long what is hot takes to cool.
    """

    recipe: Recipe
    product: Product
    size: Size
    lines: tuple[Line, ...]
    columns: tuple[Column, ...]
    workings: tuple[Working, ...]
    fillings: tuple[Filling, ...] = ()
    soap: SoapMade | None = None
    smallest: Mass | None = None
    emulsion: Emulsion | None = None
    strokes: tuple[PumpStrokes, ...] = ()
    jugs: tuple[Jug, ...] = ()
    cost: Cost | None = None
    is_true_soap: bool = False
    unlimited: tuple[Ingredient, ...] = ()
    volume: Volume | None = None
    dissolving: Dissolving | None = None
    cools: tuple[CoolsTo, ...] = ()

    @property
    def cures(self) -> bool:
        """Tell whether it is soap that has to cure."""
        return self.grams.lye is not None and not self.product.cooked

    @property
    def cure(self) -> Cure | None:
        """Return how such soap cures; None where its recipe does not say, and of what does not cure."""
        return self.recipe.cure if self.cures else None

    def cards_in(self, cards: Mapping[str, Ingredient]) -> tuple[Ingredient, ...]:
        """Return every card of it, and of what its students may choose; `cards` are the studio's."""
        chosen = (cards[option.key] for choice in self.recipe.choices for option in choice.options if option is not None)
        return tuple({card.key: card for card in (*(line.ingredient for line in self.lines), *chosen)}.values())

    @property
    def holds_water(self) -> bool:
        """Tell whether water is in it, or a liquid that is mostly water."""
        return any(line.ingredient.counts_as.is_watery for line in self.lines)

    @property
    def own(self) -> Filling:
        """Return the filling of the recipe's own container."""
        return self.fillings[0]

    @property
    def grams(self) -> Column:
        """Return the column in grams."""
        return self.columns[0]

    @property
    def rows(self) -> tuple[tuple[Weighed, ...], ...]:
        """Return each line with its weighing in every column."""
        return tuple(zip(*(column.weighed for column in self.columns), strict=True))
