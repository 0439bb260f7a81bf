"""What the calculation pass makes: scaled lines, columns of weighings, lye, portions, doses, ingredient lists, workings."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.dose.dose import Dose
from builder.model.dose.limit import Limit
from builder.model.formula.warmth import CoolsTo, Dissolving
from builder.model.place import NOWHERE, Place
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import NO_MASS, Mass, Volume
from builder.model.recipe.recipe import Fill, Recipe
from builder.model.studio import Scale
from builder.model.supplies.cost import Cost, Jug, PumpStrokes
from builder.words.fold import fold
from builder.words.plain_number import plain_number


@dataclass(frozen=True)
class Lost:
    """What of a batch fills no container: what stays in the pot, and what sticks to each cup."""

    in_the_pot: Mass = NO_MASS
    in_each_cup: Mass = NO_MASS


NOTHING_LOST = Lost()


@dataclass(frozen=True)
class TotalSize:
    """A batch of this weight in all."""

    total: Mass
    lost: Lost = NOTHING_LOST


@dataclass(frozen=True)
class OilsSize:
    """A batch with this weight of oils."""

    oils: Mass
    lost: Lost = NOTHING_LOST


@dataclass(frozen=True)
class ContainersSize:
    """A batch that fills this many containers, and holds what is lost on the way to them."""

    containers: int
    lost: Lost = NOTHING_LOST


@dataclass(frozen=True)
class MouldSize:
    """A batch that fills a mould of this volume."""

    volume: Volume


@dataclass(frozen=True)
class PeopleSize:
    """A batch for people: containers to fill, and weights to show, to lose in the pot and in each cup.

    `also` are other containers that the same batch fills, with how many of each. `each_student` is how many a student takes.
    """

    containers: int
    demo: Mass
    left_in_the_pot: Mass
    left_in_each_cup: Mass = NO_MASS
    also: tuple[tuple[Fill, int], ...] = ()
    each_student: int = 0


Size = TotalSize | OilsSize | ContainersSize | MouldSize | PeopleSize


@dataclass(frozen=True)
class Given:
    """One number that went into a working, in `unit`, and whose figure it is (`source`, empty for the recipe's own)."""

    name: str
    value: Fraction
    unit: str
    source: str = ""


@dataclass(frozen=True)
class Working:
    """How one result came to be. `rule` is a stable key; its words are in `compose/recipe/wording.py`."""

    rule: str
    of: str
    given: tuple[Given, ...]
    result: Fraction
    unit: str


class Role(StrEnum):
    """What a line is to the sums of a soap."""

    OIL = "oil"
    ALKALI = "alkali"
    LYE_WATER = "lye water"
    LATER_LIQUID = "later liquid"
    OTHER = "other"


@dataclass(frozen=True)
class Line:
    """One ingredient of a batch before rounding; `share` is its part of the whole batch.

    `strength` is set for an alkali that is weighed as a ready-mixed solution: its hydroxide by weight, as a fraction of one.
    """

    ingredient: Ingredient
    phase: str
    role: Role
    exact: Mass
    share: Fraction
    after_the_cook: bool = False
    strength: Fraction | None = None
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def name(self) -> str:
        """Give the name of what is weighed: the ingredient, or the solution of it, which must never be taken for the solid."""
        if self.strength is None:
            return self.ingredient.name
        return f"{self.ingredient.name} solution, {plain_number(self.strength * 100, 6)} %"


@dataclass(frozen=True)
class Weighed:
    """A line as it will be weighed: a whole number of the scale's divisions. `fits` is False where no scale can hold it."""

    line: Line
    mass: Mass
    scale: Scale
    fits: bool = True


@dataclass(frozen=True)
class Purity:
    """The share of hydroxide in an alkali as bought, with its range, and whether the recipe or the card states it."""

    alkali: str
    low: Fraction
    typical: Fraction
    high: Fraction
    source: str
    assumed: bool


@dataclass(frozen=True)
class AlkaliPart:
    """One alkali of a mixed lye, as weighed: its share of the hydroxide's equivalents, and of the weight on the scales."""

    alkali: str
    by_equivalents: Fraction
    by_weight: Fraction


@dataclass(frozen=True)
class Cause:
    """What the range of one ingredient's own figures takes from the superfat in the worst case, as a fraction of one."""

    ingredient: str
    takes: Fraction


@dataclass(frozen=True)
class LyeResult:
    """The lye of one column, from the amounts as weighed.

    Shares are fractions of one. `asked` is the superfat of the exact amounts, before anything is rounded to a scale, and
    `rounding_may_move` the most by which rounding may move that of a batch of this size. `lowest` and `highest` are the superfat in the
    worst case both ways; in cold process the lowest counts waxes as taking no lye. `before_the_cook` is the superfat of what is in the pot
    meanwhile, without the fats and acids that go in afterwards, which are `late`; None where there are none. `without_waxes` is the
    superfat if no wax takes lye (None where there is no wax), `lowest_without_waxes` the same in the worst case.
    `concentration` and `water_to_lye` are by weight as weighed; `in_water` counts only the water in a liquid that takes its place.
    `water_beside` is the water that comes from elsewhere and dissolves no lye: in later liquids, in solutions of acids, in milks.
    `causes` say what makes the worst case bad, the most first; `by_scales` is what the scales alone take.
    `parts` are the alkalis with both of their shares, so that neither is taken for the other.
    """

    superfat: Fraction
    asked: Fraction
    rounding_may_move: Fraction
    lowest: Fraction
    highest: Fraction
    before_the_cook: Fraction | None
    before_the_cook_lowest: Fraction | None
    late: tuple[str, ...]
    without_waxes: Fraction | None
    lowest_without_waxes: Fraction
    concentration: Fraction
    in_water: Fraction
    water_beside: Mass
    water_to_lye: Fraction
    water_of_oils: Fraction
    purities: tuple[Purity, ...]
    causes: tuple[Cause, ...]
    by_scales: Fraction
    parts: tuple[AlkaliPart, ...]

    @property
    def moved_by_rounding(self) -> Fraction:
        """Give how much rounding to the scales has added to the superfat."""
        return self.superfat - self.asked


@dataclass(frozen=True)
class SoapOf:
    """What one fat, wax or fatty acid became: the soap of it, what of it stays unsaponified, and the alkali that it `took`, in mol."""

    ingredient: Ingredient
    soap: Mass
    unsaponified: Mass
    took: Fraction


@dataclass(frozen=True)
class SoapMade:
    """What comes out of the pot once the lye has done its work; the parts add to the weight of the column exactly.

    `salts` are those of acids (citrate, lactate, acetate) by the acid's name. `rest_of_alkali` is what the alkali as bought holds beside
    hydroxide. `water` is all of it, that in milks and in solutions of acids too. `others` are the ingredients that take no part, less
    their water. `bar` is one portion wet, `cured_bar` after the water loss that the recipe
    states (None where it states none). `free_alkali` is hydroxide that found no fat: a finding stops such a batch.
    """

    soaps: tuple[SoapOf, ...]
    glycerol: Mass
    water: Mass
    salts: tuple[tuple[str, Mass], ...]
    rest_of_alkali: Mass
    free_alkali: Mass
    others: tuple[tuple[str, Mass], ...]
    total: Mass
    bar: Mass
    cured_bar: Mass | None


@dataclass(frozen=True)
class TopUp:
    """A phase with water that is heated: what it weighs before, to which hot water brings it back afterwards.

    `lost` is what is expected to steam away, from the studio's own weighing (`measured`); None where the studio has not weighed it.
    """

    phase: str
    weight: Mass
    lost: Mass | None
    measured: str


@dataclass(frozen=True)
class Column:
    """One column of weighings, in grams or ounces, with its totals and its lye.

    `unit` is `g` or `oz`. `phase_totals` are by phase name. `lye` is None where the recipe has none.
    """

    unit: str
    weighed: tuple[Weighed, ...]
    total: Mass
    oils: Mass
    alkali: Mass
    lye_water: Mass
    phase_totals: Mapping[str, Mass]
    lye: LyeResult | None
    top_ups: tuple[TopUp, ...] = ()


@dataclass(frozen=True)
class Portions:
    """How a batch is divided: the weight of one, how many are wanted, how many it yields, and what is left of the batch.

    `poured` is what the scale reads on a tared cup: the fill, and what sticks to the cup. `in_the_pot` stays in the pot. `all_from` is the
    least weight of the finished batch that still fills every container that is wanted (None where none are).
    """

    fill: Mass
    wanted: int | None
    yields: int
    left: Mass
    poured: Mass
    all_from: Mass | None = None
    in_the_pot: Mass = NO_MASS


@dataclass(frozen=True)
class Counted:
    """What one card adds towards a limit, at least and at most, as shares of the product or of its oils.

    `line` is where the batch holds it; None for what students add, whose choice is `what`.
    """

    card: Ingredient
    line: Line | None
    what: str
    least: Fraction
    most: Fraction


@dataclass(frozen=True)
class TowardsLimit:
    """What a batch, with the students' choices at their worst, adds towards one limit; the most first. `unit` is that of the weighings."""

    limit: Limit
    own_law: bool
    counted: tuple[Counted, ...]
    unit: str = "g"

    @property
    def least(self) -> Fraction:
        """Give what counts for certain."""
        return sum((one.least for one in self.counted), Fraction(0))

    @property
    def most(self) -> Fraction:
        """Give what may count."""
        return sum((one.most for one in self.counted), Fraction(0))


@dataclass(frozen=True)
class Declared:
    """One entry of an ingredient list, with the least and the most it can be, as shares of the product.

    The two are equal for what the recipe weighs; a ready-made base gives only its order, so that its parts have a range. An allergen of a
    scent is named beside the scent that holds it.
    """

    inci: str
    plain: str
    declared_as: DeclaredAs
    least: Fraction
    most: Fraction
    colour_name: Mapping[str, str] = field(default_factory=dict)
    is_nano: bool = False
    is_allergen: bool = False


@dataclass(frozen=True)
class Question:
    """The one figure of a supplier that would settle most: the share of `part` in a blend, or its one-per-cent line (empty).

    `settles` counts the open pairs that are settled if the figure is in the middle of what it can be.
    """

    blend: str
    part: str
    settles: int


@dataclass(frozen=True)
class MayHold:
    """What is published of a scent whose allergens nobody has stated: those that can come to so much that a label names them.

    `allergens` are their names on a label, each with the most of it in the scent (a share of one). It is what to ask the supplier for, and
    no statement.
    """

    scent: str
    allergens: tuple[tuple[str, Fraction], ...]


@dataclass(frozen=True)
class IngredientList:
    """Entries in the order in which a label prints them; `open_pairs` names those whose order is not proven.

    `nameless` are cards that say not how they are declared, `without_statement` scents whose allergens nobody has stated where the
    region wants them named, `may_hold` what is published of those.
    """

    entries: tuple[Declared, ...]
    open_pairs: tuple[tuple[str, str], ...] = ()
    nameless: tuple[str, ...] = ()
    question: Question | None = None
    without_statement: tuple[str, ...] = ()
    may_hold: tuple[MayHold, ...] = ()

    @property
    def is_proven(self) -> bool:
        """Say whether the order of the entries is proven, and whether all that goes in is among them."""
        return not self.open_pairs and not self.nameless


@dataclass(frozen=True)
class Variant:
    """One way to finish a portion: the options chosen, and the ingredient list that goes with them."""

    chosen: tuple[tuple[str, str | None], ...]
    ingredients: IngredientList


@dataclass(frozen=True)
class CreamSoap:
    """The soap that an alkali which is no lye (borax) makes in a cream of the free acids of a wax or a fatty acid.

    From `low` to `high` is the share of the acids that the alkali neutralises; above one, some of it is left over.
    """

    acids: tuple[Ingredient, ...]
    alkalis: tuple[Ingredient, ...]
    low: Fraction
    high: Fraction


@dataclass(frozen=True)
class Emulsion:
    """Water and oil that meet in a batch: the oils, the emulsifiers (the highest HLB first), and the shares of oil and of
    water in the whole.

    `required` is the HLB that the oils require, `has` that of the emulsifiers together; each is None where a figure is not known.
    `share_of_first` is the share of the first of two emulsifiers with which they would come to what is required (None: no share does).
    `takers` take up water by themselves, `takes_up` in all of the whole. `soap` is what an alkali makes of free acids.
    """

    oils: tuple[Ingredient, ...]
    emulsifiers: tuple[Ingredient, ...]
    oil_share: Fraction
    required: Fraction | None
    has: Fraction | None
    share_of_first: Fraction | None
    water_share: Fraction
    takers: tuple[Ingredient, ...] = ()
    takes_up: Fraction = Fraction(0)
    soap: CreamSoap | None = None
    workings: tuple[Working, ...] = ()


@dataclass(frozen=True)
class WorkedBatch:
    """One batch of one recipe, worked out. The first column is in grams; home sheets have one in ounces beside it.

    `soap` is what a soap made with lye becomes; `smallest` is the smallest batch that these scales can weigh sensibly. `strokes`, `jugs`
    and `cost` are what the studio's supplies add, where it lists any. `towards` has every limit that something here counts towards, `asked`
    every row that asks for a pH or a label. `unlimited` are the scents, those to choose from included, of which no limit for this use
    speaks but those on all scent together. `emulsion` is water and oil that meet.
    `is_true_soap`: it is proven to be nothing but soap. `volume` is what the batch takes up at the most, for a mould or a pot; None where
    nobody can know. `dissolving` and `cools` say how hot its lye can get, and how long what is hot takes to cool.
    """

    recipe: Recipe
    product: Product
    size: Size
    lines: tuple[Line, ...]
    columns: tuple[Column, ...]
    portions: Portions
    doses: tuple[Dose, ...]
    variants: tuple[Variant, ...]
    workings: tuple[Working, ...]
    soap: SoapMade | None = None
    smallest: Mass | None = None
    emulsion: Emulsion | None = None
    strokes: tuple[PumpStrokes, ...] = ()
    jugs: tuple[Jug, ...] = ()
    cost: Cost | None = None
    is_true_soap: bool = False
    towards: tuple[TowardsLimit, ...] = ()
    asked: tuple[TowardsLimit, ...] = ()
    unlimited: tuple[Ingredient, ...] = ()
    volume: Volume | None = None
    dissolving: Dissolving | None = None
    cools: tuple[CoolsTo, ...] = ()

    def cards_in(self, cards: Mapping[str, Ingredient]) -> tuple[Ingredient, ...]:
        """Give every card of it, and of what its students may choose; `cards` are the studio's."""
        chosen = (cards[fold(one.option)] for dose in self.doses for one in dose.each)
        return tuple({card.key: card for card in (*(line.ingredient for line in self.lines), *chosen)}.values())

    @property
    def grams(self) -> Column:
        """Give the column in grams."""
        return self.columns[0]
