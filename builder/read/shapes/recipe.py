"""The shape of `recipes/NAME.yaml`."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import BeforeValidator, ValidationInfo, model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.language import Translation
from builder.model.place import Name, Place
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.quantity import Share, sum_masses
from builder.model.recipe.recipe import (
    CODE_LETTERS,
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
    MeasuredPh,
    Phase,
    Recipe,
    RecipeLine,
    StatedPurity,
    SteamsAway,
    WaterBy,
)
from builder.read.makes import Makes, becomes
from builder.read.shapes.fields import (
    NOT_EMPTY,
    AllergenFamilies,
    AmountField,
    DensityField,
    Heat,
    Named,
    Number,
    PartOfWhole,
    Percent,
    PositiveNumber,
    ProductField,
    Purity,
    Reason,
    Strength,
    Superfat,
    Text,
    Texts,
    Time,
    Weight,
    Whole,
    WholeAboveZero,
    YesOrNo,
    check_languages,
    reads,
)
from builder.read.shapes.labels import DesignName
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError
from builder.read.values.bounds import PRODUCT_DENSITY
from builder.read.values.values import member_of, parse_words_of_cure, parse_words_of_keeping
from builder.words.fold import fold
from builder.words.nearest import did_you_mean
from builder.words.plain_number import plain_number

FINDS = (
    FindingKind("batch-code-unclear", STOP, "The letters of a batch code cannot be read without a mistake from a small label."),
    FindingKind("lye-stated-twice", STOP, "The lye is stated in two ways, and only one of them can be kept."),
    FindingKind("lye-water-unclear", STOP, "The water of the lye is stated in no way, or in several."),
    FindingKind("ph-not-on-the-scale", STOP, "A pH is not on the scale, or its range is upside down."),
)


Keeps = Annotated[str, reads(parse_words_of_keeping)]


def _named(name: str, placed: PlacedData) -> Name:
    """Return a name that stands alone, or as a key with its share."""
    return Name(name, placed.key_place(name) if isinstance(placed.data, dict) else placed.place())


def _alone(given: object) -> object:
    """Return one name as a mapping in which it is the whole."""
    return {given.strip(): "100 %"} if isinstance(given, str) and given.strip() else given


def parse_code(text: str) -> str:
    """Read the letters of a recipe's batch codes. Raises TextError."""
    if not (2 <= len(text) <= 4 and set(text) <= set(CODE_LETTERS)):
        wrong = f'"{text}" cannot begin a batch code, which has to be read without a mistake from a small label.'
        raise TextError("batch-code-unclear", wrong, 'Write two to four capital letters, none of them I or O, for example "ML".')
    return text


def _of_the_only_one(given: object) -> object:
    """Return a purity or a weight that names no alkali under an empty name."""
    return {"": given} if isinstance(given, str) else given


class SteamsAwayShape(Shape, Makes[SteamsAway]):
    """What a phase loses while it is heated and held."""

    share: PartOfWhole = needed("share", "4 %")
    """The share of the phase's weight that steams away while it is heated and held."""
    measured: Text = needed("measured", '"how, when"')
    """How and when you measured it, in a few words."""


class PhaseShape(Shape, Makes[Phase]):
    """Ingredients that are weighed and treated together."""

    name: Named = needed("name", "water phase")
    """What the phase is called; sheets list the ingredients under it."""
    heat_to: Heat | None = maybe("heat to", example="75 degC")
    """How hot the phase is made. It is compared with what each ingredient bears, and with where its fats and waxes melt."""
    hold: Time | None = maybe("hold", example="20 min")
    """How long it is kept hot. Sheets then say to which weight hot water brings it back."""
    after_the_cook: YesOrNo = maybe("after the cook", False, example="yes")
    """Whether it goes in after the cook of a hot-process soap. What does is not there to be tested before, and the superfat during the cook
    leaves it out."""
    steams_away: SteamsAwayShape | None = maybe("steams away", example='{share: 4 %, measured: "how, when"}')
    """How much steams away meanwhile, if you have weighed it. Sheets then also say about how much hot water goes in."""
    ingredients: Annotated[dict[str, AmountField], NOT_EMPTY] = needed("ingredients", "{sunflower oil: 12 %}")
    """Each ingredient by its name or another name of its card, with its amount, or `rest` for one of them where the recipe is in percent of
    the total."""

    @becomes("lines")
    def _lines(self, placed: PlacedData) -> tuple[RecipeLine, ...]:
        lines = ((placed.inside("ingredients", name), amount) for name, amount in self.ingredients.items())
        return tuple(RecipeLine(line.name, amount, line.place()) for line, amount in lines)


