"""The lye of a column as it will be weighed: superfat, typical and worst both ways, and what makes the range wide.

    superfat s = 1 - (E_b - E_a) / E_f
Worst case: saponification values and purities at the ends of their ranges, and half a division of the scale on each weighing.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.model.batch_sheet import AlkaliPart, Cause, LyeResult, Role, Weighed
from builder.model.ingredient import CountsAs
from builder.model.quantity import NO_MASS, Mass, sum_masses
from builder.reckon.equivalents import OTHER_END, End, acid_equivalents, fat_equivalents, molar_mass, water_in
from builder.reckon.lye import Alkali, LyeBasis

SCALES = ""


def check_lye(weighed: Iterable[Weighed], basis: LyeBasis) -> LyeResult:
    """Give the lye of one column. Every weighing is more than nothing; a column in which one is not has no lye to check."""
    parts = tuple(weighed)
    sums = _Sums(parts, {alkali.card.name: alkali for alkali in basis.alkalis}, basis.koh)
    typical = sums.superfat()
    solid, liquid, water = sums.solid_liquid_water()
    late = any(w.line.after_the_cook and w.line.role is Role.OIL for w in parts)
    waxes = any(w.line.ingredient.counts_as is CountsAs.WAX for w in parts)
    return LyeResult(
        superfat=typical,
        lowest=sums.superfat("low"),
        highest=sums.superfat("high"),
        before_the_cook=sums.superfat(late=False) if late else None,
        without_waxes=sums.superfat(waxes=False) if waxes else None,
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


def _causes(sums: "_Sums", typical: Fraction) -> tuple[Cause, ...]:
    """Give what each ingredient's own range takes from the superfat in the worst case, the most first."""
    names = dict.fromkeys(w.line.name for w in sums.weighed)
    causes = [Cause(name, typical - sums.superfat("low", only=name)) for name in names]
    return tuple(sorted((cause for cause in causes if cause.takes > 0), key=lambda cause: (-cause.takes, cause.ingredient)))


@dataclass(frozen=True)
class _Sums:
    """The equivalents of one column, with every figure at one end of its range, or only those of one ingredient or of the scales."""

    weighed: Sequence[Weighed]
    alkalis: Mapping[str, Alkali]
    koh: Fraction

    def superfat(self, end: End = "typical", *, late: bool = True, waxes: bool = True, only: str | None = None) -> Fraction:
        """Give the superfat; `low` is the case with the most alkali for the least fat. `late` and `waxes` say which fats count.

        `only` names the one ingredient whose figures go to the end; the empty name means the scales alone.
        """
        fat = acid = alkali = Fraction(0)
        for w in self.weighed:
            card, role = w.line.ingredient, w.line.role
            figures: End = end if only in (None, w.line.name) else "typical"
            scale: End = end if only in (None, SCALES) else "typical"
            if role is Role.OIL:
                if (late or not w.line.after_the_cook) and (waxes or card.counts_as is not CountsAs.WAX):
                    fat += fat_equivalents(_off(w, scale), card, self.koh, figures)
            elif role is Role.ALKALI:
                hydroxide = _off(w, OTHER_END[scale]).grams * self._strength(w, OTHER_END[figures])
                alkali += hydroxide / molar_mass(card)
            elif card.counts_as is CountsAs.ACID:
                acid += acid_equivalents(_off(w, scale), card, figures)
        return 1 - (alkali - acid) / fat

    def parts(self) -> tuple[AlkaliPart, ...]:
        """Give the alkalis with their shares of the equivalents and of the weight."""
        found = [w for w in self.weighed if w.line.role is Role.ALKALI]
        equivalents = [w.mass.grams * self._strength(w, "typical") / molar_mass(w.line.ingredient) for w in found]
        weight, all_equivalents = sum_masses(w.mass for w in found), sum(equivalents, Fraction(0))
        return tuple(AlkaliPart(w.line.name, part / all_equivalents, w.mass / weight) for w, part in zip(found, equivalents, strict=True))

    def _strength(self, weighed: Weighed, end: End) -> Fraction:
        """Give the hydroxide by weight. A solution that the studio mixes is as uncertain as the solid that it is mixed from."""
        purity = self.alkalis[weighed.line.ingredient.name].purity
        at = {"low": purity.low, "typical": purity.typical, "high": purity.high}[end]
        return at if weighed.line.strength is None else weighed.line.strength * at / purity.typical

    def solid_liquid_water(self) -> tuple[Mass, Mass, Mass]:
        """Give the alkali as solid of its purity, the liquid of the lye by weight, and the water in that liquid."""
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
    """Give a weighing that is half a division off towards one end."""
    half = weighed.scale.division / 2
    return {"low": weighed.mass - half, "typical": weighed.mass, "high": weighed.mass + half}[end]
