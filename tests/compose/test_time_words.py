"""The time of a class in words and as a bar."""

from builder.compose.dates.time_words import WORDS, clock_from, common_start, format_sentence, run_rows, time_strip
from builder.compose.edition import Edition
from tests.making import sure


def test_the_format_is_said_in_minutes(edition: Edition) -> None:
    sentence = format_sentence(edition.plans[0]).replace("\u00a0", " ")
    assert sentence == "Of the 1 hour you watch for 20 minutes and work with your own hands for 40 minutes."


def test_the_bar_is_divided_by_time(edition: Edition) -> None:
    strip = time_strip(edition.plans[0], clock_from(None, "en_US"))
    assert [(segment.who, segment.left, segment.width) for segment in sure(strip).segments] == [
        ("teacher", "0%", "33.333%"),
        ("students", "33.333%", "66.667%"),
    ]
    assert "Watch the lye" in sure(strip).description


def test_the_clock_begins_with_the_class_where_all_dates_begin_alike(edition: Edition) -> None:
    sheet = edition.plans[0]
    rows = run_rows(sheet, clock_from(common_start(sheet), "en_US"), WORDS)
    assert [row.clock for row in rows] == ["10:00\u00a0AM", "10:20\u00a0AM"]
    assert [row.clock for row in run_rows(sheet, clock_from(None, "en_US"), WORDS)] == ["0:00", "0:20"]
