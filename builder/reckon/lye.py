"""Lye: the equivalents of fats, acids and alkali, how much alkali and water a soap needs, and its superfat as weighed.

Definitions: saponification value SV in mg KOH per g of fat (ISO 3657); equivalents in mol,
    fat E_f = sum(m * SV / 1000) / M(KOH);  acid E_a = sum(m * purity * protons / M);  alkali E_b = sum(m * purity / M);
    superfat s = 1 - (E_b - E_a) / E_f.
A mixed lye is divided by share of equivalents unless the recipe says by weight.
Lye concentration is lye / (lye + water) by weight as weighed.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from builder.model.batch_sheet import Given, LyeResult, Purity, Role, Weighed, Working
from builder.model.figure import Figure, Known
from builder.model.ingredient import CountsAs, Ingredient
from builder.model.quantity import NO_MASS, Mass, sum_masses
from builder.model.recipe import AlkaliShare, DividedBy, LyePlan, WaterBy

End = Literal["low", "typical", "high"]


@dataclass(frozen=True)
class Alkali:
    """One alkali of a lye, looked up: its card, its share, its purity."""

    card: Ingredient
    share: Fraction
    purity: Purity


@dataclass(frozen=True)
class LyeNeed:
    """What a batch needs: the alkali as it is weighed (solid, or solution where it comes ready-mixed), and the water beside it."""

    alkali: tuple[tuple[Alkali, Mass], ...]
    water: Mass
    workings: tuple[Working, ...]


def _figure(card: Ingredient, name: str) -> Figure:
    figure = card.figure(name)
    assert figure is not None, f"{card.name} has no {name}: a check should have held it back"
    return figure


def molar_mass(card: Ingredient) -> Fraction:
    """Give the molar mass of an alkali or acid in g/mol."""
    return _figure(card, "molar mass").typical


def purity_of(card: Ingredient, stated: AlkaliShare) -> Purity:
    """Give the hydroxide by weight: the recipe's own figure, or the card's with its range.

    A figure of the stock is an assumption, and is printed as one; a certificate or a measurement on the studio's own card is not.
    """
    if stated.purity is not None:
        fraction = stated.purity.fraction
        return Purity(card.name, fraction, fraction, fraction, "", assumed=False)
    figure = _figure(card, "purity")
    assumed = figure.known not in (Known.SUPPLIER, Known.MEASURED)
    low, high = figure.low / 100, min(figure.highest / 100, Fraction(1))
    return Purity(card.name, low, (low + high) / 2, high, f"{figure.source.title}, {figure.at}", assumed)


def alkalis_of(plan: LyePlan, cards: Mapping[str, Ingredient]) -> tuple[Alkali, ...]:
    """Look up the alkalis of a plan; `cards` is keyed by folded name."""
    found = []
    for share in plan.alkalis:
        card = cards[share.name.key]
        found.append(Alkali(card, share.share, purity_of(card, share)))
    return tuple(found)


def _at(figure: Figure, end: End) -> Fraction:
    return {"low": figure.low, "typical": figure.typical, "high": figure.highest}[end]


def fat_equivalents(mass: Mass, card: Ingredient, koh: Fraction, end: End = "typical") -> Fraction:
    """Give the mol of alkali that a fat, wax or fatty acid takes up. `koh` is the molar mass of KOH in g/mol."""
    return mass.grams * _at(_figure(card, "saponification"), end) / 1000 / koh


def acid_equivalents(mass: Mass, card: Ingredient, end: End = "typical") -> Fraction:
    """Give the mol of alkali that an acid takes up: mass by assay, times its protons."""
    assay = card.figure("purity")
    strength = min(_at(assay, end) / 100, Fraction(1)) if assay else Fraction(1)
    return mass.grams * strength * _figure(card, "protons").typical / molar_mass(card)


def need_lye(
    oils: Sequence[tuple[Ingredient, Mass]],
    acids: Sequence[tuple[Ingredient, Mass]],
    plan: LyePlan,
    alkalis: Sequence[Alkali],
    koh: Fraction,
) -> LyeNeed:
    """Give the alkali and water for these oils and acids. Errors: none that the checks have not held back."""
    workings: list[Working] = []
    total_fat = Fraction(0)
    for card, mass in oils:
        figure = _figure(card, "saponification")
        equivalents = fat_equivalents(mass, card, koh)
        total_fat += equivalents
        given = (
            Given("weight", mass.grams, "g"),
            Given("saponification value", figure.typical, "mg/g", f"{figure.source.title}, {figure.at}"),
            Given("molar mass of potassium hydroxide", koh, "g/mol"),
        )
        workings.append(Working("fat equivalents", card.name, given, equivalents, "mol"))
    total_acid = Fraction(0)
    for card, mass in acids:
        equivalents = acid_equivalents(mass, card)
        total_acid += equivalents
        acid_given = (
            Given("weight", mass.grams, "g"),
            Given("protons", _figure(card, "protons").typical, ""),
            Given("molar mass", molar_mass(card), "g/mol"),
        )
        workings.append(Working("acid equivalents", card.name, acid_given, equivalents, "mol"))
    wanted = total_fat * (1 - plan.superfat.fraction) + total_acid
    workings.append(
        Working(
            "alkali equivalents needed",
            "the lye",
            (Given("fat", total_fat, "mol"), Given("superfat", plan.superfat.fraction, "of 1"), Given("acid", total_acid, "mol")),
            wanted,
            "mol",
        )
    )
    solids = _divide(wanted, alkalis, plan.divided_by)
    for alkali, solid in zip(alkalis, solids, strict=True):
        alkali_given = (
            Given("alkali", solid.grams * alkali.purity.typical / molar_mass(alkali.card), "mol"),
            Given("molar mass", molar_mass(alkali.card), "g/mol"),
            Given("purity", alkali.purity.typical, "of 1", alkali.purity.source),
        )
        workings.append(Working("alkali weight", alkali.card.name, alkali_given, solid.grams, "g"))
    water, working = _water(sum_masses(solids), sum_masses(mass for _, mass in oils), plan)
    workings.append(working)
    if plan.ready_mixed is None:
        return LyeNeed(tuple(zip(alkalis, solids, strict=True)), water, tuple(workings))
    return _ready_mixed(plan.ready_mixed.fraction, alkalis, solids, water, workings)


def _divide(wanted: Fraction, alkalis: Sequence[Alkali], by: DividedBy) -> list[Mass]:
    if by is DividedBy.EQUIVALENTS:
        return [Mass(wanted * alkali.share * molar_mass(alkali.card) / alkali.purity.typical) for alkali in alkalis]
    one_gram = sum((a.share * a.purity.typical / molar_mass(a.card) for a in alkalis), Fraction(0))
    return [Mass(wanted / one_gram * alkali.share) for alkali in alkalis]


def _water(lye: Mass, oils: Mass, plan: LyePlan) -> tuple[Mass, Working]:
    value = plan.water.value
    match plan.water.by:
        case WaterBy.CONCENTRATION:
            water, rule, of = lye * ((1 - value) / value), "water by concentration", Given("lye", lye.grams, "g")
        case WaterBy.RATIO:
            water, rule, of = lye * value, "water by ratio", Given("lye", lye.grams, "g")
        case WaterBy.PERCENT_OF_OILS:
            water, rule, of = oils * value, "water by percent of oils", Given("oils", oils.grams, "g")
    return water, Working(rule, plan.liquid.text, (of, Given(str(plan.water.by), value, "")), water.grams, "g")


def _ready_mixed(strength: Fraction, alkalis: Sequence[Alkali], solids: Sequence[Mass], water: Mass, workings: list[Working]) -> LyeNeed:
    solutions = []
    for alkali, solid in zip(alkalis, solids, strict=True):
        solution = solid * alkali.purity.typical / strength
        brings = solution - solid
        water -= brings
        given = (Given("hydroxide", (solid * alkali.purity.typical).grams, "g"), Given("strength", strength, "of 1"))
        workings.append(Working("water in ready-mixed lye", alkali.card.name, given, brings.grams, "g"))
        solutions.append((alkali, solution))
    return LyeNeed(tuple(solutions), water, tuple(workings))


def check_lye(weighed: Iterable[Weighed], alkalis: Sequence[Alkali], koh: Fraction) -> LyeResult:
    """Give the superfat of a column as it will be weighed, typical and worst both ways.

    Worst case: saponification values and purities at the ends of their ranges, and half a division of the scale on each weighing.
    """
    parts = list(weighed)
    by_name = {alkali.card.name: alkali for alkali in alkalis}
    sums = _Sums(parts, by_name, koh)
    oils = sum_masses(w.mass for w in parts if w.line.role is Role.OIL)
    solid, water = sums.solid_and_water()
    late = any(w.line.after_the_cook and w.line.role is Role.OIL for w in parts)
    waxes = any(w.line.ingredient.counts_as is CountsAs.WAX for w in parts)
    return LyeResult(
        superfat=sums.superfat("typical"),
        lowest=sums.superfat("low"),
        highest=sums.superfat("high"),
        before_the_cook=sums.superfat("typical", late=False) if late else None,
        without_waxes=sums.superfat("typical", waxes=False) if waxes else None,
        concentration=solid / (solid + water),
        water_to_lye=water / solid,
        water_of_oils=water / oils,
        purities=tuple(alkali.purity for alkali in alkalis),
    )


@dataclass(frozen=True)
class _Sums:
    """The equivalents of one column, with every figure at one end of its range."""

    weighed: Sequence[Weighed]
    alkalis: Mapping[str, Alkali]
    koh: Fraction

    def superfat(self, end: End, *, late: bool = True, waxes: bool = True) -> Fraction:
        """Give the superfat; `low` is the case with the most alkali for the least fat. `late` and `waxes` say which fats count."""
        other: End = {"low": "high", "high": "low", "typical": "typical"}[end]  # type: ignore[assignment]
        fat = acid = alkali = Fraction(0)
        for w in self.weighed:
            card, role = w.line.ingredient, w.line.role
            if role is Role.OIL:
                if (late or not w.line.after_the_cook) and (waxes or card.counts_as is not CountsAs.WAX):
                    fat += fat_equivalents(_off(w, end), card, self.koh, end)
            elif role is Role.ALKALI:
                alkali += _off(w, other).grams * self._strength(w, other) / molar_mass(card)
            elif card.counts_as is CountsAs.ACID:
                acid += acid_equivalents(_off(w, end), card, end)
        return 1 - (alkali - acid) / fat

    def _strength(self, weighed: Weighed, end: End) -> Fraction:
        if weighed.line.strength is not None:
            return weighed.line.strength
        purity = self.alkalis[weighed.line.ingredient.name].purity
        return {"low": purity.low, "typical": purity.typical, "high": purity.high}[end]

    def solid_and_water(self) -> tuple[Mass, Mass]:
        """Give the alkali as solid of its purity, and all the water of the lye, also that of a ready-mixed solution."""
        solid = water = NO_MASS
        for w in self.weighed:
            if w.line.role is Role.ALKALI:
                part = w.mass
                if w.line.strength is not None:
                    part = w.mass * w.line.strength / self.alkalis[w.line.ingredient.name].purity.typical
                solid, water = solid + part, water + (w.mass - part)
            elif w.line.role is Role.LYE_WATER:
                water += w.mass
        return solid, water


def _off(weighed: Weighed, end: End) -> Mass:
    """Give a weighing that is half a division off towards one end."""
    half = weighed.scale.division / 2
    return {"low": weighed.mass - half, "typical": weighed.mass, "high": weighed.mass + half}[end]
