"""The shape of `recipes/NAME.yaml`."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import BeforeValidator, ValidationInfo, model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.quantity import Share
from builder.model.recipe.recipe import CODE_LETTERS, USED_ON, AmountsAs, DividedBy, ListedAs
from builder.read.shapes.fields import (
    NOT_EMPTY,
    AllergenFamilies,
    AmountField,
    DensityField,
    Heat,
    Number,
    PartOfWhole,
    Percent,
    PositiveNumber,
    ProductField,
    Purity,
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
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.text_error import TextError
from builder.read.values.bounds import PRODUCT_DENSITY
from builder.read.values.values import member_of, word_of
from builder.words.fold import fold
from builder.words.nearest import did_you_mean
from builder.words.plain_number import plain_number

FINDS = (
    FindingKind("batch-code-unclear", STOP, "The letters of a batch code cannot be read without a mistake from a small label."),
    FindingKind("lye-stated-twice", STOP, "The lye is stated in two ways, and only one of them can be kept."),
    FindingKind("lye-water-unclear", STOP, "The water of the lye is stated in no way, or in several."),
    FindingKind("ph-not-on-the-scale", STOP, "A pH is not on the scale, or its range is upside down."),
)


def _alone(given: object) -> object:
    """Give one name as a mapping in which it is the whole."""
    return {given.strip(): "100 %"} if isinstance(given, str) and given.strip() else given


def parse_code(text: str) -> str:
    """Read the letters of a recipe's batch codes."""
    if not (2 <= len(text) <= 4 and set(text) <= set(CODE_LETTERS)):
        wrong = f'"{text}" cannot begin a batch code, which has to be read without a mistake from a small label.'
        raise TextError("batch-code-unclear", wrong, 'Write two to four capital letters, none of them I or O, for example "ML".')
    return text


def _of_the_only_one(given: object) -> object:
    """Give a purity or a weight that names no alkali under an empty name."""
    return {"": given} if isinstance(given, str) else given


class SteamsAwayShape(Shape):
    """What a phase loses while it is heated and held."""

    share: PartOfWhole = needed("share", "4 %")
    measured: Text = needed("measured", '"how, when"')


class PhaseShape(Shape):
    """Ingredients that are weighed and treated together."""

    name: Text = needed("name", "water phase")
    heat_to: Heat | None = maybe("heat to")
    hold: Time | None = maybe("hold")
    after_the_cook: YesOrNo = maybe("after the cook", False)
    steams_away: SteamsAwayShape | None = maybe("steams away", example='{share: 4 %, measured: "how, when"}')
    ingredients: Annotated[dict[str, AmountField], NOT_EMPTY] = needed("ingredients", "{sunflower oil: 12 %}")


def _weight_of_water(given: object) -> object:
    """Give a bare amount of water as its weight."""
    return {"weight": given} if isinstance(given, str) else given


class LyeWaterShape(Shape):
    """The water of a lye, stated in one of four ways."""

    concentration: PartOfWhole | None = maybe("lye concentration")
    ratio: PositiveNumber | None = maybe("water to lye")
    percent_of_oils: Percent | None = maybe("percent of oils")
    weight: Weight | None = maybe("weight")

    @model_validator(mode="after")
    def _is_stated_once(self) -> Self:
        stated = sum(way is not None for way in (self.concentration, self.ratio, self.percent_of_oils, self.weight))
        if stated != 1:
            wrong = "The water of the lye is stated in more than one way." if stated else "The water of the lye is not stated."
            remedy = 'Write one of these: "lye concentration: 33 %", "water to lye: 2", "percent of oils: 38 %" or "weight: 12 oz".'
            raise TextError("lye-water-unclear", wrong, remedy)
        return self


class LyeShape(Shape):
    """What a soap recipe says of its lye."""

    alkali: Annotated[dict[str, PartOfWhole], NOT_EMPTY, BeforeValidator(_alone)] | None = maybe("alkali", example="sodium hydroxide")
    divided_by: Annotated[DividedBy, reads(member_of(DividedBy))] = maybe("divided by", DividedBy.EQUIVALENTS)
    purity: Annotated[dict[str, Purity], BeforeValidator(_of_the_only_one)] = maybe("purity", {}, "98 %")
    superfat: Superfat | None = maybe("superfat", example="5 %")
    weigh: Annotated[dict[str, Weight], NOT_EMPTY, BeforeValidator(_of_the_only_one)] | None = maybe("weigh", example="4.5 oz")
    water: Annotated[LyeWaterShape, BeforeValidator(_weight_of_water)] = needed("water", "{lye concentration: 33 %}")
    liquid: Annotated[dict[str, PartOfWhole], NOT_EMPTY, BeforeValidator(_alone)] = maybe("liquid", {"water": Share(Fraction(1))}, "water")
    later: dict[str, PartOfWhole] = maybe("later", {}, "{goat milk: 40 %}")
    ready_mixed: PartOfWhole | None = maybe("ready-mixed")

    @property
    def names(self) -> tuple[str, ...]:
        """Give the names of the alkalis; the empty one stands for what the recipe does not name."""
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


