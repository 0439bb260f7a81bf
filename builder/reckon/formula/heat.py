"""Heat: what mixing gives, what dissolving frees, how long a vessel takes to cool.

    mixing      T = sum(m c T) / sum(m c)                  the vessel and what is lost left out
    setting     T + m L / sum(m c)                         the most it can be if all of a fat sets in the mixture
    dissolving  rise = share of hydroxide * heat / c       nothing lost; real peaks are lower, never higher
    cooling     t = ln((T0 - room) / (T - room)) / k,  k = h A / (m c)      (Newton)

Logarithms and areas are worked out in floats: what comes of them is an estimate, known to a factor, and is printed as bounds.

Decided: times of cooling are bounds over the shapes of vessels and what they give off; a finding takes the least of them and all the time
there is. Why: without a measurement the time is known to a factor of ten with the shape open; a false alarm on a usual lesson costs
trust.

Decided: the heat of dissolving is printed as the sum and the most it can be, and without a figure near boiling. Why: real peaks are
lower, and no published rise at the strength of soap was found.

Decided: fat that sets warms a pot to where it melts at the most, and liquid oils of a mixture are as warm as the room. Why: else setting
could be said to reach any temperature.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import log, pi

from builder.model.formula.warmth import Cooling, Cools, CoolsTo, Dissolving, Warm
from builder.model.recipe.column import Column, Role
from builder.model.recipe.figure import Figure
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.recipe.recipe import Recipe

ROOM = "room"
OF_WATER, OF_FAT, OF_LYE, OF_LOTION = (
    "specific heat of water",
    "specific heat of fat",
    "specific heat of soap lye",
    "specific heat of a lotion",
)
IN_AIR, IN_COLD_WATER = "heat that a bare vessel gives off", "heat that a vessel in cold water gives off"
DEPTH, SHOWS = "depth of a vessel to its width", "share of the heat of dissolving that shows"
Constants = Mapping[str, Figure]


def mixed(parts: Sequence[Warm]) -> Fraction:
    """Return the temperature in degC at which they meet. Nothing melts, sets or dissolves."""
    held = sum((one.grams * one.specific_heat for one in parts), Fraction(0))
    return sum((one.grams * one.specific_heat * one.celsius for one in parts), Fraction(0)) / held


def warmed_by_setting(parts: Sequence[Warm], grams: Fraction, heat_of_fusion: Fraction) -> Fraction:
    """Return what the mixture comes to at the most, if so many grams in it set and give back their heat of fusion (J/g)."""
    held = sum((one.grams * one.specific_heat for one in parts), Fraction(0))
    return mixed(parts) + grams * heat_of_fusion / held


def rise_of_dissolving(strength: Fraction, heat: Fraction, specific_heat: Fraction) -> Fraction:
    """Return by how many degrees a solution warms that holds such a share of hydroxide, which frees `heat` J/g; nothing is lost."""
    return strength * heat / specific_heat


def rate(grams: float, specific_heat: float, area: float, given_off: float) -> float:
    """Return Newton's k in 1/min of a vessel: `area` in m2, `given_off` in W/(m2 K)."""
    return given_off * area / (grams * specific_heat) * 60


def minutes_to_cool(begins: float, ends: float, room: float, k: float) -> float:
    """Return the minutes from one temperature to another in a room (degC); 0 where it is there already."""
    return log((max(begins, ends) - room) / (ends - room)) / k


def surface(millilitres: float, depth: float) -> float:
    """Return the wall that is wetted and the open top, in m2, of a round vessel in which a liquid stands so deep (1 = as its width)."""
    width = float((4 * millilitres * 1e-6 / (pi * depth)) ** (1 / 3))
    return pi * width * width * (depth + 0.25)


