"""A recipe to its formula: every ingredient's share of the whole batch, lye and water worked out."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.model.recipe.column import LYE_PHASE, Line, Role
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.quantity import Mass, Rest, Share, sum_masses
from builder.model.recipe.recipe import AmountsAs, Recipe
from builder.model.recipe.working import Given, SumRule, Working
from builder.model.remembered import remembered
from builder.reckon.lye.lye import LyeBasis, lye_basis, need_lye
from builder.reckon.recipe.masses import weight_of

BESIDE_PHASE = "water beside the lye"
LATER_PHASE = "after the lye"


@dataclass(frozen=True)
class Formula:
    """A recipe for a batch of weight one. `oils` is the share that is oil; `lye` is None where there is no lye.

    `exact` of a line is its amount as it is written, `whole` what all of them come to: grams where they are weights, else only a number.
    """

    lines: tuple[Line, ...]
    oils: Fraction
    lye: LyeBasis | None
    workings: tuple[Working, ...]
    whole: Mass


@remembered(256)
def reckon_formula(recipe: Recipe, cards: Mapping[str, Ingredient], *, from_solid: bool = False, cooked: bool = False) -> Formula:
    """Work out the shares of a recipe.

    `from_solid` leaves out that the lye comes ready-mixed, by staff or as it is bought: at home it is mixed from the solid, at the same
    concentration, and from a pack of the student's own. `cooked` says that a soap is boiled.
    """
    workings: list[Working] = []
    bare = _recipe_lines(recipe, cards, workings)
    lye = None
    if recipe.lye is not None:
        plan = replace(recipe.lye, ready_mixed=None, bought=None) if from_solid else recipe.lye
        oils = sum_masses(line.exact for line in bare if line.role is Role.OIL)
        lye = lye_basis(plan, cards, cooked=cooked, any_pack=from_solid, oils=oils)
        bare += _lye_lines(bare, lye, cards)
    whole = sum_masses(line.exact for line in bare)
    lines = tuple(replace(line, share=line.exact / whole) for line in bare)
    for line in lines:
        workings.append(Working(SumRule.SHARE_OF_TOTAL, line.ingredient.name, (Given("part", line.exact.grams, ""),), line.share, "of 1"))
    of_oils = sum((line.share for line in lines if line.role is Role.OIL), Fraction(0))
    return Formula(lines, of_oils, lye, tuple(workings), whole)


def _recipe_lines(recipe: Recipe, cards: Mapping[str, Ingredient], workings: list[Working]) -> list[Line]:
    stated = sum((line.amount.fraction for line in recipe.lines if isinstance(line.amount, Share)), Fraction(0))
    found = []
    for phase in recipe.phases:
        for line in phase.lines:
            card = cards[line.ingredient.key]
            if isinstance(line.amount, Rest):
                share = 1 - stated
                workings.append(Working(SumRule.REST_OF_TOTAL, card.name, (Given("stated", stated, "of 1"),), share, "of 1"))
            else:
                share, working = weight_of(line, card)
                if recipe.amounts_as is not AmountsAs.PERCENT_OF_TOTAL:
                    workings.append(working)
            role = Role.OIL if card.counts_as.is_oil else Role.OTHER
            found.append(Line(card, phase.name.text, role, Mass(share), after_the_cook=phase.after_the_cook, place=line.place))
    return found


def _lye_lines(lines: list[Line], lye: LyeBasis, cards: Mapping[str, Ingredient]) -> list[Line]:
    oils = [(line.ingredient, line.exact) for line in lines if line.role is Role.OIL]
    acids = [(line.ingredient, line.exact) for line in lines if line.ingredient.counts_as is CountsAs.ACID]
    plan, need = lye.plan, need_lye(oils, acids, lye)
    strength = plan.ready_mixed.fraction if plan.ready_mixed else None
    found = [Line(alkali.card, LYE_PHASE, Role.ALKALI, mass, strength=strength, place=plan.place) for alkali, mass in need.alkali]
    # Water that a ready-mixed lye leaves to be added is never poured into the lye.
    beside = BESIDE_PHASE if plan.ready_mixed else LYE_PHASE
    for liquid, mass in need.liquids:
        if mass:
            phase, role = (LATER_PHASE, Role.LATER_LIQUID) if liquid.later else (beside, Role.LYE_WATER)
            found.append(Line(cards[liquid.name.key], phase, role, mass, place=plan.place))
    return found
