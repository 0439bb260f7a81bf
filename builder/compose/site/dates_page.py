"""The page of all dates, and the pages of what answers to one value."""

from collections.abc import Iterable

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame, with_style
from builder.compose.site.choices import Offered, Question, Value, dates_by_answer, offered, questions
from builder.compose.site.filter_rules import near_ones
from builder.compose.site.rows import by_month, date_row
from builder.compose.views.frame import Link
from builder.compose.views.site.dates_page import ChoiceView, DatesView, NearView, OptionView, QuestionView
from builder.model.studio import Studio
from builder.words.say import say, say_count

_NEAREST = 3


def compose_dates(edition: Edition, studio: Studio, here: Address) -> Composed:
    """Make the page of all dates."""
    title = say("Dates")
    around = frame(edition, here, title, say("All dates at {studio}, by month.", studio=studio.profile.name))
    dates, asked = offered(edition), questions(edition)
    around = with_style(around, here, addresses.FILTER) if asked else around
    view = DatesView(
        frame=around,
        title=title,
        lead=_how_many(dates),
        months=by_month(edition, dates, here, asked),
        questions=question_views(edition, asked, here),
        near=tuple(_near(edition, number, one, here) for number, one in near_ones(dates)),
        calendar=Link(here.link_to(addresses.CALENDAR), say("All dates as a calendar file")) if dates else None,
    )
    return Composed(around.title, view)


def _near(edition: Edition, number: int, one: Offered, here: Address) -> NearView:
    row = date_row(edition, one, here)
    page = Link(f"{row.address}#{row.date.fragment}", row.title)
    return NearView(f"near-{number}", page, say("{day}, {hours}", day=row.date.day, hours=row.date.hours))


def question_views(edition: Edition, asked: Iterable[Question], here: Address) -> tuple[QuestionView, ...]:
    """Return what can be asked, each answer with its own page and how many dates are on it."""
    counts = dates_by_answer(edition)
    return tuple(QuestionView(one.key, one.words, tuple(_option(value, counts[value.key], here) for value in one.values)) for one in asked)


def _option(value: Value, count: int, here: Address) -> OptionView:
    page = addresses.choice_page(value.key)
    return OptionView(value.key, value.words, Link(here.link_to(page), value.words, page == here), str(count))


def _how_many(dates: Iterable[Offered]) -> str:
    dates = tuple(dates)
    room = sum(one.has_room for one in dates)
    count = say_count("{count}\u00a0date", "{count}\u00a0dates", len(dates))
    if not dates:
        return say("No date is set just now.")
    if not room:
        return say("{dates}; none has room just now.", dates=count)
    return say_count("{dates}; {count} has room.", "{dates}; {count} have room.", room, dates=count)


def compose_choice(edition: Edition, value: Value, here: Address) -> Composed:
    """Make the page of what answers to one value."""
    dates = offered(edition)
    found = [one for one in dates if value.matches(one)]
    classes = [plan for _, plan in edition.classes if any(one.plan is plan for one in found) or value.matches(Offered(plan, None))]
    lead = _found(found, len(classes))
    around = frame(edition, here, value.heading, f"{value.heading}: {lead}")
    links = (Link(here.link_to(addresses.class_page(plan.studio_class.key)), plan.studio_class.title) for plan in classes)
    view = ChoiceView(
        frame=around,
        title=value.heading,
        lead=lead,
        months=by_month(edition, found, here),
        classes=tuple(links),
        nearest=() if any(one.has_room for one in found) else tuple(date_row(edition, one, here) for one in _nearest(value, dates)),
        others=question_views(edition, questions(edition), here),
        calendar=Link(here.link_to(addresses.choice_calendar(value.key)), say("These dates as a calendar file")) if found else None,
        all_dates=Link(here.link_to(addresses.DATES), say("All dates, to choose by several things at once")),
    )
    return Composed(around.title, view)


def _found(found: list[Offered], classes: int) -> str:
    if not classes:
        return say("There is no such class just now.")
    many = say_count("{count}\u00a0class", "{count}\u00a0classes", classes)
    return (
        say("{classes}: {dates}", classes=many, dates=_how_many(found))
        if found
        else say("{classes}; no date is set just now.", classes=many)
    )


def _nearest(value: Value, dates: Iterable[Offered]) -> list[Offered]:
    """Return the dates with room that come nearest: those open to the youngest for an age, otherwise the soonest."""
    free = [one for one in dates if one.has_room]
    if value.key.startswith("age-"):
        lowest = min((one.studio_class.youngest for one in free), default=0)
        free = [one for one in free if one.studio_class.youngest == lowest]
    return free[:_NEAREST]
