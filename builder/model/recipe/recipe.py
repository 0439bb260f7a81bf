"""A recipe as the studio wrote it, with a place on everything that a finding may point at."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.finding import Acceptance
from builder.model.label.language import OWN, Translation
from builder.model.place import NOWHERE, Name, Place, Placed
from builder.model.recipe.body_part import NAMES_OF_PARTS, BodyPart
from builder.model.recipe.quantity import Amount, Density, Duration, Mass, Share, Temperature
from builder.model.roster.allergen_family import AllergenFamily
from builder.words.fold import fold
from builder.words.say import message

# I and O are taken for 1 and 0.
CODE_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


class AmountsAs(StrEnum):
    """How a recipe states its amounts."""

    PERCENT_OF_TOTAL = "percent of total"
    PERCENT_OF_OILS = "percent of oils"
    PARTS = "parts"
    WEIGHTS = "weights"


@dataclass(frozen=True)
class RecipeLine:
    """One ingredient of a phase: its name as written, and its amount as read."""

    ingredient: Name
    amount: Amount
    place: Place = field(compare=False)


@dataclass(frozen=True)
class SteamsAway:
    """The share of a phase's weight that steams away while it is heated and held, and how the studio measured it."""

    share: Share
    measured: str


@dataclass(frozen=True)
class Phase:
    """Ingredients that are weighed and treated together. `steams_away` is what the studio has weighed it to lose meanwhile."""

    name: Name
    lines: tuple[RecipeLine, ...]
    heat_to: Temperature | None = None
    hold: Duration | None = None
    after_the_cook: bool = False
    steams_away: SteamsAway | None = None


class WaterBy(StrEnum):
    """The four ways to state the water of a lye."""

    CONCENTRATION = message("lye concentration")
    RATIO = message("water to lye")
    PERCENT_OF_OILS = message("percent of oils")
    WEIGHT = message("weight")


@dataclass(frozen=True)
class LyeWater:
    """How much water the lye gets. `value` is a share for a concentration or percent, a plain number for water : lye, grams for a weight.

    A weight is that for the recipe as it is written.
    """

    by: WaterBy
    value: Fraction
    place: Place = field(default=NOWHERE, compare=False)


class DividedBy(StrEnum):
    """How a lye of two alkalis is divided: by share of equivalents, by weight as weighed, or by weight of the pure hydroxide in each."""

    EQUIVALENTS = "equivalents"
    WEIGHT = "weight"
    HYDROXIDE = "weight of hydroxide"


@dataclass(frozen=True)
class StatedPurity:
    """The hydroxide by weight of an alkali as a recipe states it, as parts of one: counted as `typical`, from `low` to `high`."""

    typical: Fraction
    low: Fraction
    high: Fraction


@dataclass(frozen=True)
class AlkaliShare:
    """One alkali of a lye, its share (1 where it is the only one), and its purity where the recipe states one.

    `weighs` is how much of it the recipe as written takes, where it says so. `assumed`: the recipe does not name it, and it is what such a
    soap is usually made with.
    """

    name: Name
    share: Fraction
    purity: StatedPurity | None = None
    weighs: Mass | None = None
    assumed: bool = False


@dataclass(frozen=True)
class LyeLiquid:
    """One liquid of the lye and its share of the water that the recipe states. `later`: it goes in at trace, not into the lye."""

    name: Name
    share: Fraction
    later: bool = False


@dataclass(frozen=True)
class LyePlan(Placed):
    """What a soap recipe says of its lye: the superfat that it asks for, or (None) what each alkali weighs.

    Where it says what the alkali weighs, that stands at the place of the superfat, which is what findings point at. `ready_mixed` is the
    strength of a solution that staff mix of the solid, or that is `bought`: then this is its strength as its certificate states it.
    """

    alkalis: tuple[AlkaliShare, ...]
    superfat: Share | None
    water: LyeWater
    divided_by: DividedBy = DividedBy.EQUIVALENTS
    liquids: tuple[LyeLiquid, ...] = (LyeLiquid(Name("water"), Fraction(1)),)
    ready_mixed: Share | None = None
    bought: StatedPurity | None = None


@dataclass(frozen=True)
class Choice:
    """What each student may add to their own portion: one of `options`, at most `at_most` of the portion's weight.

    An option of None means: leave it out.
    """

    what: str
    options: tuple[Name | None, ...]
    at_most: Share
    place: Place = field(default=NOWHERE, compare=False)


def left_out(what: str) -> str:
    """Name a choice of which nothing is taken."""
    return f"no {what}"


