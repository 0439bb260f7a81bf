"""Amounts as people write them: text in, exact quantity or finding out."""

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.recipe.quantity import Count, Density, Drops, Duration, Mass, Parts, Rest, Share, Temperature, Volume
from builder.read.recipe.home_sizes import parse_home_size
from builder.read.text.text_error import AmountError
from builder.read.values.amounts import (
    parse_amount,
    parse_box,
    parse_count,
    parse_density,
    parse_division,
    parse_duration,
    parse_mass,
    parse_part_of_whole,
    parse_share,
    parse_superfat,
    parse_temperature,
    parse_volume,
)
from builder.read.values.numbers import parse_number, parse_price, parse_whole

OUNCE, FLUID_OUNCE = Fraction("28.349523125"), Fraction("29.5735295625")

RECIPE_AMOUNTS = [
    ("250g", Mass(Fraction(250))),
    ("8.8 OZ.", Mass(Fraction("8.8") * OUNCE)),
    ("2 kilos", Mass(Fraction(2000))),
    ("4 fl. oz.", Volume(4 * FLUID_OUNCE)),
    ("1 ½ tsp", Volume(Fraction(15, 2))),
    ("⅓ cup", Volume(Fraction(80))),
    ("1\u20442 cup", Volume(Fraction(120))),
    ("12 drops", Drops(Fraction(12))),
    ("3 %", Share(Fraction(3, 100))),
    ("3%", Share(Fraction(3, 100))),
    ("0.05 percent", Share(Fraction(1, 2000))),
    ("2 parts", Parts(Fraction(2))),
    ("1 part", Parts(Fraction(1))),
    ("rest", Rest()),
    ("  Rest ", Rest()),
    ("3\u00a0g", Mass(Fraction(3))),
]

OTHER_AMOUNTS = [
    (parse_mass, "4 oz", Mass(4 * OUNCE)),
    (parse_division, "0.01 g", (Mass(Fraction(1, 100)), "g")),
    (parse_division, "0.05 oz", (Mass(Fraction(1, 20) * OUNCE), "oz")),
    (parse_division, "1 lb", (Mass(16 * OUNCE), "oz")),
    (parse_volume, "4 fl oz", Volume(4 * FLUID_OUNCE)),
    (parse_temperature, "70 degC", Temperature(Fraction(70))),
    (parse_temperature, "70°C", Temperature(Fraction(70))),
    (parse_temperature, "70 ºC", Temperature(Fraction(70))),
    (parse_temperature, "70 ℃", Temperature(Fraction(70))),
    (parse_temperature, "160 degF", Temperature(Fraction(640, 9))),
    (parse_temperature, "\u221218 degC", Temperature(Fraction(-18))),
    (parse_temperature, "0 degC", Temperature(Fraction(0))),
    (parse_duration, "1 hour and 30 minutes", Duration(Fraction(90))),
    (parse_duration, "90 min", Duration(Fraction(90))),
    (parse_share, "120 %", Share(Fraction(6, 5))),
    (parse_part_of_whole, "100 %", Share(Fraction(1))),
    (parse_superfat, "0 %", Share(Fraction(0))),
    (parse_superfat, "-5 %", Share(Fraction(-1, 20))),
    (parse_density, "0.98 g/mL", Density(Fraction("0.98"))),
    (parse_count, "1 container", Count(1, "container")),
    (parse_count, "12 bars", Count(12, "bars")),
    (parse_number, "0.910", Fraction("0.91")),
    (parse_number, "-5", Fraction(-5)),
    (parse_price, "48.00", Fraction(48)),
    (parse_whole, "0", 0),
]

