"""The printed range of the superfat against 100,000 random draws of everything that it stands for.

The draws know nothing of the code under test but the weights that are printed. They work by the definitions: saponification value in mg of
KOH per g of fat (ISO 3657), superfat = 1 - (alkali - acid) / fat in mol; a fat's value anywhere in its published range, a purity anywhere
in its own; a tared weighing is two readings, each half a division off at most, or off by what the maker says where that is more; in cold
process a wax takes any part of its lye. Half of the draws go to an end of what they may be, where the worst cases lie.
"""

from fractions import Fraction
from random import Random
from typing import Protocol

import pytest

from builder.compose.lye.lye_range import ends
from builder.model.recipe.column import Column, Weighed
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import DividedBy, Recipe
from builder.model.recipe.size import OilsSize
from builder.model.studio import Scale
from tests.making import card, cards, fat, grams, lye, scale, share, soap, sure, worked

BATCHES, DRAWS = 50, 1000  # for each of two columns: 100,000 in all
OUNCE = Fraction("28.349523125")

# mg of KOH per g: CXS 33 and CXS 210 (olive, coconut, palm, sunflower), BP (castor), JECFA FNP 52 (beeswax), BPC 1911 (lanolin).
FATS = {"olive": (184, 196), "coconut": (248, 265), "palm": (190, 209), "sunflower": (187, 194), "castor": (176, 187)}
WAXES = {"beeswax": (87, 104), "lanolin": (90, 102)}
# g/mol computed from atomic weights; hydroxide by weight after USP-NF.
ALKALIS = {"sodium hydroxide": (39.997, 95, 100), "potassium hydroxide": (56.1056, 85, 90)}
KOH = 56.1056
# g/mol, protons, assay.
ACIDS = {"citric acid": (192.124, 3, 99.5, 100), "lactic acid": (90.078, 1, 88, 92)}

STOCK = cards(
    *(fat(name, *ends_) for name, ends_ in FATS.items()),
    *(card(name, CountsAs.WAX, saponification=ends_) for name, ends_ in WAXES.items()),
    *(card(name, CountsAs.ALKALI, molar_mass=molar, purity=(low, high)) for name, (molar, low, high) in ALKALIS.items()),
    *(
        card(name, CountsAs.ACID, molar_mass=molar, protons=protons, purity=(low, high))
        for name, (molar, protons, low, high) in ACIDS.items()
    ),
)


def accurate(division: str, up_to: int, accurate_to: str) -> Scale:
    made = scale(division, up_to)
    return Scale(made.name, made.division, made.up_to, made.unit, made.grams_per_unit, grams(accurate_to))


