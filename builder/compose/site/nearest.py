"""What comes nearest where nothing gives every answer that is chosen: what misses one wish, else what misses two, else the next ones.

It has to be found without a program. Each question is a fieldset, and an answer bears the numbers of all that it rules out: as many
fieldsets with a chosen answer of one number as there are, so many wishes are missed. Rules ask for two and for three of them.

Decided: what misses three wishes or more is not sorted. Why: whoever gives up three wishes of seven asks another question, and the next
dates answer that as well.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.dates import month_and_year, weekday
from builder.compose.dates.time_words import WAYS
from builder.compose.edition import Edition
from builder.compose.site.choices import Offered, Question, Value, offered, tokens_of
from builder.compose.teaching.class_facts import by_next_date, price, view_date, youngest
from builder.compose.views.frame import Link
from builder.compose.views.site.dates_page import NearestView, NearView
from builder.words.listed import listed
from builder.words.say import say

# Of how many, the soonest first, a page says that they come near: every one makes it longer.
MOST = 40
_NEXT = 3


def near_dates(edition: Edition) -> tuple[Offered, ...]:
    """Return the dates that may be shown as near: those with room."""
    return tuple(one for one in offered(edition) if one.has_room)[:MOST]


def near_classes(edition: Edition) -> tuple[Offered, ...]:
    """Return the classes that may be shown as near."""
    return tuple(Offered(plan, None) for _, plan in by_next_date(edition))[:MOST]


def ruled_out(value: Value, ones: Sequence[Offered]) -> str:
    """Return the numbers of those that do not give an answer, as the list of rules knows them."""
    return " ".join(f"not-{number}" for number, one in enumerate(ones, start=1) if not value.matches(one))


def rules_of_nearest(asked: Iterable[Question], most: int) -> Iterator[str]:
    """Write the rules for lists of at most so many."""
    numbers = range(1, most + 1)
    for number in numbers:
        for level in (1, 2):
            yield f"{_missing(number, level + 1)} ~ .none-left .misses-{level} .near-{number} {{ display: none; }}"
    # A list is shown while anything in it is, and then no list of what misses more: the rules of what misses least have the last word.
    for level in (2, 1):
        some = ", ".join(f".none-left:has(.near-{number}):not(:where({_missing(number, level + 1)} ~ *))" for number in numbers)
        if some:
            yield f":is({some}) .misses-{level} {{ display: block; }}"
            yield "".join(f":is({some}) .misses-{more} {{ display: none; }} " for more in (2, 3) if more > level).rstrip()
    for question in asked:
        for value in question.values:
            yield f"form:has(#{value.key}:checked) .near li:not(.{value.key}) .but-{question.key} {{ display: inline-block; }}"


def _missing(number: int, wishes: int) -> str:
    """Return what finds a fieldset at which so many wishes are missed."""
    return " ~ ".join([f"fieldset:has(.not-{number}:checked)"] * wishes)


def view_nearest(edition: Edition, ones: Sequence[Offered], asked: Sequence[Question], here: Address) -> NearestView:
    """Return what may be shown as near."""
    return NearestView(tuple(_near(edition, number, one, asked, here) for number, one in enumerate(ones, start=1)), _NEXT)


def _near(edition: Edition, number: int, one: Offered, asked: Sequence[Question], here: Address) -> NearView:
    page, when = here.link_to(addresses.class_page(one.studio_class.key)), ""
    if one.date:
        date = view_date(edition, one.studio_class, one.date)
        page, when = f"{page}#{date.fragment}", say("{day}, {hours}", day=f"{date.weekday} {date.short}", hours=date.hours)
    facts = tuple((f"but-{question.key}", _FACTS[question.key](edition, one)) for question in asked if question.key in _FACTS)
    tokens = " ".join((f"near-{number}", *tokens_of(asked, one)))
    return NearView(tokens, Link(page, one.studio_class.title), when, facts)


def _products(_: Edition, one: Offered) -> str:
    return listed(list(dict.fromkeys(say(made.batch.product.identity) for made in one.plan.made)))


def _month(edition: Edition, one: Offered) -> str:
    return month_and_year(one.date.on.date(), edition.locale) if one.date else ""


def _weekday(edition: Edition, one: Offered) -> str:
    return weekday(one.date.on.date(), edition.locale) if one.date else ""


# What answers to each question, by its key; that there is room needs no word, since nothing else is shown.
_FACTS: Mapping[str, Callable[[Edition, Offered], str]] = {
    "how": lambda _, one: say(WAYS[one.plan.format]),
    "what": _products,
    "age": lambda _, one: youngest(one.studio_class),
    "price": lambda edition, one: price(edition, one.studio_class),
    "month": _month,
    "day": _weekday,
}