# A reader, the text, the finding, a piece of what is wrong, a piece of the remedy.
REFUSED = [
    (parse_amount, "250", "unit-missing", "no unit", '"250 g"'),
    (parse_amount, "½", "unit-missing", "no unit", '"250 g"'),
    (parse_amount, "250 gm", "unit-unknown", '"gm"', 'Did you mean "gram" or "g"?'),
    (parse_amount, "1 tps", "unit-unknown", '"tps"', '"tsp"'),
    (parse_amount, "1e3 g", "unit-unknown", '"e"', "250 g"),
    (parse_amount, "2 T", "unit-unknown", '"T"', "250 g"),
    (parse_amount, "a pinch", "amount-unreadable", "does not begin with a number", '"rest"'),
    (parse_amount, "", "amount-unreadable", "does not begin with a number", "250 g"),
    (parse_amount, "1-2 cups", "amount-unreadable", "is a range", "one amount"),
    (parse_amount, "2 to 3 g", "amount-unreadable", "is a range", "one amount"),
    (parse_amount, "1-1/2 cups", "amount-unreadable", "is a range", '"1 1/2"'),
    (parse_amount, "8.8 oz (250 g)", "amount-unreadable", "More than an amount", "one unit"),
    (parse_amount, "250 g 8.8 oz", "amount-unreadable", "two amounts", "worked out"),
    (parse_amount, "1 lb 16 oz", "amount-unreadable", "not less than 1 lb", "one amount"),
    (parse_amount, "3 % 2 g", "amount-unreadable", "more than one amount", "worked out"),
    (parse_amount, "70 degC", "unit-of-another-kind", "a temperature", '"250 g", "3 %", "120 mL", "2 parts" or "12 drops"'),
    (parse_amount, "12 bars", "unit-of-another-kind", "a number of things", '"250 g"'),
    (parse_amount, "2,5 g", "number-unreadable", "comma", '"2.5"'),
    (parse_amount, "1,500 g", "number-unreadable", "comma", '"1500"'),
    (parse_amount, "1 500 g", "number-unreadable", '"1 500"', '"1500"'),
    (parse_amount, "1\u202f500 g", "number-unreadable", '"1 500"', '"1500"'),
    (parse_amount, "1'500 g", "number-unreadable", "1'500", '"1500"'),
    (parse_amount, "1_500 g", "number-unreadable", "1_500", '"1500"'),
    (parse_amount, ".5 g", "number-unreadable", "overlooked", '"0.5"'),
    (parse_amount, "5. g", "number-unreadable", '"5."', "decimal point"),
    (parse_amount, "1/0 cup", "number-unreadable", '"1/0"', "fraction"),
    (parse_amount, "1 3/2 cups", "number-unreadable", '"1 3/2"', '"1 1/2"'),
    (parse_amount, "1/2/3 g", "number-unreadable", '"1/2/3"', "fraction"),
    (parse_amount, "1.5½ g", "number-unreadable", "1.5 1/2", "fraction"),
    (parse_amount, "9" * 5000 + " g", "number-unreadable", "…", "fewer figures"),
    (parse_amount, "٣ g", "amount-unreadable", "does not begin", "250 g"),
    (parse_amount, "-5 g", "amount-not-positive", "below zero", "above zero"),
    (parse_amount, "\u22125 g", "amount-not-positive", "below zero", "above zero"),
    (parse_amount, "0 g", "amount-not-positive", "nothing", "leave the line out"),
    (parse_mass, "4 fl oz", "unit-of-another-kind", "a volume", "a weight"),
    (parse_mass, "70 degC", "unit-of-another-kind", '"degC"', "a weight"),
    (parse_volume, "4 oz", "ounces-for-a-volume", "is a weight", '"4 fl oz"'),
    (parse_volume, "1 1/2 ounces", "ounces-for-a-volume", "is a weight", '"1 1/2 fl oz"'),
    (parse_volume, "4 lb", "unit-of-another-kind", "a weight", "a volume"),
    (parse_temperature, "70", "unit-missing", "no unit", "degC"),
    (parse_temperature, "70 K", "unit-unknown", '"K"', "degC"),
    (parse_duration, "1h30", "unit-missing", "no unit", "min"),
    (parse_duration, "1 h 90 min", "amount-unreadable", "not less than 1 h", "one amount"),
    (parse_duration, "0 min", "amount-not-positive", "nothing", "above zero"),
    (parse_part_of_whole, "120 %", "share-over-whole", "more than the whole", "100 %"),
    (parse_count, "1.5 bars", "number-unreadable", "whole number", "12 bars"),
    (parse_count, "2", "unit-missing", "no unit", "2 containers"),
    (parse_count, "2 cups", "unit-of-another-kind", "a volume", "things"),
    (parse_density, "0.98", "unit-missing", "no unit", "g/mL"),
    (parse_box, "30 x 8 cm", "amount-unreadable", "three edges", "30 cm x 8 cm x 7 cm"),
    (parse_box, "30 cm x 8 cm x 7", "unit-missing", "no unit", "cm"),
    (parse_box, "30 g x 8 cm x 7 cm", "unit-of-another-kind", "a weight", "a length"),
    (parse_number, "12 g", "number-unreadable", "not a number", '"12"'),
    (parse_price, "-1", "amount-not-positive", "below zero", "48.00"),
    (parse_whole, "twelve", "number-unreadable", "not a whole number", '"12"'),
    (parse_whole, "1.5", "number-unreadable", "not a whole number", '"12"'),
    (parse_home_size, "3 cups", "unit-of-another-kind", "a volume", "500 g of oils"),
    (parse_home_size, "large", "amount-unreadable", "does not begin", "4 containers"),
]


