"""Lye: how much alkali and water a soap needs, for a superfat that the recipe asks for.

    alkali E_b = E_f * (1 - superfat) + E_a
Acid in a liquid that takes the place of water is counted among E_a; how much of the liquid there is depends on the lye in turn.
A mixed lye is divided by share of equivalents unless the recipe says by weight as weighed. Water is stated as lye concentration,
lye / (lye + water) by weight as weighed, as water : lye, as a percentage of the oils, or as a weight. A recipe may state the weight of its
alkali instead of a superfat: it goes with the oils of the recipe as written, and the superfat is what the check then finds.

Decided: purity without a statement is the middle of the card's range, printed as an assumption, the range used for the worst case. Why:
never a silent 100 %.

Decided: at home the purity of the library's card counts, whole: figure and range, whatever recipe or own card certify. Why: the student's
pack is another one; a figure of one pack with the range of others would be neither.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.model.lye.lye_result import Purity
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.quantity import NO_MASS, Mass, sum_masses
from builder.model.recipe.recipe import AlkaliShare, DividedBy, LyeLiquid, LyePlan, StatedPurity, WaterBy
from builder.model.recipe.working import Given, SumRule, Working
from builder.reckon.lye.equivalents import acid_equivalents, fat_equivalents, figure_of, molar_mass
from builder.words.fold import fold

KOH = "potassium hydroxide"


@dataclass(frozen=True)
class Alkali:
    """One alkali of a lye, looked up: its card, its share, its purity, and what it weighs where the recipe says so."""

    card: Ingredient
    share: Fraction
    purity: Purity
    weighs: Mass | None = None


@dataclass(frozen=True)
class LyeBasis:
    """What the sums of a lye rest on: its plan, its alkalis, and the molar mass of KOH in g/mol, in which saponification is stated.

    `sour` are the cards of those of its liquids that count as acids, by folded name. `cooked` says that the soap is boiled, so that waxes
    take their lye too. `oils` is what the oils of the recipe as written weigh, with which stated weights of alkali and water go.
    """

    plan: LyePlan
    alkalis: tuple[Alkali, ...]
    koh: Fraction
    sour: Mapping[str, Ingredient]
    cooked: bool = False
    oils: Mass = NO_MASS


@dataclass(frozen=True)
class LyeNeed:
    """What a batch needs: the alkali as it is weighed (solid, or solution where it comes ready-mixed), and the liquids beside it."""

    alkali: tuple[tuple[Alkali, Mass], ...]
    liquids: tuple[tuple[LyeLiquid, Mass], ...]
    workings: tuple[Working, ...]


def purity_of(card: Ingredient, stated: AlkaliShare, *, any_pack: bool = False) -> Purity:
    """Return the hydroxide by weight: the recipe's own figure, or the card's with its range.

    A figure of the library is an assumption, and is printed as one; a certificate or a measurement on the studio's own card is not.
    `any_pack`: others buy the pack, so that the range of what is sold counts, and no certificate of the studio's; a pack such as the
    studio's own may be bought too, and widens the range where it lies outside.
    """
    published = card.figure_of_any_pack("purity") if any_pack else card.figure("purity")
    if stated.purity is not None and (published is None or not any_pack):
        purity = stated.purity
        return Purity(card.name, purity.low, purity.typical, purity.high, "", assumed=False)
    figure = published or figure_of(card, "purity")
    assumed = figure.known not in (Known.SUPPLIER, Known.MEASURED)
    low, high = figure.low / 100, min(figure.highest / 100, Fraction(1))
    typical = (low + high) / 2
    if stated.purity is not None:
        low, high = min(low, stated.purity.low), max(high, stated.purity.high)
    return Purity(card.name, low, typical, high, f"{figure.source.title}, {figure.at}", assumed)


def _of_bottle(card: Ingredient, bought: StatedPurity) -> Purity:
    """Return the range of a solution that is bought, around the strength that it is counted for. No solid has a part in it."""
    low, high = bought.low / bought.typical, bought.high / bought.typical
    return Purity(card.name, low, Fraction(1), high, "", assumed=False, strength=bought.typical)


def lye_basis(
    plan: LyePlan, cards: Mapping[str, Ingredient], *, cooked: bool = False, any_pack: bool = False, oils: Mass = NO_MASS
) -> LyeBasis:
    """Look up the alkalis of a plan; `cards` is keyed by folded name.

    `cooked` and `oils` are those of a LyeBasis, `any_pack` says that others buy the alkali (see `purity_of`).
    """
    found = []
    for share in plan.alkalis:
        card = cards[share.name.key]
        purity = _of_bottle(card, plan.bought) if plan.bought else purity_of(card, share, any_pack=any_pack)
        found.append(Alkali(card, share.share, purity, share.weighs))
    liquids = {liquid.name.key: cards[liquid.name.key] for liquid in plan.liquids}
    sour = {key: card for key, card in liquids.items() if card.counts_as is CountsAs.ACID}
    return LyeBasis(plan, tuple(found), molar_mass(cards[fold(KOH)]), sour, cooked, oils)


def need_lye(
    oils: Sequence[tuple[Ingredient, Mass]],
    acids: Sequence[tuple[Ingredient, Mass]],
    basis: LyeBasis,
) -> LyeNeed:
    """Return the alkali and water for these oils and acids. Errors: none that the checks have not held back."""
    weight = sum_masses(mass for _, mass in oils)
    fats = [fat_working(card, mass, basis.koh) for card, mass in oils]
    sour = [acid_working(card, mass) for card, mass in acids]
    if basis.plan.superfat is None:
        stated = _as_stated(weight, basis)
        return LyeNeed(stated.alkali, stated.liquids, (*fats, *sour, *stated.workings))
    fat, acid, free = _sum(fats), _sum(sour), basis.plan.superfat.fraction
    wanted = _with_sour_liquids(fat * (1 - free) + acid, weight, basis)
    mixed = _mix(wanted, weight, basis)
    of_liquids = [acid_working(card, mass) for card, mass in _sour_liquids(mixed, basis)]
    given = (Given("fat", fat, "mol"), Given("superfat", free, "of 1"), Given("acid", acid + _sum(of_liquids), "mol"))
    needed = Working(SumRule.ALKALI_EQUIVALENTS_NEEDED, "the lye", given, wanted, "mol")
    return LyeNeed(mixed.alkali, mixed.liquids, (*fats, *sour, *of_liquids, needed, *mixed.workings))


def _sum(workings: Sequence[Working]) -> Fraction:
    return sum((working.result for working in workings), Fraction(0))


def _with_sour_liquids(wanted: Fraction, oils: Mass, basis: LyeBasis) -> Fraction:
    """Return the mol of alkali needed once the liquids of the lye have taken theirs.

    How much liquid there is follows from the lye in a straight line, so what it takes is found from two points of it. A check has made
    sure that it takes less than there is.
    """

    def taken(alkali: Fraction) -> Fraction:
        return sum((acid_equivalents(mass, card) for card, mass in _sour_liquids(_mix(alkali, oils, basis), basis)), Fraction(0))

    if not basis.sour:
        return wanted
    none, one = taken(Fraction(0)), taken(Fraction(1))
    return (wanted + none) / (1 - (one - none))


def _sour_liquids(need: LyeNeed, basis: LyeBasis) -> list[tuple[Ingredient, Mass]]:
    return [(basis.sour[liquid.name.key], mass) for liquid, mass in need.liquids if liquid.name.key in basis.sour]


def _as_stated(oils: Mass, basis: LyeBasis) -> LyeNeed:
    """Return the alkali and the liquids that the recipe states by weight, for so much oil."""
    workings, solids = [], list[tuple[Alkali, Mass]]()
    for alkali in basis.alkalis:
        assert alkali.weighs is not None
        solid = alkali.weighs * (oils / basis.oils)
        given = (Given("stated", alkali.weighs.grams, "g"), Given("with oils", basis.oils.grams, "g"), Given("oils", oils.grams, "g"))
        workings.append(Working(SumRule.WEIGHT_WITH_THE_OILS, alkali.card.name, given, solid.grams, "g"))
        solids.append((alkali, solid))
    water, working = _water(solids, oils, basis)
    return LyeNeed(tuple(solids), _liquids(basis.plan, water, NO_MASS), (*workings, working))


def _mix(wanted: Fraction, oils: Mass, basis: LyeBasis) -> LyeNeed:
    """Return the alkali as it is weighed and the liquids for so many mol of it."""
    plan, workings = basis.plan, []
    weighed, brought = _divide(wanted, basis.alkalis, plan.divided_by), NO_MASS
    for alkali, solid in weighed:
        given = (
            Given("alkali", solid.grams * alkali.purity.typical / molar_mass(alkali.card), "mol"),
            Given("molar mass", molar_mass(alkali.card), "g/mol"),
            Given("purity", alkali.purity.typical, "of 1", alkali.purity.source),
        )
        workings.append(Working(SumRule.ALKALI_WEIGHT, alkali.card.name, given, solid.grams, "g"))
    water, working = _water(weighed, oils, basis)
    workings.append(working)
    if plan.ready_mixed is not None:
        weighed, brought = _ready_mixed(plan.ready_mixed.fraction, weighed, workings)
    return LyeNeed(tuple(weighed), _liquids(plan, water, brought), tuple(workings))


def fat_working(card: Ingredient, mass: Mass, koh: Fraction) -> Working:
    """Show the equivalents of one fat."""
    figure = figure_of(card, "saponification")
    given = (
        Given("weight", mass.grams, "g"),
        Given("saponification value", figure.typical, "mg/g", f"{figure.source.title}, {figure.at}"),
        Given("molar mass of potassium hydroxide", koh, "g/mol"),
    )
    return Working(SumRule.FAT_EQUIVALENTS, card.name, given, fat_equivalents(mass, card, koh), "mol")


def acid_working(card: Ingredient, mass: Mass) -> Working:
    """Show the equivalents of one acid."""
    assay = figure_of(card, "purity")
    given = (
        Given("weight", mass.grams, "g"),
        Given("assay", assay.typical / 100, "of 1", f"{assay.source.title}, {assay.at}"),
        Given("protons", figure_of(card, "protons").typical, ""),
        Given("molar mass", molar_mass(card), "g/mol"),
    )
    return Working(SumRule.ACID_EQUIVALENTS, card.name, given, acid_equivalents(mass, card), "mol")


def _divide(wanted: Fraction, alkalis: Sequence[Alkali], by: DividedBy) -> list[tuple[Alkali, Mass]]:
    """Return what each alkali weighs as a solid, so that together they bring so many mol."""
    if by is DividedBy.EQUIVALENTS:
        return [(a, Mass(wanted * a.share * molar_mass(a.card) / a.purity.typical)) for a in alkalis]
    if by is DividedBy.HYDROXIDE:
        one_gram = sum((a.share / molar_mass(a.card) for a in alkalis), Fraction(0))
        return [(a, Mass(wanted / one_gram * a.share / a.purity.typical)) for a in alkalis]
    one_gram = sum((a.share * a.purity.typical / molar_mass(a.card) for a in alkalis), Fraction(0))
    return [(a, Mass(wanted / one_gram * a.share)) for a in alkalis]


def _water(solids: Sequence[tuple[Alkali, Mass]], oils: Mass, basis: LyeBasis) -> tuple[Mass, Working]:
    plan, value = basis.plan, basis.plan.water.value
    lye = sum_masses(solid for _, solid in solids)
    match plan.water.by:
        case WaterBy.CONCENTRATION:
            water, rule, of = lye * ((1 - value) / value), SumRule.WATER_BY_CONCENTRATION, Given("lye", lye.grams, "g")
        case WaterBy.RATIO:
            water, rule, of = lye * value, SumRule.WATER_BY_RATIO, Given("lye", lye.grams, "g")
        case WaterBy.WEIGHT:
            water, of = Mass(value) * (oils / basis.oils), Given("with oils", basis.oils.grams, "g")
            given = (Given("stated", value, "g"), of, Given("oils", oils.grams, "g"))
            return water, Working(SumRule.WEIGHT_WITH_THE_OILS, "the liquid of the lye", given, water.grams, "g")
        case _:
            water, rule, of = oils * value, SumRule.WATER_BY_PERCENT_OF_OILS, Given("oils", oils.grams, "g")
    return water, Working(rule, "the liquid of the lye", (of, Given(str(plan.water.by), value, "")), water.grams, "g")


def _ready_mixed(
    strength: Fraction, solids: Sequence[tuple[Alkali, Mass]], workings: list[Working]
) -> tuple[list[tuple[Alkali, Mass]], Mass]:
    """Return the solutions in place of the solids, and the water that they bring."""
    solutions, brought = [], NO_MASS
    for alkali, solid in solids:
        solution = solid * alkali.purity.typical / strength
        given = (Given("hydroxide", (solid * alkali.purity.typical).grams, "g"), Given("strength", strength, "of 1"))
        workings.append(Working(SumRule.WATER_IN_READY_MIXED_LYE, alkali.card.name, given, (solution - solid).grams, "g"))
        solutions.append((alkali, solution))
        brought += solution - solid
    return solutions, brought


def _liquids(plan: LyePlan, water: Mass, brought: Mass) -> tuple[tuple[LyeLiquid, Mass], ...]:
    """Divide the stated water: what goes in later, what the ready-mixed lye brings, and the rest over the liquids of the lye."""
    later = [(liquid, water * liquid.share) for liquid in plan.liquids if liquid.later]
    rest = water - brought - sum_masses(mass for _, mass in later)
    return (*((liquid, rest * liquid.share) for liquid in plan.liquids if not liquid.later), *later)
