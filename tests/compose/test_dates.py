"""Dates and prices in the locale of the region."""

from datetime import date, datetime
from fractions import Fraction

import pytest

from builder.compose.dates import dates
from tests.regions import regions

DAY = date(2027, 3, 6)


def test_dates_name_the_weekday_and_the_month() -> None:
    assert dates.long_date(DAY, "en_US") == "Saturday, March 6, 2027"
    assert dates.long_date(DAY, "en_GB") in ("Saturday, 6 March 2027", "Saturday 6 March 2027")
    assert dates.plain_date(DAY, "en_GB") == "6 March 2027"


def test_a_time_holds_no_space_that_a_font_may_lack() -> None:
    assert dates.clock(datetime(2027, 3, 6, 14, 5), "en_US") == "2:05\u00a0PM"
    assert dates.clock(datetime(2027, 3, 6, 14, 5), "en_GB") == "14:05"


@pytest.mark.parametrize(
    ("amount", "currency", "locale", "written"),
    [
        ("48", "USD", "en_US", "$48"),
        ("48.5", "USD", "en_US", "$48.50"),
        ("1200", "GBP", "en_GB", "£1,200"),
        ("0", "USD", "en_US", "Free"),
        ("42", "EUR", "en_GB", "€42"),
    ],
)
def test_prices(amount: str, currency: str, locale: str, written: str) -> None:
    assert dates.price(Fraction(amount), currency, locale) == written


@pytest.mark.parametrize(("region", "locale"), [("US", "en_US"), ("EU", "en_GB"), ("UK", "en_GB"), ("Canada", "en_CA")])
def test_a_region_has_its_locale(region: str, locale: str) -> None:
    assert regions()[region].locale == locale