@dataclass(frozen=True)
class Fill:
    """One portion: the container, the weight that goes into it, and how the studio saw that it fits (empty where it has not).

    `units` is how many of them are packed together in one package, which bears the label.
    """

    container: Name
    weight: Mass
    measured: str = ""
    units: int = 1
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class Cure:
    """How long a soap cures, as text, and the share of its wet weight that it loses meanwhile, weighed by the studio."""

    time: str
    loses: Share
    measured: str


class ListedAs(StrEnum):
    """Whether the ingredient list of a soap names what was put into the pot, or what came out of it."""

    PUT_IN = "as put in the pot"
    MADE = "as it came out"


@dataclass(frozen=True)
class MeasuredDensity:
    """The density of the finished batch, and how the studio measured it."""

    density: Density
    measured: str


@dataclass(frozen=True)
class MeasuredPh:
    """The pH of the finished product, from the lowest to the highest that the studio found, and how it was measured."""

    low: Fraction
    high: Fraction
    measured: str


@dataclass(frozen=True)
class Recipe(Placed):
    """One recipe. `key` is the name of its file without the ending. `in_part`: some lines of the file could not be taken in.

    `code` are the letters of its batch codes, `after_opening` how long it is good once opened, where the studio says so.
    `single_use`: it is used up at once, and what is left is thrown away.
    `free_from` are families of allergens that it promises not to hold. `used_on` are where it is used, `not_for_colour` colours that are
    there for something else. `youngest_user` is the age in years of the youngest whom the product is meant for (None: whoever takes a class
    that makes it). `language` is that in which it is written, `translations` are by the others.
    """

    key: str
    name: str
    product: str
    amounts_as: AmountsAs
    phases: tuple[Phase, ...]
    fill: Fill
    about: str = ""
    lye: LyePlan | None = None
    choices: tuple[Choice, ...] = ()
    density: MeasuredDensity | None = None
    cure: Cure | None = None
    listed: ListedAs = ListedAs.PUT_IN
    ph: MeasuredPh | None = None
    free_from: tuple[AllergenFamily, ...] = ()
    used_on: tuple[BodyPart, ...] = ()
    not_for_colour: tuple[Name, ...] = ()
    youngest_user: int | None = None
    tools: tuple[str, ...] = ()
    keeps: str = ""
    storage: str = ""
    directions: str = ""
    label_cautions: tuple[str, ...] = ()
    label_design: str = ""
    after_opening: str = ""
    single_use: bool = False
    language: str = OWN
    translations: Mapping[str, Translation] = field(default_factory=dict)
    code: str = ""
    accepts: Mapping[str, Acceptance] = field(default_factory=dict)
    in_part: bool = False

    @property
    def letters(self) -> str:
        """Return the letters that begin its batch codes: its own, or the first letters of the words of its key, without I and O."""
        if self.code:
            return self.code
        words = self.key.upper().split("-")
        first = "".join(word[:1] for word in words) if len(words) > 1 else words[0]
        return "".join(letter for letter in first if letter in CODE_LETTERS)[:4] or "X"

    def goes_on(self, usual: tuple[BodyPart, ...]) -> tuple[BodyPart, ...]:
        """Return the parts of the body on which its product is used: as it says, by its name, or as is `usual` for its kind."""
        named = (NAMES_OF_PARTS[word] for word in fold(self.name).replace("-", " ").split() if word in NAMES_OF_PARTS)
        return self.used_on or tuple(dict.fromkeys(named)) or usual

    @property
    def lines(self) -> tuple[RecipeLine, ...]:
        """Return the lines of all phases in order."""
        return tuple(line for phase in self.phases for line in phase.lines)

    @property
    def names(self) -> Iterator[Name]:
        """Yield every ingredient name that it writes: of its lines, its lye, and its choices."""
        yield from (line.ingredient for phase in self.phases for line in phase.lines)
        if self.lye:
            yield from (alkali.name for alkali in self.lye.alkalis)
            yield from (liquid.name for liquid in self.lye.liquids)
        yield from self.options

    @property
    def options(self) -> tuple[Name, ...]:
        """Return what students may choose, in order, and not that they may leave it out."""
        return tuple(option for choice in self.choices for option in choice.options if option)

    def told_in(self, language: str) -> Translation:
        """Return what a label takes from it, in one language; empty where the studio has not written it."""
        if language == self.language:
            return Translation(self.name, self.directions, self.storage, self.keeps, self.label_cautions)
        return self.translations.get(language, Translation())
