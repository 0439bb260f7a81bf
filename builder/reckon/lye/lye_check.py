"""The lye of a column as it will be weighed: superfat, typical and worst both ways, and what makes the range wide.

    superfat s = 1 - (E_b - E_a) / E_f
Worst case: saponification values and purities at the ends of their ranges, and each weighing as far off as its scale may be. In cold
process the low end counts waxes as taking no lye: their saponification value is found only after hours of boiling.

Decided: lye concentration is by weight as weighed. Why: it is what the two scale readings say; for the 50 % ceiling it errs to the safe
side.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from builder.model.lye.lye_result import AlkaliPart, Cause, LyeResult
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.quantity import NO_MASS, Mass, sum_masses
from builder.reckon.lye.equivalents import OTHER_END, End, acid_equivalents, fat_equivalents, molar_mass, water_in
from builder.reckon.lye.lye import Alkali, LyeBasis

SCALES = ""
# Other weights than those of a column: as asked for, or rounded so that the superfat is raised or lowered the most.
_Way = Literal["exact", "raised", "lowered"]
_ROUNDED: tuple[_Way, ...] = ("raised", "lowered")


def can_be_checked(weighed: Sequence[Weighed]) -> bool:
    """Tell whether there is a lye to check: all weights are above nothing, and the scales leave some fat that is there from the start."""
    certain = (_off(w, "low") for w in weighed if w.line.role is Role.OIL and _is_in_the_pot(w) and not _is_wax(w))
    return all(w.mass > NO_MASS for w in weighed) and any(certain)


def rounding_may_move(weighed: Sequence[Weighed], basis: LyeBasis) -> Fraction:
    """Return the most by which rounding may move the superfat of a batch of this size."""
    return _sums(weighed, basis).most_by_rounding()


def check_lye(weighed: Iterable[Weighed], basis: LyeBasis) -> LyeResult:
    """Return the lye of one column, of which `can_be_checked` holds."""
    parts = tuple(weighed)
    sums = _sums(parts, basis)
    typical = sums.superfat()
    solid, liquid, water = sums.solid_liquid_water()
    late = tuple(dict.fromkeys(w.line.name for w in parts if not _is_in_the_pot(w) and _takes_lye(w)))
    waxes = any(_is_wax(w) for w in parts)
    return LyeResult(
        superfat=typical,
        asked=sums.superfat(weighed="exact"),
        rounding_may_move=sums.most_by_rounding(),
        lowest=sums.superfat("low"),
        highest=sums.superfat("high"),
        before_the_cook=sums.superfat(late=False) if late else None,
        before_the_cook_lowest=sums.superfat("low", late=False) if late else None,
        late=late,
        without_waxes=sums.superfat(waxes=False) if waxes else None,
        lowest_without_waxes=sums.superfat("low", waxes=False),
        concentration=solid / (solid + liquid),
        in_water=solid / (solid + water),
        water_beside=sum_masses(w.mass * water_in(w.line.ingredient) for w in parts if w.line.role in (Role.OTHER, Role.LATER_LIQUID)),
        water_to_lye=liquid / solid,
        water_of_oils=liquid / sum_masses(w.mass for w in parts if w.line.role is Role.OIL),
        purities=tuple(alkali.purity for alkali in basis.alkalis),
        causes=_causes(sums, typical),
        by_scales=typical - sums.superfat("low", only=SCALES),
        parts=sums.parts(),
    )


def _sums(weighed: Sequence[Weighed], basis: LyeBasis) -> "_Sums":
    return _Sums(weighed, {alkali.card.name: alkali for alkali in basis.alkalis}, basis.koh, basis.cooked)


def _causes(sums: "_Sums", typical: Fraction) -> tuple[Cause, ...]:
    """Return what each ingredient's own range takes from the superfat in the worst case, the most first."""
    names = dict.fromkeys(w.line.name for w in sums.weighed)
    causes = [Cause(name, typical - sums.superfat("low", only=name)) for name in names]
    return tuple(sorted((cause for cause in causes if cause.takes > 0), key=lambda cause: (-cause.takes, cause.ingredient)))


def _is_wax(weighed: Weighed) -> bool:
    return weighed.line.ingredient.counts_as is CountsAs.WAX


def _is_in_the_pot(weighed: Weighed) -> bool:
    """Tell whether it is there while the soap cooks."""
    return not weighed.line.after_the_cook