def _weight_of_water(given: object) -> object:
    """Return a bare amount of water as its weight."""
    return {"weight": given} if isinstance(given, str) else given


class LyeWaterShape(Shape, Makes[LyeWater]):
    """The water of a lye, stated in one of four ways."""

    concentration: PartOfWhole | None = maybe("lye concentration", example="33 %")
    """The share of the hydroxide in the lye, by weight as weighed."""
    ratio: PositiveNumber | None = maybe("water to lye", example="2")
    """How many times as much water as hydroxide, by weight."""
    percent_of_oils: Percent | None = maybe("percent of oils", example="38 %")
    """The weight of the water as a percentage of that of the oils."""
    weight: Weight | None = maybe("weight", example="12 oz")
    """The weight of the water for the recipe as it is written; `water: 12 oz` is short for it."""

    @property
    def ways(self) -> dict[WaterBy, Fraction]:
        """Return the ways in which it is stated."""
        shares = {WaterBy.CONCENTRATION: self.concentration, WaterBy.PERCENT_OF_OILS: self.percent_of_oils}
        said = {by: share.fraction for by, share in shares.items() if share is not None}
        said |= {WaterBy.RATIO: self.ratio} if self.ratio is not None else {}
        return said | ({WaterBy.WEIGHT: self.weight.grams} if self.weight is not None else {})

    @becomes("by")
    def _by(self, _: PlacedData) -> WaterBy:
        return next(iter(self.ways))

    @becomes("value")
    def _value(self, _: PlacedData) -> Fraction:
        return self.ways[self._by(_)]

    @becomes("place")
    def _place(self, placed: PlacedData) -> Place:
        return placed.place(self._by(placed).value)

    @model_validator(mode="after")
    def _is_stated_once(self) -> Self:
        stated = len(self.ways)
        if stated != 1:
            wrong = "The water of the lye is stated in more than one way." if stated else "The water of the lye is not stated."
            remedy = 'Write one of these: "lye concentration: 33 %", "water to lye: 2", "percent of oils: 38 %" or "weight: 12 oz".'
            raise TextError("lye-water-unclear", wrong, remedy)
        return self


class ReadyMixedShape(Shape):
    """A lye that comes to the bench as a solution."""

    strength: Strength = needed("strength", "50 %")
    """The hydroxide in the solution, by weight; of what is bought also with the range of its certificate: `50 %, 49 to 51 %`."""
    bought: YesOrNo = maybe("bought", False, "yes")
    """Whether it is bought at that strength. Then nobody mixes it, no solid is weighed or bought for the class, and its certificate counts.
    """

    @model_validator(mode="after")
    def _has_a_range_of_its_own(self) -> Self:
        if not self.bought and self.strength.low != self.strength.high:
            wrong = "What staff mix has the strength that it is mixed to, and the range of the solid is counted for it."
            raise TextError("lye-stated-twice", wrong, "Write one figure, or `bought: yes` if the solution is bought.", ("strength",))
        return self


def _of_a_strength(given: object) -> object:
    """Return a bare strength as that of a lye that staff mix."""
    return {"strength": given} if isinstance(given, str) else given


