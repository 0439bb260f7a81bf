"""Small values for tests that need no files: cards, recipes and scales, made in one line each."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import TypedDict, TypeVar, Unpack

from builder.check.batches import BatchFinding
from builder.model.dose.limit import LimitRules
from builder.model.finding import Finding
from builder.model.lye.soap_made import SoapMade
from builder.model.place import NOWHERE, Name
from builder.model.recipe.figure import Figure, Figures, Known, Source, SourceKind
from builder.model.recipe.ingredient import CountsAs, Ingredient, LabelName, MixesWith
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import Amount, Duration, Mass, Parts, Share, Temperature, WeighingUnit, sum_masses
from builder.model.recipe.recipe import (
    AlkaliShare,
    AmountsAs,
    Choice,
    Cure,
    DividedBy,
    Fill,
    ListedAs,
    LyeLiquid,
    LyePlan,
    LyeWater,
    MeasuredDensity,
    Phase,
    Recipe,
    RecipeLine,
    StatedPurity,
    SteamsAway,
    WaterBy,
)
from builder.model.recipe.size import Size
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Scale
from builder.reckon.recipe.batches import reckon_batch
from builder.reckon.recipe.workplace import NO_RULES, Workplace, by_unit
from builder.words.fold import fold

SOURCE = Source("test", "a figure for this test", SourceKind.ARTICLE)
# A number as a test writes it; text is taken digit by digit.
Number = int | float | str | Fraction
T = TypeVar("T")
NAOH, KOH = Fraction("39.997"), Fraction("56.1056")


def sure(value: T | None) -> T:
    """Return what must be there in this test."""
    assert value is not None
    return value


def only_findings(found: Iterable[Finding | BatchFinding]) -> list[Finding]:
    """Return what a rule has found, of which nothing is about a single batch."""
    findings = list(found)
    assert all(isinstance(one, Finding) for one in findings)
    return [one for one in findings if isinstance(one, Finding)]


def told(found: Iterable[Finding | BatchFinding]) -> list[Finding]:
    """Return what a rule has found, whether it is about a single batch or not."""
    return [one.finding if isinstance(one, BatchFinding) else one for one in found]


def worked(
    recipe: Recipe,
    kind: Product,
    size: Size,
    cards: Mapping[str, Ingredient],
    scales: Iterable[Scale],
    constants: Mapping[str, Figure] | None = None,
    rules: LimitRules = NO_RULES,
    *,
    from_solid: bool = False,
) -> WorkedBatch:
    """Work out a batch at a place with these cards and scales, and the constants below."""
    return reckon_batch(recipe, kind, size, Workplace(cards, by_unit(tuple(scales)), constants or CONSTANTS, rules, from_solid=from_solid))


# The constants that reckon asks for, with the values of content/constants.yaml; a vessel weighs nothing here.
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
    "lightest weighing cup": Figure(Fraction(0), Fraction(0), "g", SOURCE, "here", Known.READ),
    "weighing vessel to what it holds": Figure(Fraction(0), Fraction(0), "%", SOURCE, "here", Known.READ),
    "fewest divisions of a weighing": Figure(Fraction(10), Fraction(10), "count", SOURCE, "here", Known.READ),
    "drops of water in a millilitre": Figure(Fraction(18), Fraction(22), "count", SOURCE, "here", Known.READ),
    "density of a liquid whose card states none": Figure(Fraction("1.261"), Fraction("1.261"), "g/mL", SOURCE, "here", Known.READ),
    "most that rounding may move the superfat": Figure(Fraction(1), Fraction(1), "%", SOURCE, "here", Known.READ),
}


def grams(number: Number) -> Mass:
    return Mass(Fraction(str(number)))


def share(percent: Number) -> Share:
    return Share(Fraction(str(percent)) / 100)


def figures(low: Number, high: Number | None = None, unit: str = "") -> Figures:
    return Figures(Figure(Fraction(str(low)), Fraction(str(low if high is None else high)), unit, SOURCE, "here", Known.READ))


def card(name: str, counts_as: CountsAs = CountsAs.OTHER, **named: Number | tuple[Number, Number]) -> Ingredient:
    """Make a card; a figure is a number or a (low, high) pair under its name with underscores."""
    made = {key.replace("_", " "): figures(*value) if isinstance(value, tuple) else figures(value) for key, value in named.items()}
    label = LabelName((name.title(),), (name,), Known.MEMORY)
    return Ingredient(name, IngredientKind.OTHER, counts_as, MixesWith.BOTH, label_name=label, figures=made)


def fat(name: str, low: Number, high: Number | None = None) -> Ingredient:
    return card(name, CountsAs.FAT, saponification=(low, low if high is None else high))


def cards(*extra: Ingredient) -> dict[str, Ingredient]:
    """Return cards by folded name: water, the two alkalis (pure), and those given."""
    stock = (
        card("water", CountsAs.WATER),
        card("sodium hydroxide", CountsAs.ALKALI, molar_mass=NAOH, purity=100),
        card("potassium hydroxide", CountsAs.ALKALI, molar_mass=KOH, purity=100),
    )
    return {fold(one.name): one for one in (*stock, *extra)}


def scale(division: Number = "0.01", up_to: Number = "100000", unit: WeighingUnit = "g", per_unit: Number = "1") -> Scale:
    one = Fraction(per_unit)
    return Scale(f"{division} {unit} scale", Mass(Fraction(division) * one), Mass(Fraction(up_to) * one), unit, one)


class OfPhase(TypedDict, total=False):
    """What a phase may have beside its lines."""

    heat_to: Temperature
    hold: Duration
    after_the_cook: bool
    steams_away: SteamsAway


def phase(name: str, lines: Mapping[str, Amount], **named: Unpack[OfPhase]) -> Phase:
    return Phase(Name(name), tuple(RecipeLine(Name(what), amount, NOWHERE) for what, amount in lines.items()), **named)


class OfRecipe(TypedDict, total=False):
    """What a recipe may have beside its phases and its container."""

    lye: LyePlan | None
    choices: tuple[Choice, ...]
    cure: Cure | None
    density: MeasuredDensity | None
    listed: ListedAs


def recipe(*phases: Phase, amounts_as: AmountsAs = AmountsAs.PERCENT_OF_TOTAL, fill: Number = "100", **named: Unpack[OfRecipe]) -> Recipe:
    return Recipe("test", "Test", "lotion", amounts_as, phases, Fill(Name("jar"), grams(fill)), **named)


def parts(number: Number) -> Parts:
    return Parts(Fraction(str(number)))


def lye(
    alkali: str | Mapping[str, Number] = "sodium hydroxide",
    superfat: Number | None = 5,
    water: tuple[WaterBy, Number] = (WaterBy.CONCENTRATION, "0.33"),
    *,
    weighs: Mapping[str, Number] | None = None,
    purity: Number | StatedPurity | None = None,
    divided_by: DividedBy = DividedBy.EQUIVALENTS,
    liquids: tuple[LyeLiquid, ...] = (LyeLiquid(Name("water"), Fraction(1)),),
    ready_mixed: Share | None = None,
    bought: StatedPurity | None = None,
) -> LyePlan:
    """Make a lye plan; `alkali` is a name, or percentages by name. `weighs` are grams by name, in place of a superfat."""
    if weighs:
        whole = sum(Fraction(str(weight)) for weight in weighs.values())
        alkali, superfat = {name: Fraction(str(weight)) * 100 / whole for name, weight in weighs.items()}, None
    shares: Mapping[str, Number] = {alkali: 100} if isinstance(alkali, str) else alkali
    pure = purity if isinstance(purity, StatedPurity) else StatedPurity(*3 * (share(purity).fraction,)) if purity is not None else None
    made = tuple(
        AlkaliShare(Name(name), Fraction(str(percent)) / 100, pure, grams(weighs[name]) if weighs else None)
        for name, percent in shares.items()
    )
    kept = share(superfat) if superfat is not None else None
    by, value = water
    return LyePlan(made, kept, LyeWater(by, Fraction(str(value))), divided_by, liquids, ready_mixed, bought)


def parts_of(made: SoapMade) -> Mass:
    """Add up everything that came out of a pot of soap."""
    salts = (one.salt for one in made.salts)
    soaps = (mass for one in made.soaps for mass in (one.soap, one.unsaponified))
    others = (mass for _, mass in made.others)
    return sum_masses((*soaps, made.glycerol, made.water, made.rest_of_alkali, made.free_alkali, *salts, *others))


def soap(oils: Mapping[str, Number], plan: LyePlan, extra: Mapping[str, Number] | None = None) -> Recipe:
    """Make a soap of oils in percent of the oils."""
    phases = [phase("oils", {name: share(percent) for name, percent in oils.items()})]
    if extra:
        phases.append(phase("at trace", {name: share(percent) for name, percent in extra.items()}))
    return recipe(*phases, amounts_as=AmountsAs.PERCENT_OF_OILS, lye=plan)
