"""Whether what stands in place of the water of a lye dissolves it, leaves it for the fat, and comes to the whole."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.recipe.shares_not_whole import of_whole
from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.quantity import sum_masses
from builder.model.recipe.recipe import LyeLiquid, LyePlan, WaterBy
from builder.model.studio import Studio
from builder.words.percent import percent
from builder.words.plain_number import plain_number

MOSTLY, MOST_TAKEN = "least water of an acid in which lye dissolves", "most of the lye that sour liquids may take"


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("not-a-liquid", STOP, "Lye is to be dissolved in something that is no watery liquid."),
    FindingKind("lye-liquid-too-sour", STOP, "The liquid of the lye is so sour that it would take up too much of the lye."),
    FindingKind("lye-liquids-not-whole", STOP, "The liquids of the lye do not make 100 %."),
)
def find_unfit_lye_liquids(studio: Studio) -> Iterator[Finding]:
    """Look at the liquids of each lye."""
    for recipe in studio.recipes.values():
        if recipe.lye:
            yield from _not_watery(recipe.lye, studio)
            yield from _too_sour(recipe.lye, studio)
            yield from _not_whole(recipe.lye)


def _not_watery(plan: LyePlan, studio: Studio) -> Iterator[Finding]:
    for liquid in plan.liquids:
        card = studio.ingredient(liquid.name)
        if card and not _is_watery(card, studio):
            yield stop(
                "not-a-liquid",
                liquid.name.place,
                f"{card.name} is no watery liquid, so lye does not dissolve in it.",
                "Write water, or a liquid whose card counts as liquid (a milk, a juice, a flower water), or vinegar.",
            )


def _is_watery(card: Ingredient, studio: Studio) -> bool:
    """Tell whether lye can dissolve in it: a liquid, or a solution of an acid that is mostly water."""
    water = card.figure("water content")
    sour = card.counts_as is CountsAs.ACID and water is not None and water.typical >= studio.constants[MOSTLY].typical
    return sour or card.counts_as.is_watery


def _too_sour(plan: LyePlan, studio: Studio) -> Iterator[Finding]:
    """See that acids in place of water leave most of the lye for the fat."""
    sour = [(liquid, card) for liquid in plan.liquids if (card := studio.ingredient(liquid.name)) and card.counts_as is CountsAs.ACID]
    taken = sum((_acid_in(liquid, card) for liquid, card in sour), Fraction(0)) * _liquid_to_a_mol(plan, studio)
    most = studio.constants[MOST_TAKEN].typical
    if taken * 100 > most:
        yield stop(
            "lye-liquid-too-sour",
            sour[0][0].name.place,
            f"So much {sour[0][1].name.lower()} would take up {percent(taken, 2)} of the lye, "
            "and what is left for the fat could not be relied on.",
            f"Put water in place of most of it; sour liquids may take at most {plain_number(most)} % of the lye.",
        )


def _acid_in(liquid: LyeLiquid, card: Ingredient) -> Fraction:
    """Return the mol of protons that a liquid brings for each gram of all liquid; None where its card lacks a figure: a finding."""
    assay, protons, molar = (card.figure(name) for name in ("purity", "protons", "molar mass"))
    if not (assay and protons and molar):
        return Fraction(0)
    return assay.highest / 100 * protons.typical / molar.typical * liquid.share


def _liquid_to_a_mol(plan: LyePlan, studio: Studio) -> Fraction:
    """Return the grams of liquid for one mol of alkali, less the water that ready-mixed lye brings: the most of any alkali of the lye."""
    water, found = _water_to_lye(plan), [Fraction(0)]
    for alkali in plan.alkalis:
        card = studio.ingredient(alkali.name)
        molar, purity = (card.figure("molar mass"), card.figure("purity")) if card else (None, None)
        pure = Fraction(1) if plan.bought else alkali.purity.low if alkali.purity else purity.low / 100 if purity else None
        if molar and pure:
            brought = pure / plan.ready_mixed.fraction - 1 if plan.ready_mixed else 0
            found.append(molar.typical / pure * (water - brought))
    return max(found)


def _water_to_lye(plan: LyePlan) -> Fraction:
    """Return the liquid for each part of lye; where it is stated by the oils it does not grow with the lye."""
    match plan.water.by:
        case WaterBy.CONCENTRATION if plan.water.value:
            return (1 - plan.water.value) / plan.water.value
        case WaterBy.RATIO:
            return plan.water.value
        case WaterBy.WEIGHT if plan.superfat is None:
            return plan.water.value / sum_masses(alkali.weighs for alkali in plan.alkalis if alkali.weighs).grams
        case _:
            return Fraction(0)


def _not_whole(plan: LyePlan) -> Iterator[Finding]:
    in_lye = sum((liquid.share for liquid in plan.liquids if not liquid.later), Fraction(0))
    later = sum((liquid.share for liquid in plan.liquids if liquid.later), Fraction(0))
    if in_lye != 1:
        yield stop(
            "lye-liquids-not-whole",
            plan.at("liquid"),
            f"The liquids of the lye come to {of_whole(in_lye)}.",
            "Correct their shares under `liquid:`. What goes in later stands under `later:` and is counted apart.",
        )
    if later >= 1:
        yield stop(
            "lye-liquids-not-whole",
            plan.at("later"),
            "All of the water goes in later, so none is left for the lye to dissolve in.",
            "Lower the shares under `later:`.",
        )