class LyeShape(Shape, Makes[LyePlan]):
    """What a soap recipe says of its lye."""

    alkali: Annotated[dict[str, PartOfWhole], NOT_EMPTY, BeforeValidator(_alone)] | None = maybe("alkali", example="sodium hydroxide")
    """The hydroxide, or two of them with their shares: `{potassium hydroxide: 90 %, sodium hydroxide: 10 %}`. Where it is left out beside
    `weigh:`, the usual one of that kind of soap is taken, and a caution says so."""
    divided_by: Annotated[DividedBy, reads(member_of(DividedBy))] = maybe("divided by", DividedBy.EQUIVALENTS, example="weight")
    """What the shares of two alkalis are of: the work that they do, what the scale shows (purity and all), or the pure hydroxide in each.
    """
    purity: Annotated[dict[str, Purity], BeforeValidator(_of_the_only_one)] = maybe("purity", {}, "98 %")
    """The hydroxide in the solid, from your supplier's certificate, or with the range of the grade: `99 %, 97 to 100 %`; of two alkalis one
    for each. Without it, the figure of our card, which is printed as assumed. On take-home sheets the range of the card counts, since
    another pack is used there."""
    superfat: Superfat | None = maybe("superfat", example="5 %")
    """The share of the fat that stays unsaponified. Lye is rounded down, and the superfat as weighed is printed with the worst case both
    ways."""
    weigh: Annotated[dict[str, Weight], NOT_EMPTY, BeforeValidator(_of_the_only_one)] | None = maybe("weigh", example="4.5 oz")
    """The weight of the lye as it stands in your notebook, in place of `superfat:`, which is then the answer; of two alkalis one for each.
    """
    water: Annotated[LyeWaterShape, BeforeValidator(_weight_of_water)] = needed("water", "{lye concentration: 33 %}")
    """How much water there is in all, in one of the four ways that follow."""
    liquid: Annotated[dict[str, PartOfWhole], NOT_EMPTY, BeforeValidator(_alone)] = maybe("liquid", {"water": Share(Fraction(1))}, "water")
    """What the lye is dissolved in, with shares of the water: `{water: 50 %, goat milk: 50 %}`."""
    later: dict[str, PartOfWhole] = maybe("later", {}, "{goat milk: 40 %}")
    """Liquids kept back until trace, with their shares of the water."""
    ready_mixed: Annotated[ReadyMixedShape, BeforeValidator(_of_a_strength)] | None = maybe("ready-mixed", example="50 %")
    """The strength of a lye that staff mix ahead and keep dissolved, or `{strength: 50 %, bought: yes}` of one that is bought; the rest of
    the water is added. At home it is mixed from the solid at the same concentration."""

    def alkalis(self, placed: PlacedData, usual: str) -> tuple[AlkaliShare, ...]:
        """Return the alkalis; `usual` is meant where a weight names none."""
        stated = self.alkali or {}
        if self.weigh is None:
            named = {name: _named(name, placed.inside("alkali")) for name in stated}
            return tuple(AlkaliShare(named[name], share.fraction, self._purity_of(name)) for name, share in stated.items())
        whole, alone = sum_masses(self.weigh.values()), next(iter(stated), usual)
        weighed = placed.inside("alkali" if stated else "weigh")
        named = {name: _named(name or alone, weighed) for name in self.weigh}
        return tuple(
            AlkaliShare(named[name], weighs / whole, self._purity_of(named[name].text), weighs, assumed=not (name or stated))
            for name, weighs in self.weigh.items()
        )

    def _purity_of(self, alkali: str) -> StatedPurity | None:
        purities = {fold(name): purity for name, purity in self.purity.items()}
        return purities.get(fold(alkali), purities.get(""))

    @becomes("liquids")
    def _liquids(self, placed: PlacedData) -> tuple[LyeLiquid, ...]:
        liquids = (("liquid", self.liquid), ("later", self.later))
        return tuple(
            LyeLiquid(_named(name, placed.inside(key)), share.fraction, later=key == "later")
            for key, shares in liquids
            for name, share in shares.items()
        )

    @becomes("ready_mixed")
    def _strength(self, _: PlacedData) -> Share | None:
        return Share(self.ready_mixed.strength.typical) if self.ready_mixed else None

    @becomes("bought")
    def _strength_as_bought(self, _: PlacedData) -> StatedPurity | None:
        return self.ready_mixed.strength if self.ready_mixed and self.ready_mixed.bought else None

    @becomes("places")
    def _places(self, placed: PlacedData) -> dict[str, Place]:
        places = placed.places()
        return {"superfat": places["weigh"], "alkali": places["weigh"], **places} if self.weigh else places

    @property
    def names(self) -> tuple[str, ...]:
        """Return the names of the alkalis; the empty one stands for what the recipe does not name."""
        return tuple(self.alkali or self.weigh or ())

    @model_validator(mode="after")
    def _is_stated_once(self) -> Self:
        if self.superfat is None and self.weigh is None:
            wrong = '"superfat" is missing under "lye", and nothing says what the lye weighs.'
            remedy = 'Write for example "superfat: 5 %", or, as it stands in a notebook, "weigh: 4.5 oz".'
            raise TextError("field-missing", wrong, remedy, at_key=True)
        if self.superfat is not None and self.weigh is not None:
            wrong = "The lye is stated twice, by its superfat and by its weight, and only one of the two can be kept."
            raise TextError(
                "lye-stated-twice", wrong, "Leave out `superfat:` to learn which one the weight gives.", at=("weigh",), at_key=True
            )
        if self.weigh is not None and self.ready_mixed is not None:
            wrong = "Nothing says whether the weight is that of the solid or of the ready-mixed solution."
            remedy = "Write the weight of the solid and leave out `ready-mixed:`, or write `superfat:` in place of `weigh:`."
            raise TextError("lye-stated-twice", wrong, remedy, at=("weigh",), at_key=True)
        if self.purity and self.ready_mixed is not None and self.ready_mixed.bought:
            wrong = "The lye is bought as a solution, and the purity of a solid says nothing of what is in the bottle."
            remedy = "Leave out `purity:`; the strength of the solution is what counts."
            raise TextError("lye-stated-twice", wrong, remedy, at=("purity",), at_key=True)
        return self

    @model_validator(mode="after")
    def _names_what_it_weighs(self) -> Self:
        if self.weigh is None:
            if self.alkali is None:
                raise TextError(
                    "field-missing", '"alkali" is missing under "lye".', 'Write for example "alkali: sodium hydroxide".', at_key=True
                )
            return self
        named = {fold(name) for name in self.weigh if name}
        if self.alkali is not None and (named or len(self.alkali) > 1) and {fold(name) for name in self.alkali} != named:
            wrong = "The alkalis that are weighed are not those under `alkali:`."
            remedy = 'Leave out `alkali:` and name each, as in "weigh: {sodium hydroxide: 100 g, potassium hydroxide: 20 g}".'
            raise TextError("lye-stated-twice", wrong, remedy, at=("weigh",))
        return self

    @model_validator(mode="after")
    def _has_clear_purities(self) -> Self:
        if "" in self.purity and len(self.names) > 1:
            remedy = 'Give each its own, as in "purity: {sodium hydroxide: 98 %, potassium hydroxide: 90 %}".'
            raise TextError("wrong-kind-of-value", "One purity is given for several alkalis.", remedy, at=("purity",))
        alkalis = {fold(name) for name in self.names}
        for name in self.purity:
            if name and fold(name) not in alkalis:
                remedy = f"These may stand here: {', '.join(self.names)}.{did_you_mean(name, self.names)}"
                raise TextError("key-unknown", f'"{name}" is not in this lye.', remedy, at=("purity", name), at_key=True)
        return self