@pytest.mark.parametrize(("text", "amount"), RECIPE_AMOUNTS)
def test_an_amount_of_a_recipe_is_read_exactly(text: str, amount: Drops | Mass | Parts | Rest | Share | Volume) -> None:
    assert parse_amount(text) == amount


@pytest.mark.parametrize(("parse", "text", "amount"), OTHER_AMOUNTS)
def test_other_amounts_are_read_exactly(
    parse: Callable[..., object],
    text: str,
    amount: Count | Density | Duration | Mass | Share | Temperature | Volume | int | Fraction | tuple[Mass, str],
) -> None:
    assert parse(text) == amount


@pytest.mark.parametrize(("parse", "text", "name", "wrong", "remedy"), REFUSED)
def test_what_is_no_amount_explains_itself(parse: Callable[..., object], text: str, name: str, wrong: str, remedy: str) -> None:
    with pytest.raises(AmountError) as caught:
        parse(text)
    assert caught.value.name == name
    assert wrong in caught.value.wrong
    assert remedy in caught.value.remedy
    assert len(caught.value.wrong) < 300


@pytest.mark.parametrize(
    "text", ["30 cm x 8 cm x 7 cm", "30 cm × 8 cm × 7 cm", "30 x 8 x 7 cm", "30x8x7 cm", "300 mm by 80 mm by 70 mm", "30 cm X 80 mm x 7 cm"]
)
def test_a_mould_may_be_written_in_several_ways(text: str) -> None:
    assert parse_box(text).volume == Volume(Fraction(1680))


def test_a_mould_in_inches_is_exact() -> None:
    assert parse_box("12 in by 3 1/2 in by 2 3/4 in").volume == Volume(Fraction("115.5") * Fraction("16.387064"))


def test_zero_is_read_where_it_is_allowed() -> None:
    assert parse_mass("0 g", zero=True) == Mass(Fraction(0))
    assert parse_count("0 containers", zero=True) == Count(0, "containers")


def test_a_home_size_keeps_what_was_written() -> None:
    assert (parse_home_size("250 g").total, parse_home_size("250 g").written) == (Mass(Fraction(250)), "250 g")
    assert parse_home_size("500 g of oils").oils == Mass(Fraction(500))
    assert parse_home_size("4 containers").containers == 4


@given(st.text(max_size=30))
def test_any_text_is_either_read_or_refused(text: str) -> None:
    for parse in (parse_amount, parse_mass, parse_volume, parse_temperature, parse_duration, parse_box, parse_count, parse_home_size):
        try:
            parse(text)
        except AmountError as error:
            assert error.wrong and error.remedy


@given(st.fractions(min_value=0, max_value=100_000, max_denominator=64).filter(bool))
def test_a_mixed_number_is_read_back(number: Fraction) -> None:
    whole, part = divmod(number, 1)
    text = " ".join(str(piece) for piece in (whole, part) if piece)
    assert parse_amount(f"{text} g") == Mass(number)
