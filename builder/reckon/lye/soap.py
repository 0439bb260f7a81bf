"""What comes out of a pot of soap: soap of each fat, glycerol, water, what stays fat. In and out weigh the same.

A triglyceride takes three alkali and frees one glycerol: soap = fat + alkali - glycerol. A fatty acid takes one and frees one water.
An acid takes its protons and frees as many waters. The water of a milk, a juice, a solution of acid or a hydrous wool fat joins the rest.
The alkali is used up; the superfat stays as fat, of each fat in proportion, after those that go in after the cook. A wax gives soap and
fatty alcohol, which are counted together as its soap. Free fatty acids within a fat are counted as glyceride, which sets glycerol a little
too high (by 0.1 % of the fat for one per cent of free acid).
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from builder.model.lye.soap_made import SaltOf, SoapMade, SoapOf
from builder.model.recipe.column import Column, Role, Weighed
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.reckon.lye.equivalents import acid_equivalents, fat_equivalents, molar_mass, water_in
from builder.reckon.lye.lye import LyeBasis


def reckon_soap(column: Column, lye: LyeBasis, constants: Mapping[str, Figure]) -> SoapMade:
    """Work out what the column in grams becomes. `constants` holds the molar masses of glycerol and water.

    Errors: none; in a column with too much lye, which a finding stops, what the fats cannot take up stays free.
    """
    glycerol_molar = constants["molar mass of glycerol"].typical
    water_molar = constants["molar mass of water"].typical
    pure = {alkali.card.name: alkali.purity.typical for alkali in lye.alkalis}
    hydroxide, equivalents, rest, water = _alkali(column.weighed, pure)
    per_mol = hydroxide / equivalents
    salts, others = [], []
    for w in column.weighed:
        if w.line.role in (Role.OIL, Role.ALKALI):
            continue
        of_water = w.mass * water_in(w.line.ingredient)
        water += of_water.grams
        dry = w.mass - of_water
        if w.line.ingredient.counts_as is CountsAs.ACID:
            taken = min(acid_equivalents(w.mass, w.line.ingredient), equivalents)
            equivalents -= taken
            water += taken * water_molar
            salts.append(SaltOf(w.line.ingredient, dry + Mass(taken * (per_mol - water_molar)), taken))
        elif dry:
            others.append((w.line.ingredient, dry))
    soaps, glycerol, freed, left = _soaps(column.weighed, equivalents, per_mol, lye.koh, glycerol_molar, water_molar)
    return SoapMade(
        soaps=soaps,
        glycerol=glycerol,
        water=Mass(water + freed),
        salts=tuple(salts),
        rest_of_alkali=rest,
        free_alkali=Mass(left * per_mol),
        others=tuple(others),
        total=column.total,
    )


def _alkali(weighed: Sequence[Weighed], pure: dict[str, Fraction]) -> tuple[Fraction, Fraction, Mass, Fraction]:
    """Return the grams and the mol of hydroxide, what the alkali holds beside it, and the grams of water in ready-mixed lye."""
    grams = mol = water = Fraction(0)
    rest = NO_MASS
    for w in weighed:
        if w.line.role is not Role.ALKALI:
            continue
        purity = pure[w.line.ingredient.name]
        hydroxide = w.mass.grams * (w.line.strength if w.line.strength is not None else purity)
        solid = hydroxide / purity
        grams, mol = grams + hydroxide, mol + hydroxide / molar_mass(w.line.ingredient)
        rest += Mass(solid - hydroxide)
        water += w.mass.grams - solid
    return grams, mol, rest, water


def _soaps(
    weighed: Sequence[Weighed], alkali: Fraction, per_mol: Fraction, koh: Fraction, glycerol_molar: Fraction, water_molar: Fraction
) -> tuple[tuple[SoapOf, ...], Mass, Fraction, Fraction]:
    """Return the soap of each oil, the glycerol, the grams of water that come out of the oils, and the mol of alkali that is left.

    Fats after the cook take only what the others leave.
    """
    oils = [w for w in weighed if w.line.role is Role.OIL]
    found: dict[int, SoapOf] = {}
    glycerol, freed, left = NO_MASS, Fraction(0), alkali
    for late in (False, True):
        group = [w for w in oils if w.line.after_the_cook is late]
        wanted = sum((fat_equivalents(w.mass, w.line.ingredient, koh) for w in group), Fraction(0))
        part = min(left / wanted, Fraction(1)) if wanted else Fraction(0)
        left -= part * wanted
        for w in group:
            card = w.line.ingredient
            taken = part * fat_equivalents(w.mass, card, koh)
            out = Fraction(0)
            if card.counts_as is CountsAs.FAT:
                out = taken / 3 * glycerol_molar
                glycerol += Mass(out)
            elif card.counts_as is CountsAs.FATTY_ACID:
                out = taken * water_molar
                freed += out
            of_water = w.mass * water_in(card)
            freed += of_water.grams
            dry = w.mass - of_water
            found[id(w)] = SoapOf(card, dry * part + Mass(taken * per_mol - out), dry * (1 - part), taken)
    return tuple(found[id(w)] for w in oils), glycerol, freed, left