def cooling(
    mass: Mass, specific_heat: Fraction, begins: tuple[Fraction, Fraction], ends: Fraction, constants: Constants, *, in_water: bool = False
) -> Cooling | None:
    """Return the bounds of the time in which a mass cools from a temperature that lies between two ends (degC).

    The least is the coolest beginning in a wide pot that gives off most, the most the hottest in a jug that gives off least. None where
    it never gets there: the room is as warm. A millilitre is taken for a gram.
    """
    room = float(constants[ROOM].typical)
    if ends <= constants[ROOM].typical or mass <= NO_MASS or begins[1] <= ends:
        return None
    given_off, depth = constants[IN_COLD_WATER if in_water else IN_AIR], constants[DEPTH]
    grams, c = float(mass.grams), float(specific_heat)
    fast = rate(grams, c, surface(grams, float(depth.low)), float(given_off.highest))
    slow = rate(grams, c, surface(grams, float(depth.highest)), float(given_off.low))
    least = minutes_to_cool(float(begins[0]), float(ends), room, fast)
    most = minutes_to_cool(float(begins[1]), float(ends), room, slow)
    return Cooling(begins[1], ends, Fraction(least), Fraction(most))


def dissolving(column: Column, constants: Constants) -> Dissolving | None:
    """Return what the lye of a column comes to as its solid dissolves; None where nothing solid does, or its heat is not known."""
    alkalis = [w for w in column.weighed if w.line.role is Role.ALKALI]
    solids = [(w, heat) for w in alkalis if (heat := constants.get(f"heat of dissolving {w.line.ingredient.key}"))]
    if column.lye is None or not solids or len(solids) < len(alkalis) or any(w.line.strength is not None for w in alkalis):
        return None
    purities = {purity.alkali: purity.high for purity in column.lye.purities}
    solution = (column.alkali + column.lye_water).grams
    pure = [(w.mass.grams * purities[w.line.ingredient.name], heat.typical) for w, heat in solids]
    water = constants[OF_WATER].typical
    rise = sum((rise_of_dissolving(grams / solution, heat, water) for grams, heat in pure), Fraction(0))
    room = constants[ROOM].typical
    strength = sum((grams for grams, _ in pure), Fraction(0)) / solution
    return Dissolving(strength, room + rise * constants[SHOWS].low, room + rise, room + rise >= constants["near boiling"].typical)


def reckon_cooling(recipe: Recipe, column: Column, constants: Constants) -> tuple[CoolsTo, ...]:
    """Return how long the lye takes to the heat of the oils, and a heated batch to that below which something is added to it.

    A batch without water sets on the way, and stands still while it does: of it nothing is said.
    """
    found = []
    freed, oils = dissolving(column, constants), _heat_of_oils(recipe)
    if freed is not None and oils is not None:
        lye = column.alkali + column.lye_water
        found.append(_cools(Cools.LYE, lye, constants[OF_LYE].typical, (freed.least, freed.most), oils, constants))
    hottest = max((phase.heat_to.celsius for phase in recipe.phases if phase.heat_to), default=None)
    below = [figure.low for w in column.weighed if (figure := w.line.ingredient.figure("add below"))]
    watery = any(w.line.ingredient.counts_as.is_watery for w in column.weighed)
    if recipe.lye is None and watery and hottest is not None and below:
        found.append(_cools(Cools.BATCH, column.total, constants[OF_LOTION].typical, (hottest, hottest), min(below), constants))
    return tuple(one for one in found if one is not None)


def _heat_of_oils(recipe: Recipe) -> Fraction | None:
    return next((phase.heat_to.celsius for phase in recipe.phases if phase.heat_to and not phase.after_the_cook), None)


def _cools(
    what: Cools, mass: Mass, specific_heat: Fraction, begins: tuple[Fraction, Fraction], ends: Fraction, constants: Constants
) -> CoolsTo | None:
    in_air = cooling(mass, specific_heat, begins, ends, constants)
    in_water = cooling(mass, specific_heat, begins, ends, constants, in_water=True)
    return CoolsTo(what, in_air, in_water) if in_air and in_water else None