class ChoiceShape(Shape):
    """What each student may add to their own portion."""

    options: Annotated[Texts, NOT_EMPTY] = needed("from", "[lavender oil, no scent]")
    at_most: PartOfWhole = needed("at most", "0.5 %")


class FillShape(Shape):
    """One portion."""

    container: Text = needed("container", "4 fl oz bottle")
    weight: Weight = needed("weight", "113 g")
    measured: Text = maybe("measured", "")
    units: WholeAboveZero = maybe("units in a package", 1)


class MeasuredDensityShape(Shape):
    """The density of the finished batch."""

    value: DensityField = needed("value", "0.98 g/mL")
    measured: Text = needed("measured", '"how, when"')

    @model_validator(mode="after")
    def _is_a_product(self) -> Self:
        number = self.value.grams_per_millilitre
        if not PRODUCT_DENSITY.hold(number):
            wrong = f"No product has {plain_number(number)} g/mL: {PRODUCT_DENSITY.reason}."
            raise TextError("figure-out-of-range", wrong, PRODUCT_DENSITY.remedy(number), ("value",))
        return self


class CureShape(Shape):
    """How long a soap cures, and what it loses meanwhile."""

    time: Text = needed("time", "6 weeks")
    loses: PartOfWhole = needed("loses", "12 %")
    measured: Text = needed("measured", '"how, when"')


class PhShape(Shape):
    """The pH of the finished product."""

    low: Number = needed("low", "4.8")
    high: Number = needed("high", "5.2")
    measured: Text = needed("measured", '"how, when"')

    @model_validator(mode="after")
    def _is_on_the_scale(self) -> Self:
        if not 0 <= self.low <= self.high <= 14:
            wrong = "pH runs from 0 to 14, and its low end is not above its high end."
            raise TextError("ph-not-on-the-scale", wrong, "Write what the strip or the meter showed, the lowest and the highest reading.")
        return self


class TranslationShape(Shape):
    """What a label takes from the recipe, in another language."""

    name: Text = maybe("name", "", "Lotion pour les mains")
    directions: Text = maybe("directions", "")
    storage: Text = maybe("storage", "")
    keeps: Text = maybe("keeps", "")
    label_cautions: Texts = maybe("label cautions", (), "[Éviter le contact avec les yeux.]")
    options: dict[str, Text] = maybe("options", {}, "{our blend: notre mélange}")


class RecipeShape(Shape):
    """One recipe."""

    name: Text = needed("name", "Juniper hand lotion")
    product: ProductField = needed("product", "lotion")
    about: Text = maybe("about", "")
    amounts: Annotated[AmountsAs, reads(member_of(AmountsAs))] = needed("amounts", "percent of total")
    phases: Annotated[tuple[PhaseShape, ...], NOT_EMPTY] = needed("phases", "[{name: all, ingredients: {sea salt: 2 parts}}]")
    lye: LyeShape | None = maybe("lye", example="{alkali: sodium hydroxide, superfat: 5 %, water: {lye concentration: 33 %}}")
    choices: dict[str, ChoiceShape] = maybe("choices", {}, "{scent: {from: [lavender oil, no scent], at most: 0.5 %}}")
    fills: FillShape = needed("fills", "{container: 4 fl oz bottle, weight: 113 g}")
    density: MeasuredDensityShape | None = maybe("density", example='{value: 0.98 g/mL, measured: "how, when"}')
    cure: CureShape | None = maybe("cure", example='{time: 6 weeks, loses: 12 %, measured: "how, when"}')
    ingredients_listed: Annotated[ListedAs, reads(member_of(ListedAs))] = maybe("ingredients listed", ListedAs.PUT_IN, "as it came out")
    ph: PhShape | None = maybe("pH", example='{low: 4.8, high: 5.2, measured: "how, when"}')
    free_from: AllergenFamilies = maybe("free from", (), "[tree nut]")
    not_for_colour: Texts = maybe("not for colour", (), "[zinc oxide]")
    used_on: tuple[Annotated[str, reads(word_of(*USED_ON))], ...] = maybe("used on", (), "[face]")
    youngest_user: Whole | None = maybe("youngest user", example="3")
    tools: Texts = maybe("tools", (), "[kitchen scale, whisk]")
    keeps: Text = maybe("keeps", "")
    single_use: YesOrNo = maybe("single use", False)
    storage: Text = maybe("storage", "")
    directions: Text = maybe("directions", "")
    after_opening: Text = maybe("after opening", "", "6 months")
    translations: dict[str, TranslationShape] = maybe("translations", {}, "{French: {name: Lotion pour les mains}}")
    code: Annotated[str, reads(parse_code)] = maybe("code", "", "ML")
    label_cautions: Texts = maybe("label cautions", (), "[Keep out of the eyes.]")
    accepts: dict[str, Text] = maybe("accepts", {}, "{name-of-the-finding: the reason in a sentence}")

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
