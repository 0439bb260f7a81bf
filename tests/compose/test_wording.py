"""Amounts as people read them."""

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.compose.recipe import wording
from builder.compose.recipe.wording import NBSP
from builder.model.label.messages import AmericanEnglish
from builder.model.recipe.quantity import Temperature
from builder.words.say import speaking
from builder.words.within import spelled
from tests.making import grams, scale

OUNCE = "28.349523125"


def plain(text: str) -> str:
    """Return a text with ordinary spaces, having made sure that none of its numbers can part from its unit."""
    assert " g" not in text
    assert " oz" not in text
    return text.replace(NBSP, " ")


@pytest.mark.parametrize(
    ("mass", "division", "written"),
    [("250", "1", "250 g"), ("250", "0.1", "250.0 g"), ("1.5", "0.01", "1.50 g"), ("1250", "1", "1250 g"), ("12500", "1", "12 500 g")],
)
def test_a_weighing_shows_the_digits_of_its_scale(mass: str, division: str, written: str) -> None:
    assert plain(wording.amount(grams(mass), [scale(division)], "g")) == written


@pytest.mark.parametrize(("inside", "begun"), [("spatula", "Spatula"), ("pH strips", "pH strips"), ("a pH strip", "A pH strip"), ("", "")])
def test_a_text_begins_with_a_capital_unless_its_first_word_has_one_further_on(inside: str, begun: str) -> None:
    assert wording.sentence(inside) == begun


def test_ounces_show_the_digits_of_their_scale() -> None:
    ounce_scale = scale("0.05", unit="oz", per_unit=OUNCE)
    assert plain(wording.amount(grams(OUNCE) * 4, [ounce_scale], "oz")) == "4.00 oz"


def test_what_is_weighed_on_two_scales_shows_the_finer_digits() -> None:
    assert plain(wording.amount(grams("251.25"), [scale("1"), scale("0.01")], "g")) == "251.25 g"


@pytest.mark.parametrize(
    ("value", "places", "written"), [("0.005", 2, "0.01"), ("-0.005", 2, "\u22120.01"), ("-0.001", 2, "0.00"), ("2.5", 0, "3")]
)
def test_a_half_is_rounded_away_from_zero(value: str, places: int, written: str) -> None:
    assert wording.number(Fraction(value), places) == written


# 113 g are 3.98596 oz: the figure printed is cut, as 16 CFR 500.27 cuts its own examples.
def test_ounces_converted_from_grams_are_never_rounded_up() -> None:
    assert plain(wording.grams_and_ounces(grams(113))) == "113 g (3.98 oz)"


@given(st.integers(1, 200_000).map(lambda tenths: Fraction(tenths, 10)))
def test_ounces_beside_grams_lose_less_than_the_last_figure_that_is_printed(weight: Fraction) -> None:
    """Accuracy is neither added nor lost: 16 CFR 500.19 and the factor of NIST SP 811, of which the figure printed is the cut."""
    # From ten thousand on a space parts the thousands.
    written = re.sub(r"(?<=\d) (?=\d)", "", plain(wording.grams_and_ounces(grams(weight))))
    printed = re.fullmatch(r"([\d.]+) g \(([\d.]+) oz\)", written)
    assert printed and Fraction(printed[1]) == weight
    assert 0 <= weight / Fraction(OUNCE) - Fraction(printed[2]) < Fraction(1, 100)


def test_percent_and_temperature() -> None:
    assert wording.percent(Fraction(1, 200)) == "0.5%"
    assert wording.percent(Fraction(1, 3)) == "33.33%"
    assert wording.temperature(Temperature(Fraction(70))) == f"70{NBSP}°C (158{NBSP}°F)"


@pytest.mark.parametrize(
    ("minutes", "short", "long"),
    [(90, "1 h 30 min", "1 hour 30 minutes"), (60, "1 h", "1 hour"), (1, "1 min", "1 minute"), (0, "0 min", "0 minutes")],
)
def test_durations(minutes: int, short: str, long: str) -> None:
    assert wording.short_duration(minutes).replace(NBSP, " ") == short
    assert wording.duration(minutes).replace(NBSP, " ") == long


def test_lists_in_a_sentence() -> None:
    assert [wording.listed(["a", "b", "c"][:count]) for count in range(4)] == ["", "a", "a and b", "a, b and c"]


def test_a_number_and_its_unit_stay_together_in_written_text() -> None:
    assert wording.keep_together("<p>Cool to 40 °C for 5 min, 3 jars.</p>") == f"<p>Cool to 40{NBSP}°C for 5{NBSP}min, 3 jars.</p>"
    assert wording.keep_together("4 fl oz bottle, 8 flat tins") == f"4{NBSP}fl{NBSP}oz bottle, 8 flat tins"


def test_a_name_that_the_us_spells_otherwise_stands_small_inside_a_sentence_too() -> None:
    with speaking(AmericanEnglish()):
        assert wording.within(spelled("Peppermint flavour oil", "flavour")) == "peppermint flavor oil"
        assert wording.within(spelled("Dead Sea grey clay", "clay")) == "Dead Sea gray clay"