def _takes_lye(weighed: Weighed) -> bool:
    return weighed.line.role is Role.OIL or weighed.line.ingredient.counts_as is CountsAs.ACID


@dataclass(frozen=True)
class _Sums:
    """The equivalents of one column, with every figure at one end of its range, or only those of one ingredient or of the scales."""

    weighed: Sequence[Weighed]
    alkalis: Mapping[str, Alkali]
    koh: Fraction
    cooked: bool

    def superfat(
        self, end: End = "typical", *, late: bool = True, waxes: bool = True, only: str | None = None, weighed: _Way | None = None
    ) -> Fraction:
        """Return the superfat; `low` is the case with the most alkali for the least fat.

        `late` and `waxes` say which of those count. `only` names the one ingredient whose figures go to the end; the empty name means the
        scales alone. `weighed` takes other weights than those of the column.
        """
        fat = acid = alkali = Fraction(0)
        for w in self.weighed:
            card, role = w.line.ingredient, w.line.role
            figures: End = end if only in (None, w.line.name) else "typical"
            scale: End = end if only in (None, SCALES) else "typical"
            if role is Role.ALKALI:
                mass = _rounded(w, weighed) if weighed else _off(w, OTHER_END[scale])
                alkali += mass.grams * self._strength(w, OTHER_END[figures]) / molar_mass(card)
            elif late or _is_in_the_pot(w):
                mass = _rounded(w, weighed) if weighed else _off(w, scale)
                if role is Role.OIL:
                    reacts = waxes and (self.cooked or figures != "low")
                    fat += fat_equivalents(mass, card, self.koh, figures) if reacts or not _is_wax(w) else 0
                elif card.counts_as is CountsAs.ACID:
                    acid += acid_equivalents(mass, card, figures)
        return 1 - (alkali - acid) / fat

    def most_by_rounding(self) -> Fraction:
        asked = self.superfat(weighed="exact")
        return max(abs(self.superfat(weighed=way) - asked) for way in _ROUNDED)

    def parts(self) -> tuple[AlkaliPart, ...]:
        """Return the alkalis with their shares of the equivalents and of the weight."""
        found = [
            (w, w.mass.grams * self._strength(w, "typical") / molar_mass(w.line.ingredient))
            for w in self.weighed
            if w.line.role is Role.ALKALI
        ]
        weight, all_of_them = sum_masses(w.mass for w, _ in found), sum((equivalents for _, equivalents in found), Fraction(0))
        return tuple(AlkaliPart(w.line.name, w.line.ingredient, equivalents / all_of_them, w.mass / weight) for w, equivalents in found)

    def _strength(self, weighed: Weighed, end: End) -> Fraction:
        """Return the hydroxide by weight. A solution that the studio mixes is as uncertain as the solid that it is mixed from."""
        purity = self.alkalis[weighed.line.ingredient.name].purity
        at = {"low": purity.low, "typical": purity.typical, "high": purity.high}[end]
        return at if weighed.line.strength is None else weighed.line.strength * at / purity.typical

    def solid_liquid_water(self) -> tuple[Mass, Mass, Mass]:
        """Return the alkali as solid of its purity, the liquid of the lye by weight, and the water in that liquid."""
        solid = liquid = water = NO_MASS
        for w in self.weighed:
            if w.line.role is Role.ALKALI:
                part = w.mass
                if w.line.strength is not None:
                    part = w.mass * w.line.strength / self.alkalis[w.line.ingredient.name].purity.typical
                solid, liquid, water = solid + part, liquid + (w.mass - part), water + (w.mass - part)
            elif w.line.role is Role.LYE_WATER:
                liquid, water = liquid + w.mass, water + w.mass * water_in(w.line.ingredient)
        return solid, liquid, water


def _off(weighed: Weighed, end: End) -> Mass:
    """Return a weighing that is as far off towards one end as its scale may be; nothing weighs less than nothing."""
    if end == "typical":
        return weighed.mass
    off = weighed.scale.off
    return weighed.mass + off if end == "high" else max(weighed.mass - off, NO_MASS)


def _rounded(weighed: Weighed, way: _Way) -> Mass:
    """Return the exact amount, or as much more or less as rounding may make of one like it: lye loses up to a division, gains nothing."""
    exact, division = weighed.line.exact, weighed.scale.division
    if way == "exact":
        return exact
    if weighed.line.role is Role.ALKALI:
        return max(exact - division, NO_MASS) if way == "raised" else exact
    return exact + division / 2 if way == "raised" else max(exact - division / 2, NO_MASS)
