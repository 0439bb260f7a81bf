"""Where batches are made, and what is known there."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from builder.model.dose.limit import LimitRules
from builder.model.label.labelling import ANY_REGION, Labelling
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import Cards, DeclaredAs
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import Mass
from builder.model.recipe.recipe import Recipe
from builder.model.remembered import remembered
from builder.model.studio import Scale, Studio
from builder.reckon.recipe.scales import Vessel, pick_scale, vessel_by

NO_RULES = LimitRules()


@dataclass(frozen=True)
class Workplace:
    """What a batch is worked out with: cards by key, scales by the unit in which they read, grams first, constants, limits, labelling.

    `from_solid`: lye is mixed from the solid there.
    """

    cards: Cards
    columns: tuple[tuple[Scale, ...], ...]
    constants: Mapping[str, Figure]
    rules: LimitRules = NO_RULES
    labelling: Labelling = ANY_REGION
    from_solid: bool = False

    @property
    def grams(self) -> tuple[Scale, ...]:
        """Return the scales that read in grams."""
        return self.columns[0]

    @property
    def vessel(self) -> Vessel:
        """Return what stands on a scale beside what is weighed."""
        return vessel_by(self.constants)

    def division_for(self, mass: Mass, scales: Sequence[Scale] = ()) -> Mass:
        """Return the division of the scale that weighs a mass here: of some scales, or of those that read in grams."""
        return pick_scale(mass, scales or self.grams, self.vessel)[0].division

    def making(self, recipe: Recipe, kind: Product) -> "Workplace":
        """Return the same with the limits for the use of a recipe, and with the cards as the recipe uses them."""
        return replace(
            self, cards=_as_used(recipe, self.cards), rules=self.rules.for_use(recipe.goes_on(kind.used_on), recipe.youngest_user)
        )


def workplace(studio: Studio, scales: Sequence[Scale], *, youngest: int | None = None, from_solid: bool = False) -> Workplace:
    """Return a place with some scales and all that a studio knows, its limits for people from `youngest` years on."""
    return _workplace(studio.ingredients, studio.constants, studio.rules(youngest), studio.labelling, from_solid, *scales)


@remembered(64)
def _workplace(
    cards: Cards,
    constants: Mapping[str, Figure],
    rules: LimitRules,
    labelling: Labelling,
    from_solid: bool,
    *scales: Scale,
) -> Workplace:
    """Return the same place for the same studio, so that what has been worked out in it is known."""
    return Workplace(cards, by_unit(scales), constants, rules, labelling, from_solid=from_solid)


def by_unit(scales: Sequence[Scale]) -> tuple[tuple[Scale, ...], ...]:
    """Sort scales by the unit in which they read, grams first."""
    units = sorted({scale.unit for scale in scales}, key=lambda unit: (unit != "g", unit))
    return tuple(tuple(scale for scale in scales if scale.unit == unit) for unit in units)


@remembered(256)
def _as_used(recipe: Recipe, cards: Cards) -> Cards:
    """Return the cards as the recipe uses them: a colour that is there for something else is declared as what it is."""
    others = {cards[name.key].key for name in recipe.not_for_colour if name.key in cards}
    if not others:
        return cards
    return {key: replace(card, declared_as=DeclaredAs.INGREDIENT) if card.key in others else card for key, card in cards.items()}
