"""What visitors choose classes and dates by: how it is taught, what is made, the age of the youngest, the price, month, weekday, room.

Every value is a word of its own, with a page of its own and a filter on the lists; what a date or a class answers to are its tokens. Ages
and prices are asked as people ask them: an age is met by every class that is open from it or earlier, a price by every class that costs
no more. Ages and prices are those at which an answer changes.

Decided: lists of classes ask nothing of dates. Why: a class with one date in March and another one with room would answer "March, with
room", and have no such date.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import partial
from gettext import NullTranslations

from builder.compose.addresses import plain_name
from builder.compose.dates import dates
from builder.compose.dates.time_words import WAYS
from builder.compose.edition import Edition
from builder.compose.teaching.class_facts import coming_dates
from builder.model.dates.studio_class import ClassDate, Format, StudioClass
from builder.model.remembered import remembered
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import message, say, say_count, spoken
from builder.words.within import within

_MOST_PRICES = 4


@dataclass(frozen=True)
class Offered:
    """One date of a class, or a class of which no date is set."""

    plan: ClassPlan
    date: ClassDate | None

    @property
    def studio_class(self) -> StudioClass:
        """Return the class."""
        return self.plan.studio_class

    @property
    def has_room(self) -> bool:
        """Tell whether a seat can be booked."""
        return self.date is not None and self.date.takes_place and self.studio_class.has_room_on(self.date)


Matches = Callable[[Offered], bool]


@dataclass(frozen=True)
class Value:
    """One answer: `key` names it in addresses and lists, `words` on a button, `heading` on its page."""

    key: str
    words: str
    heading: str
    matches: Matches


@dataclass(frozen=True)
class Question:
    """What is asked, with every answer that some class or date gives. `of_dates`: it is asked of dates alone."""

    key: str
    words: str
    values: tuple[Value, ...]
    of_dates: bool = False


@remembered(4)
def offered(edition: Edition) -> tuple[Offered, ...]:
    """Return every coming date of every class in the order of their time, those that are cancelled included."""
    found = [
        (on.on, plan.studio_class.title, Offered(plan, on))
        for _, plan in edition.classes
        for on in coming_dates(edition, plan.studio_class)
    ]
    return tuple(one for _, _, one in sorted(found, key=lambda entry: entry[:2]))


def questions(edition: Edition) -> tuple[Question, ...]:
    """Return what can be asked of this studio; a question to which all give one answer is left out."""
    return _questions(edition, spoken())


@remembered(4)
def _questions(edition: Edition, _: NullTranslations) -> tuple[Question, ...]:
    """Work them out once for the many pages of a run, in the language that is spoken."""
    found = (
        Question("how", say("How"), tuple(_ways(edition))),
        Question("what", say("What"), tuple(_products(edition))),
        Question("age", say("The youngest of you is"), tuple(_ages(edition))),
        Question("price", say("Price"), tuple(_prices(edition))),
        Question("month", say("Month"), tuple(_months(edition)), of_dates=True),
        Question("day", say("Day"), tuple(_weekdays(edition)), of_dates=True),
        Question("room", say("Room"), tuple(_room(edition)), of_dates=True),
    )
    return tuple(one for one in found if len(one.values) > (one.key not in ("age", "room")))


def values(edition: Edition) -> tuple[Value, ...]:
    """Return every answer that has a page."""
    return tuple(value for question in questions(edition) for value in question.values)


@remembered(4)
def dates_by_answer(edition: Edition) -> Mapping[str, int]:
    """Return how many dates answer to each value, by its key."""
    return {value.key: sum(value.matches(one) for one in offered(edition)) for value in values(edition)}


def tokens_of(asked: Iterable[Question], one: Offered) -> tuple[str, ...]:
    """Return the keys of the answers that a date or a class gives."""
    return tuple(value.key for question in asked for value in question.values if value.matches(one))


_HEADINGS = {
    Format.DEMO: message("Classes in which you watch"),
    Format.HANDS_ON: message("Hands-on classes"),
    Format.DEMO_WITH_HANDS_ON_PARTS: message("Classes in which you watch some of it and do the rest"),
}


def key_of_way(way: Format) -> str:
    """Return the key of the answer that is a way of teaching."""
    return f"how-{plain_name(way)}"


def _ways(edition: Edition) -> Iterator[Value]:
    for way in Format:
        if any(plan.format is way for _, plan in edition.classes):
            yield Value(key_of_way(way), say(WAYS[way]), say(_HEADINGS[way]), partial(_is_taught, way))


def _products(edition: Edition) -> Iterator[Value]:
    identities = {made.batch.product.identity for _, plan in edition.classes for made in plan.made}
    for identity in sorted(identities):
        heading = say("Classes that make {what}", what=within(say(identity)))
        yield Value(f"what-{plain_name(identity)}", say(identity), heading, partial(_makes, identity))


def _is_taught(way: Format, one: Offered) -> bool:
    return one.plan.format is way


def _makes(identity: str, one: Offered) -> bool:
    return any(made.batch.product.identity == identity for made in one.plan.made)


def _ages(edition: Edition) -> Iterator[Value]:
    ages = sorted({studio_class.youngest for studio_class, _ in edition.classes})
    if not ages:
        return
    below = say_count("under {count}", "under {count}", ages[0])
    yield Value(f"age-under-{ages[0]}", below, say_count("For those under {count}", "For those under {count}", ages[0]), lambda _: False)
    for age, following in zip(ages, [*ages[1:], None], strict=True):
        last = following - 1 if following else None
        if last is None:
            words = say_count("{count} or older", "{count} or older", age)
        else:
            words = str(age) if last == age else say("{first} to {last}", first=age, last=last)
        heading = say("For those who are {age}", age=words)
        yield Value(f"age-{age}", words, heading, partial(_is_open_from, age))


def _is_open_from(age: int, one: Offered) -> bool:
    return one.studio_class.youngest <= age


def _prices(edition: Edition) -> Iterator[Value]:
    prices = sorted({studio_class.price for studio_class, _ in edition.classes})
    # The highest leaves nothing out.
    steps = prices[:-1]
    if len(steps) > _MOST_PRICES:
        steps = [steps[round(Fraction(number * (len(steps) - 1), _MOST_PRICES - 1))] for number in range(_MOST_PRICES)]
    for price in steps:
        yield _price(edition, price)


def _price(edition: Edition, price: Fraction) -> Value:
    written = dates.price(price, edition.studio.profile.currency, edition.locale)
    words = say("up to {price}", price=written) if price else written
    heading = say("Classes for up to {price}", price=written) if price else say("Classes that are free")
    return Value(f"price-{plain_name(str(price))}", words, heading, partial(_costs_at_most, price))


def _costs_at_most(price: Fraction, one: Offered) -> bool:
    return one.studio_class.price <= price


def _months(edition: Edition) -> Iterator[Value]:
    for month in sorted({one.date.on.date().replace(day=1) for one in offered(edition) if one.date}):
        words = dates.month_and_year(month, edition.locale)
        heading = say("Classes in {month}", month=words)
        yield Value(f"month-{month:%Y-%m}", words, heading, partial(_is_in, month))


def _is_in(month: date, one: Offered) -> bool:
    return one.date is not None and one.date.on.date().replace(day=1) == month


def _weekdays(edition: Edition) -> Iterator[Value]:
    found = {one.date.on.isoweekday(): one.date.on.date() for one in offered(edition) if one.date}
    for number, day in sorted(found.items()):
        words = dates.weekday(day, edition.locale)
        heading = say("Classes on a {weekday}", weekday=words)
        yield Value(f"day-{number}", words, heading, partial(_is_on, number))


def _is_on(weekday: int, one: Offered) -> bool:
    return one.date is not None and one.date.on.isoweekday() == weekday


def _room(edition: Edition) -> Iterator[Value]:
    if any(one.has_room for one in offered(edition)):
        yield Value("room-left", say("with room"), say("Dates with room"), lambda one: one.has_room)