class ChoiceShape(Shape, Makes[Choice]):
    """What each student may add to their own portion."""

    stands_at = "at most"

    options: Annotated[Texts, NOT_EMPTY] = needed("from", "[lavender oil, no scent]")
    """What a student may choose from: ingredients by name, and words such as `no scent` for taking none."""
    at_most: PartOfWhole = needed("at most", "0.5 %")
    """The most that a portion may take of the choice, all options together, as a share of the portion. A limit on an ingredient lowers it
    further."""

    @becomes("what")
    def _what(self, placed: PlacedData) -> str:
        return placed.key

    @becomes("options")
    def _options(self, placed: PlacedData) -> tuple[Name | None, ...]:
        named = ((fold(text), Name(text, placed.place("from", number))) for number, text in enumerate(self.options))
        return tuple(None if text == "none" or text.startswith("no ") else name for text, name in named)


class PortionShape(Shape):
    """What goes into one container."""

    stands_at = "weight"

    container: Named = needed("container", "4 fl oz bottle")
    """The container by its name in our list or in your `shelf/containers.yaml`."""
    weight: Weight = needed("weight", "113 g")
    """What goes into one container, by weight."""
    measured: Text = maybe("measured", "", example="one filled and weighed")
    """How you found the weight: "one filled and weighed". Without it, and without a density, a finding asks whether it fits."""
    units: WholeAboveZero = maybe("units in a package", 1, example="3")
    """How many are packed together under one label."""


class FillShape(PortionShape, Makes[Fill]):
    """One portion."""


