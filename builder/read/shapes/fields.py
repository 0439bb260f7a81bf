"""The types of the fields of a shape: each reads one text of a file, or a list of them, through the function that says what is wrong."""

from collections.abc import Callable, Iterable
from datetime import date, datetime
from fractions import Fraction
from functools import partial
from typing import Annotated, Any, TypeVar

from pydantic import AfterValidator, BeforeValidator, PlainValidator, ValidationInfo

from builder.model.finding import Acceptance
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name
from builder.model.recipe.figure import Source
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import Amount, Box, Count, Density, Duration, Length, Mass, Share, Temperature, Volume, WeighingUnit
from builder.model.recipe.recipe import StatedPurity
from builder.model.roster.allergen_family import AllergenFamily
from builder.read.lye.purities import parse_purity, parse_strength
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError
from builder.read.values import amounts, numbers, values
from builder.words.nearest import did_you_mean

FINDS = (FindingKind("list-empty", STOP, "A list holds nothing."),)

T = TypeVar("T")


def reads(parse: Callable[[str], T]) -> PlainValidator:
    """Make the validator of a field from the function that reads its text."""
    return PlainValidator(partial(_read, parse))


def _read(parse: Callable[[str], T], given: object) -> T:
    return parse(values.text_of(given))


def looks_up(find: Callable[[str, Any], T]) -> PlainValidator:
    """Make the validator of a field that names something read before, from the function that looks it up."""
    return PlainValidator(partial(_look_up, find))


def _look_up(find: Callable[[str, Any], T], given: object, info: ValidationInfo) -> T:
    return find(values.text_of(given), info.context)


def parser_of(validator: object) -> Callable[..., Any] | None:
    """Return the function with which a validator reads or looks up the text of a field; None for any other validator."""
    func = validator.func if isinstance(validator, PlainValidator) else None
    return func.args[0] if isinstance(func, partial) else None


def check_languages(translations: Iterable[str], info: ValidationInfo) -> None:
    """Raise for what stands under `translations:` in a language that no label carries."""
    known = info.context.languages if info.context else ()
    for name in translations:
        if name not in known:
            remedy = f"Write one of these: {', '.join(known)}.{did_you_mean(name, known)}"
            wrong = f'"{name}" is not a language that labels can carry here.'
            raise TextError("word-unknown", wrong, remedy, at=("translations", name), at_key=True)


def _not_empty(items: Any) -> Any:
    if not items:
        raise TextError("list-empty", "Nothing is listed here.", "List at least one.")
    return items


def as_written(placed: PlacedData) -> str:
    """Return a text as it was written, in one line."""
    return " ".join(str(placed.data).split())


def one_as_list(given: object) -> object:
    """Return one text as a list of it."""
    return [given] if isinstance(given, str) else given


NOT_EMPTY = AfterValidator(_not_empty)

Text = Annotated[str, reads(str)]
# A name learns where it is written.
Named = Annotated[Name, reads(Name)]
Reason = Annotated[Acceptance, reads(Acceptance)]
Texts = tuple[Text, ...]
OneOrMore = Annotated[Texts, NOT_EMPTY, BeforeValidator(one_as_list)]
Stops = Annotated[bool, reads(values.either_of("stop", "caution"))]
YesOrNo = Annotated[bool, reads(values.parse_yes_or_no)]
Date = Annotated[datetime, reads(values.parse_date)]
DateOrDates = Annotated[tuple[Date, ...], NOT_EMPTY, BeforeValidator(one_as_list)]
Day = Annotated[date, reads(values.parse_day)]
DayOrDays = Annotated[tuple[Day, ...], NOT_EMPTY, BeforeValidator(one_as_list)]
Currency = Annotated[str, reads(values.parse_currency)]
WebAddress = Annotated[str, reads(values.parse_web_address)]
MailAddress = Annotated[str, reads(values.parse_mail_address)]

AllergenFamilies = tuple[Annotated[AllergenFamily, reads(values.member_of(AllergenFamily))], ...]

SourceField = Annotated[Source, looks_up(values.find_source)]
LanguageField = Annotated[str, looks_up(values.find_language)]
RegionField = Annotated[str, looks_up(values.find_region)]
ProductField = Annotated[Product, looks_up(values.find_product)]

Whole = Annotated[int, reads(numbers.parse_whole)]
WholeAboveZero = Annotated[int, reads(numbers.parse_whole_above_zero)]
People = Annotated[int, reads(numbers.parse_people)]
PeopleAboveZero = Annotated[int, reads(numbers.parse_people_above_zero)]
Number = Annotated[Fraction, reads(numbers.parse_number)]
PositiveNumber = Annotated[Fraction, reads(numbers.parse_positive)]
Price = Annotated[Fraction, reads(numbers.parse_price)]

AmountField = Annotated[Amount, reads(amounts.parse_amount)]
Weight = Annotated[Mass, reads(amounts.parse_mass)]
WeightOrNone = Annotated[Mass, reads(lambda text: amounts.parse_mass(text, zero=True))]
Division = Annotated[tuple[Mass, WeighingUnit], reads(amounts.parse_division)]
Capacity = Annotated[Volume, reads(amounts.parse_volume)]
Heat = Annotated[Temperature, reads(amounts.parse_heat)]
Time = Annotated[Duration, reads(amounts.parse_duration)]
DensityField = Annotated[Density, reads(amounts.parse_density)]
Percent = Annotated[Share, reads(amounts.parse_share)]
PartOfWhole = Annotated[Share, reads(amounts.parse_part_of_whole)]
Purity = Annotated[StatedPurity, reads(parse_purity)]
Strength = Annotated[StatedPurity, reads(parse_strength)]
Superfat = Annotated[Share, reads(amounts.parse_superfat)]
Things = Annotated[Count, reads(amounts.parse_count)]
ThingsOrNone = Annotated[Count, reads(lambda text: amounts.parse_count(text, zero=True))]
LengthField = Annotated[Length, reads(amounts.parse_length)]
Gap = Annotated[Length, reads(lambda text: amounts.parse_length(text, zero=True))]
Shift = Annotated[Length, reads(lambda text: amounts.parse_length(text, zero=True, below_zero=True))]
Inside = Annotated[Box, reads(amounts.parse_box)]
