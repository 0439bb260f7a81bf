"""Small values for tests that need no files: cards, recipes and scales, made in one line each."""

from fractions import Fraction
from typing import TypeVar

from builder.model.place import NOWHERE, Name
from builder.model.recipe.figure import Figure, Figures, Known, Source
from builder.model.recipe.ingredient import CountsAs, Ingredient, LabelName
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.quantity import Mass, Parts, Share
from builder.model.recipe.recipe import (
    AlkaliShare,
    AmountsAs,
    DividedBy,
    Fill,
    LyePlan,
    LyeWater,
    Phase,
    Recipe,
    RecipeLine,
    StatedPurity,
    WaterBy,
)
from builder.model.studio import Scale
from builder.reckon.recipe.batches import reckon_batch
from builder.reckon.recipe.workplace import NO_RULES, Workplace, by_unit
from builder.words.fold import fold

SOURCE = Source("test", "a figure for this test", "test")
NAOH, KOH = Fraction("39.997"), Fraction("56.1056")


T = TypeVar("T")


def sure(value: T | None) -> T:
    """Give what must be there in this test."""
    assert value is not None
    return value


def worked(recipe, kind, size, cards, scales, constants=None, rules=NO_RULES, *, from_solid=False):
    """Work out a batch at a place with these cards and scales, and the constants below."""
    return reckon_batch(recipe, kind, size, Workplace(cards, by_unit(scales), constants or CONSTANTS, rules, from_solid=from_solid))


# The constants that reckon asks for, with the values of content/constants.yaml.
CONSTANTS = {
    "near boiling": Figure(Fraction(90), Fraction(90), "degC", SOURCE, "here", Known.READ),
    "room": Figure(Fraction("21"), Fraction("21"), "1", SOURCE, "here", Known.READ),
    "specific heat of water": Figure(Fraction("4.184"), Fraction("4.184"), "1", SOURCE, "here", Known.READ),
    "specific heat of fat": Figure(Fraction("2"), Fraction("2"), "1", SOURCE, "here", Known.READ),
    "specific heat of soap lye": Figure(Fraction("3.5"), Fraction("3.5"), "1", SOURCE, "here", Known.READ),
    "specific heat of a lotion": Figure(Fraction("3.9"), Fraction("3.9"), "1", SOURCE, "here", Known.READ),
    "heat that a bare vessel gives off": Figure(Fraction("6"), Fraction("20"), "1", SOURCE, "here", Known.READ),
    "heat that a vessel in cold water gives off": Figure(Fraction("200"), Fraction("500"), "1", SOURCE, "here", Known.READ),
    "depth of a vessel to its width": Figure(Fraction("0.1"), Fraction("0.5"), "1", SOURCE, "here", Known.READ),
    "share of the heat of dissolving that shows": Figure(Fraction("0.4"), Fraction("1"), "1", SOURCE, "here", Known.READ),
    "density of fresh soap": Figure(Fraction("0.95"), Fraction("1.05"), "g/mL", SOURCE, "here", Known.READ),
    "molar mass of glycerol": Figure(Fraction("92.094"), Fraction("92.094"), "g/mol", SOURCE, "here", Known.READ),
    "molar mass of water": Figure(Fraction("18.0153"), Fraction("18.0153"), "g/mol", SOURCE, "here", Known.READ),
    "what a weighing cup weighs": Figure(Fraction(0), Fraction(0), "g", SOURCE, "here", Known.READ),
    "fewest divisions of a weighing": Figure(Fraction(10), Fraction(10), "count", SOURCE, "here", Known.READ),
    "drops of water in a millilitre": Figure(Fraction(18), Fraction(22), "count", SOURCE, "here", Known.READ),
    "density of a liquid whose card states none": Figure(Fraction("1.261"), Fraction("1.261"), "g/mL", SOURCE, "here", Known.READ),
    "most that rounding may move the superfat": Figure(Fraction(1), Fraction(1), "%", SOURCE, "here", Known.READ),
}


def grams(number):
    return Mass(Fraction(str(number)))


def share(percent):
    return Share(Fraction(str(percent)) / 100)


def figures(low, high=None, unit=""):
    return Figures(Figure(Fraction(str(low)), Fraction(str(low if high is None else high)), unit, SOURCE, "here", Known.READ))


def card(name, counts_as=CountsAs.OTHER, **named):
    """Make a card; a figure is a number or a (low, high) pair under its name with underscores."""
    made = {key.replace("_", " "): figures(*value) if isinstance(value, tuple) else figures(value) for key, value in named.items()}
    label = LabelName((name.title(),), (name,), Known.MEMORY)
    return Ingredient(name, IngredientKind.OTHER, counts_as, "both", label_name=label, figures=made)


def fat(name, low, high=None):
    return card(name, CountsAs.FAT, saponification=(low, low if high is None else high))


def cards(*extra):
    """Give cards by folded name: water, the two alkalis (pure), and those given."""
    stock = (
        card("water", CountsAs.WATER),
        card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=100),
        card("potassium hydroxide", CountsAs.ALKALI, molar_mass=KOH, purity=100),
    )
    return {fold(one.name): one for one in (*stock, *extra)}


def scale(division="0.01", up_to="100000", unit="g", per_unit="1"):
    one = Fraction(per_unit)
    return Scale(f"{division} {unit} scale", Mass(Fraction(division) * one), Mass(Fraction(up_to) * one), unit, one)


def phase(name, lines, **named):
    return Phase(Name(name), tuple(RecipeLine(Name(what), amount, NOWHERE) for what, amount in lines.items()), **named)


def recipe(*phases, amounts_as=AmountsAs.PERCENT_OF_TOTAL, fill="100", **named):
    return Recipe("test", "Test", "lotion", amounts_as, phases, Fill(Name("jar"), grams(fill)), **named)


def parts(number):
    return Parts(Fraction(str(number)))


def lye(alkali="sodium hydroxide", superfat=5, water=(WaterBy.CONCENTRATION, "0.33"), **named):
    """Make a lye plan; `alkali` is a name, or percentages by name. `weighs` are grams by name, in place of a superfat."""
    weighs = named.pop("weighs", None)
    if weighs:
        alkali, superfat = {name: Fraction(str(weight)) * 100 / sum(weighs.values()) for name, weight in weighs.items()}, None
    shares = {alkali: 100} if isinstance(alkali, str) else alkali
    purity = named.pop("purity", None)
    pure = purity if isinstance(purity, StatedPurity) else StatedPurity(*3 * (share(purity).fraction,)) if purity is not None else None
    made = tuple(
        AlkaliShare(Name(name), Fraction(str(percent)) / 100, pure, grams(weighs[name]) if weighs else None)
        for name, percent in shares.items()
    )
    named.setdefault("divided_by", DividedBy.EQUIVALENTS)
    by, value = water
    return LyePlan(made, share(superfat) if superfat is not None else None, LyeWater(by, Fraction(str(value))), **named)


def soap(oils, plan, extra=None):
    """Make a soap of oils in percent of the oils."""
    phases = [phase("oils", {name: share(percent) for name, percent in oils.items()})]
    if extra:
        phases.append(phase("at trace", {name: share(percent) for name, percent in extra.items()}))
    return recipe(*phases, amounts_as=AmountsAs.PERCENT_OF_OILS, lye=plan)