class MeasuredDensityShape(Shape, Makes[MeasuredDensity]):
    """The density of the finished batch."""

    density: DensityField = needed("value", "0.98 g/mL")
    """The weight of 1 mL of the finished product."""
    measured: Text = needed("measured", '"how, when"')
    """How and when you measured it."""

    @model_validator(mode="after")
    def _is_a_product(self) -> Self:
        number = self.density.grams_per_millilitre
        if not PRODUCT_DENSITY.hold(number):
            wrong = f"No product has {plain_number(number)} g/mL: {PRODUCT_DENSITY.reason}."
            raise TextError("figure-out-of-range", wrong, PRODUCT_DENSITY.remedy(number), ("value",))
        return self


class CureShape(Shape, Makes[Cure]):
    """How long a soap cures, and what it loses meanwhile."""

    time: Annotated[str, reads(parse_words_of_cure)] = needed("time", "6 weeks")
    """How long bars cure, in words that begin with a length of time."""
    loses: PartOfWhole = needed("loses", "12 %")
    """The share of its weight that a bar loses meanwhile."""
    measured: Text = needed("measured", '"how, when"')
    """How and when you weighed it."""


class PhShape(Shape, Makes[MeasuredPh]):
    """The pH of the finished product."""

    low: Number = needed("low", "4.8")
    """The lowest reading."""
    high: Number = needed("high", "5.2")
    """The highest reading."""
    measured: Text = needed("measured", '"how, when"')
    """With what, how and when: "strip, 2026-11"."""

    @model_validator(mode="after")
    def _is_on_the_scale(self) -> Self:
        if not 0 <= self.low <= self.high <= 14:
            wrong = "pH runs from 0 to 14, and its low end is not above its high end."
            raise TextError("ph-not-on-the-scale", wrong, "Write what the strip or the meter showed, the lowest and the highest reading.")
        return self


class TranslationShape(Shape, Makes[Translation]):
    """What a label takes from the recipe, in another language."""

    name: Text = maybe("name", "", "Lotion pour les mains")
    """The name of the product."""
    directions: Text = maybe("directions", "", example="Appliquer sur une peau propre.")
    """The directions, where the recipe has some."""
    storage: Text = maybe("storage", "", example="Conserver au frais.")
    """How to store it, where the recipe says so."""
    keeps: Keeps = maybe("keeps", "", example="12 mois après la cure")
    """How long it keeps, only where `keeps` of the recipe says more than a length of time."""
    label_cautions: Texts = maybe("label cautions", (), "[Éviter le contact avec les yeux.]")
    """As many cautions as in English, in the same order."""
    options: dict[str, Text] = maybe("options", {}, "{our blend: notre mélange}")
    """What students choose, by its English name; only what our own words do not have."""

    @becomes("options")
    def _by_folded_names(self, _: PlacedData) -> dict[str, str]:
        return {fold(english): text for english, text in self.options.items()}


