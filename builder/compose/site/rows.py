"""Dates of several classes as rows: of what, how, from what age, for how much, and what to do about each."""

from collections.abc import Iterable

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.booking_words import view_to_book
from builder.compose.dates.dates import month_and_year
from builder.compose.dates.time_words import WAYS
from builder.compose.edition import Edition
from builder.compose.site.choices import Offered, Question, tokens_of
from builder.compose.teaching.class_facts import price, youngest
from builder.compose.views.site.dates import DateRow
from builder.compose.views.site.dates_page import MonthView
from builder.words.say import say


def date_row(edition: Edition, one: Offered, here: Address, asked: Iterable[Question] = ()) -> DateRow:
    """Return the row of a date."""
    assert one.date is not None
    studio_class = one.studio_class
    return DateRow(
        date=view_to_book(edition, studio_class, one.date),
        address=here.link_to(addresses.class_page(studio_class.key)),
        title=studio_class.title,
        format=say(WAYS[one.plan.format]),
        format_key=one.plan.format.key,
        youngest=youngest(studio_class),
        price=price(edition, studio_class),
        tokens=" ".join(tokens_of(asked, one)),
    )


def by_month(edition: Edition, dates: Iterable[Offered], here: Address, asked: Iterable[Question] = ()) -> tuple[MonthView, ...]:
    """Return dates in order under their months, each month with how many of its dates have room."""
    asked, months = tuple(asked), dict[str, list[Offered]]()
    for one in dates:
        assert one.date is not None
        months.setdefault(f"{one.date.on:%Y-%m}", []).append(one)
    return tuple(
        MonthView(
            key=f"in-{key}",
            name=month_and_year(ones[0].date.on.date(), edition.locale) if ones[0].date else "",
            room=str(sum(one.has_room for one in ones)),
            rows=tuple(date_row(edition, one, here, asked) for one in ones),
        )
        for key, ones in months.items()
    )