def made_up(random: Random) -> tuple[Recipe, Product, OilsSize, tuple[Scale, ...]]:
    """Make up a soap: two to four fats, at times a wax, an acid, two alkalis, lye ready-mixed; give it with its kind and its scales."""
    fats = random.sample(sorted(FATS), random.randint(2, 4))
    waxes = random.sample(sorted(WAXES), random.choice([0, 0, 1, 2]))
    parts = {name: random.randint(10, 40) for name in fats} | {name: random.randint(1, 6) for name in waxes}
    whole = sum(parts.values())
    mixed = random.random() < 0.4
    alkali = {"potassium hydroxide": 60, "sodium hydroxide": 40} if mixed else random.choice(sorted(ALKALIS))
    plan = lye(
        alkali,
        superfat=random.randint(0, 12),
        divided_by=random.choice(sorted(DividedBy)),
        ready_mixed=share(40) if random.random() < 0.3 else None,
    )
    extra = {random.choice(sorted(ACIDS)): random.choice([1, 2, 3])} if random.random() < 0.4 else None
    made = soap({name: Fraction(part * 100, whole) for name, part in parts.items()}, plan, extra)
    cooked = random.random() < 0.4
    kind = Product("hot-process soap" if cooked else "cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT, cooked=cooked)
    on = (scale(1), accurate("0.1", 200, "0.3"), scale("0.05", "200", "oz", OUNCE), scale("0.005", "16", "oz", OUNCE))
    return made, kind, OilsSize(grams(random.choice([300, 500, 1000, 2500]))), on


class Pick(Protocol):
    """Pick a number of a range; more of what `adds_lye` lowers the superfat."""

    def __call__(self, low: float, high: float, /, *, adds_lye: bool = False) -> float: ...


def drawn(random: Random) -> Pick:
    """Draw from ranges: one time in four the lower end, one in four the upper end, else anything between."""

    def pick(low: float, high: float, /, **_: bool) -> float:
        at = random.random()
        return low if at < 0.25 else high if at < 0.5 else random.uniform(low, high)

    return pick


def at_the_end(*, low: bool) -> Pick:
    """Pick what brings the superfat to one end: the least fat and the most lye, or the other way round."""

    def pick(lower: float, higher: float, /, *, adds_lye: bool = False) -> float:
        return lower if low is not adds_lye else higher

    return pick


def weight(weighed: Weighed, pick: Pick, *, adds_lye: bool = False) -> float:
    """Return what a weighing may really have been."""
    mass, half = float(weighed.mass.grams), float(weighed.scale.division.grams) / 2
    said = float(weighed.scale.accurate_to.grams) if weighed.scale.accurate_to else 0
    if said > 2 * half:
        return max(mass + pick(-said, said, adds_lye=adds_lye), 0)
    return max(mass + pick(-half, half, adds_lye=adds_lye) + pick(-half, half, adds_lye=adds_lye), 0)


def superfat(column: Column, cooked: bool, pick: Pick) -> float:
    """Work out one superfat that a column may really have."""
    fat = alkali = acid = 0.0
    for weighed in column.weighed:
        name = weighed.line.ingredient.name
        if name in FATS:
            fat += weight(weighed, pick) * pick(*FATS[name]) / 1000 / KOH
        elif name in WAXES:
            fat += weight(weighed, pick) * pick(*WAXES[name]) / 1000 / KOH * (1 if cooked else pick(0, 1))
        elif name in ACIDS:
            molar, protons, low, high = ACIDS[name]
            acid += weight(weighed, pick) * pick(low, high) / 100 * protons / molar
        elif name in ALKALIS:
            molar, low, high = ALKALIS[name]
            purity = pick(low, high, adds_lye=True)
            # A solution is mixed by the middle of what the solid may be, and is as much stronger or weaker as that really is.
            hydroxide = purity / 100 if weighed.line.strength is None else 0.40 * purity / ((low + high) / 2)
            alkali += weight(weighed, pick, adds_lye=True) * hydroxide / molar
    return 1 - (alkali - acid) / fat


@pytest.mark.parametrize("seed", [0, 1, *(pytest.param(seed, marks=pytest.mark.long) for seed in (2, 3, 4))])
def test_no_draw_leaves_the_printed_range(seed: int) -> None:
    random = Random(seed)
    for _ in range(BATCHES // 5):
        made, kind, size, scales = made_up(random)
        for column in worked(made, kind, size, STOCK, scales).columns:
            found = [superfat(column, kind.cooked, drawn(random)) for _ in range(DRAWS)]
            low, high = (Fraction(text.removesuffix("%").replace("−", "-")) / 100 for text in ends(sure(column.lye)))
            assert low <= min(found) <= max(found) <= high
            assert float(sure(column.lye).lowest) - 1e-9 <= min(found) <= max(found) <= float(sure(column.lye).highest) + 1e-9


@pytest.mark.parametrize("seed", range(5))
def test_the_range_is_no_wider_than_what_can_happen(seed: int) -> None:
    random = Random(100 + seed)
    for _ in range(10):
        made, kind, size, scales = made_up(random)
        for column in worked(made, kind, size, STOCK, scales).columns:
            assert superfat(column, kind.cooked, at_the_end(low=True)) == pytest.approx(float(sure(column.lye).lowest), abs=1e-9)
            assert superfat(column, kind.cooked, at_the_end(low=False)) == pytest.approx(float(sure(column.lye).highest), abs=1e-9)