class RecipeShape(Shape, Makes[Recipe]):
    """One recipe."""

    stands_at = "name"

    name: Text = needed("name", "Juniper hand lotion")
    """The name of the product, on sheets and labels."""
    product: ProductField = needed("product", "lotion")
    """What kind of product it is; which limits, warnings and forms of a label hold follows from it."""
    about: Text = maybe("about", "", example="A light lotion for dry hands.")
    """A sentence or two for the class page."""
    amounts_as: Annotated[AmountsAs, reads(member_of(AmountsAs))] = needed("amounts", "percent of total")
    """What the amounts of the phases are: percentages of the whole, percentages of the oils (soap), parts, or weights as in a notebook."""
    phases: Annotated[tuple[PhaseShape, ...], NOT_EMPTY] = needed("phases", "[{name: all, ingredients: {sea salt: 2 parts}}]")
    """The phases in the order in which they are made."""
    lye: LyeShape | None = maybe("lye", example="{alkali: sodium hydroxide, superfat: 5 %, water: {lye concentration: 33 %}}")
    """The lye of a soap. Needed for what is made with lye, and refused for all else."""
    choices: dict[str, ChoiceShape] = maybe("choices", {}, "{scent: {from: [lavender oil, no scent], at most: 0.5 %}}")
    """What each student may add to a portion, by a name of your own such as `scent`."""
    fill: FillShape = needed("fills", "{container: 4 fl oz bottle, weight: 113 g}")
    """The container that a student fills, and the weight that goes into it."""
    density: MeasuredDensityShape | None = maybe("density", example='{value: 0.98 g/mL, measured: "how, when"}')
    """The density of the finished product. Without it nobody knows whether the weight fits, a liquid has no volume on its label, and a
    mould gives no size."""
    cure: CureShape | None = maybe("cure", example='{time: 6 weeks, loses: 12 %, measured: "how, when"}')
    """How long the soap cures and what it loses. The weight of the cured bar, and a list of what came out of the pot, follow from it."""
    listed: Annotated[ListedAs, reads(member_of(ListedAs))] = maybe("ingredients listed", ListedAs.PUT_IN, "as it came out")
    """Whether a soap's label lists what was put into the pot or what came out of it: salts of the fats, glycerin, water, and the fat left
    free."""
    ph: PhShape | None = maybe("pH", example='{low: 4.8, high: 5.2, measured: "how, when"}')
    """The pH of the finished product, as measured. It is compared with the kind of product, the preservative and the acids."""
    free_from: AllergenFamilies = maybe("free from", (), "[tree nut]")
    """Families of allergens that the product promises to be free from; every ingredient and choice is compared."""
    not_for_colour: tuple[Named, ...] = maybe("not for colour", (), "[zinc oxide]")
    """Colourants that are there for something else, so that the label lists them among the ingredients."""
    used_on: tuple[Annotated[BodyPart, reads(member_of(BodyPart))], ...] = maybe("used on", (), "[face]")
    """The parts of the body it is for. Without it, those of its name and kind; narrower limits hold for some."""
    youngest_user: Whole | None = maybe("youngest user", example="3")
    """The age in years of the youngest who use it; limits for children hold then."""
    tools: Texts = maybe("tools", (), "[kitchen scale, whisk]")
    """What it is made with; names in braces become amounts, as in a lesson."""
    keeps: Keeps = maybe("keeps", "", example="12 months")
    """How long it is good: `12 months`, or in words that begin with a length of time. In the European Union and the United Kingdom every
    product needs it."""
    single_use: YesOrNo = maybe("single use", False, example="yes")
    """Whether it is made fresh and used up at once. Its directions have to say so, and it needs no preservative."""
    storage: Text = maybe("storage", "", example="Keep it cool and dark.")
    """How it is stored, for the label and the sheet."""
    directions: Text = maybe("directions", "", example="Rub a little into dry hands.")
    """How it is used, for the label."""
    after_opening: Keeps = maybe("after opening", "", "6 months")
    """How long it is good once opened. In the European Union and the United Kingdom what keeps for more than 30 months bears it in place of
    a date."""
    translations: dict[str, TranslationShape] = maybe("translations", {}, "{French: {name: Lotion pour les mains}}")
    """What the label says in another language, by the language, where the region wants several (Canada: French; English where
    `language:` in studio.yaml is French)."""
    code: Annotated[str, reads(parse_code)] = maybe("code", "", "ML")
    """Two to four capital letters with which its batch codes begin, none of them I or O. Without it, the first letters of the words of the
    file's name."""
    label_cautions: Texts = maybe("label cautions", (), "[Keep out of the eyes.]")
    """Cautions for the label, each a sentence."""
    label_design: DesignName = maybe("label design", "", "linen")
    """How the labels of this product look, in place of what the class or studio.yaml says."""
    accepts: dict[str, Reason] = maybe("accepts", {}, "{name-of-the-finding: the reason in a sentence}")
    """Findings on this recipe that you accept, by name, each with its reason in a sentence."""

    @becomes("product")
    def _kind(self, _: PlacedData) -> str:
        return self.product.name

    @becomes("lye")
    def _lye(self, placed: PlacedData) -> LyePlan | None:
        lye = placed.inside("lye")
        alkalis = placed.part(lambda: self.lye.alkalis(lye, self.product.usual_alkali) if self.lye else ())
        return self.lye.make(lye, alkalis=alkalis) if self.lye else None

    @model_validator(mode="after")
    def _says_which_alkali(self) -> Self:
        if self.lye and self.lye.names == ("",) and not self.product.usual_alkali:
            wrong = f"Nothing says which alkali is weighed, and {self.product.name} is made with more than one."
            raise TextError(
                "field-missing", wrong, 'Write "alkali: potassium hydroxide" or "alkali: sodium hydroxide".', at=("lye",), at_key=True
            )
        return self

    @model_validator(mode="after")
    def _is_in_known_languages(self, info: ValidationInfo) -> Self:
        check_languages(self.translations, info)
        return self
