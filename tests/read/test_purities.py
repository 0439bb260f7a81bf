"""The purity of an alkali as people write it."""

from fractions import Fraction

import pytest

from builder.model.recipe.recipe import StatedPurity
from builder.read.lye.purities import parse_purity
from builder.read.text.text_error import TextError
from tests.making import Number


def percent(*numbers: Number) -> StatedPurity:
    return StatedPurity(*(Fraction(str(number)) / 100 for number in numbers))


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("98 %", percent(98, 98, 98)),
        ("97 to 100 %", percent("98.5", 97, 100)),
        ("99 %, 97 to 100 %", percent(99, 97, 100)),
        ("99.2 %, at least 97 %", percent("99.2", 97, 100)),
        ("97 - 99 %", percent(98, 97, 99)),
    ],
)
def test_a_figure_a_range_or_both(text: str, read: StatedPurity) -> None:
    assert parse_purity(text) == read


@pytest.mark.parametrize(
    ("text", "finding"),
    [
        ("99,5 %", "number-unreadable"),
        ("96 %, 97 to 100 %", "purity-outside-its-range"),
        ("99 %, 30 to 100 %", "purity-out-of-range"),
        ("99 %, 100 to 97 %", "figure-range-upside-down"),
        ("99 to 101 %", "share-over-whole"),
        ("99", "unit-missing"),
        ("pure", "amount-unreadable"),
    ],
)
def test_what_is_no_purity(text: str, finding: str) -> None:
    with pytest.raises(TextError) as error:
        parse_purity(text)
    assert error.value.name == finding
