"""The sum of a lye line by line, on the batch that is made: what it needs, then the check of what is weighed.

A person can redo it with a pocket calculator: weight by saponification value gives equivalents, equivalents give alkali, and what is
weighed gives the superfat.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from builder.model.recipe.column import Column, Line, Role, Weighed
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.working import Given, SumRule, Working
from builder.reckon.lye.equivalents import molar_mass
from builder.reckon.lye.lye import LyeBasis, acid_working, fat_working, need_lye
from builder.words.say import message


def need_workings(lines: Sequence[Line], basis: LyeBasis) -> tuple[Working, ...]:
    """Show what the exact amounts of a batch need."""
    oils = [(line.ingredient, line.exact) for line in lines if line.role is Role.OIL]
    acids = [(line.ingredient, line.exact) for line in lines if line.role is Role.OTHER and line.ingredient.counts_as is CountsAs.ACID]
    return need_lye(oils, acids, basis).workings


def check_workings(column: Column, basis: LyeBasis) -> tuple[Working, ...]:
    """Show the check of one column: the equivalents of what is weighed, and the superfat that they leave."""
    assert column.lye is not None
    of = message("weights in g") if column.unit == "g" else message("weights in oz")
    fats = [_weighed(fat_working(w.line.ingredient, w.mass, basis.koh)) for w in column.weighed if w.line.role is Role.OIL]
    acids = [_weighed(acid_working(w.line.ingredient, w.mass)) for w in column.weighed if _is_acid(w)]
    alkalis = [_alkali(w, basis) for w in column.weighed if w.line.role is Role.ALKALI]
    totals = [
        Given(name, sum((w.result for w in found), Fraction(0)), "mol")
        for name, found in ((message("fat"), fats), (message("acid"), acids), (message("alkali"), alkalis))
    ]
    lye = column.lye
    return (
        *fats,
        *acids,
        *alkalis,
        Working(SumRule.SUPERFAT_AS_WEIGHED, of, tuple(totals), lye.superfat, "of 1"),
        Working(SumRule.SUPERFAT_LOWEST, of, (), lye.lowest, "of 1"),
        Working(SumRule.SUPERFAT_HIGHEST, of, (), lye.highest, "of 1"),
    )


def _weighed(working: Working) -> Working:
    return replace(working, rule=SumRule(f"{working.rule} as weighed"))


def _is_acid(weighed: Weighed) -> bool:
    return weighed.line.ingredient.counts_as is CountsAs.ACID


def _alkali(weighed: Weighed, basis: LyeBasis) -> Working:
    """Show the equivalents of one alkali, by its purity or by the strength of its solution."""
    card, strength = weighed.line.ingredient, weighed.line.strength
    purity = next(alkali.purity for alkali in basis.alkalis if alkali.card.name == card.name)
    by = Given("purity", purity.typical, "of 1", purity.source) if strength is None else Given("strength", strength, "of 1")
    given = (Given("weight", weighed.mass.grams, "g"), by, Given("molar mass", molar_mass(card), "g/mol"))
    return Working(SumRule.ALKALI_EQUIVALENTS_AS_WEIGHED, weighed.line.name, given, weighed.mass.grams * by.value / molar_mass(card), "mol")
