"""The page of all dates, and the pages of what answers to one value."""

from collections.abc import Iterable, Sequence

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame, with_alternates, with_style
from builder.compose.punctuation import labelled
from builder.compose.site.choices import Offered, Question, Value, dates_by_answer, offered, questions
from builder.compose.site.nearest import near_dates, ruled_out, view_nearest
from builder.compose.site.rows import by_month, date_row
from builder.compose.views.frame import Alternate, Link
from builder.compose.views.site.dates_page import ChoiceView, DatesView, OptionView, QuestionView
from builder.model.studio import Studio
from builder.words.say import say, say_count

_NEAREST = 3


def compose_dates(edition: Edition, studio: Studio, here: Address) -> Composed:
    """Make the page of all dates."""
    title = say("Dates")
    around = frame(edition, here, title, say("All dates at {studio}, by month.", studio=studio.profile.name))
    dates, asked, near = offered(edition), questions(edition), near_dates(edition)
    around = with_style(around, here, addresses.FILTER) if asked else around
    is_public = bool(studio.profile.public_address)
    view = DatesView(
        frame=around,
        title=title,
        lead=_how_many(dates),
        months=by_month(edition, dates, here, asked),
        questions=question_views(edition, asked, here, near),
        nearest_ones=view_nearest(edition, near, asked, here),
        calendar=Link(here.link_to(addresses.CALENDAR), say("All dates as a calendar file")) if dates else None,
        news=Link(here.link_to(addresses.FEED), say("All dates as news for a feed reader")) if dates and is_public else None,
    )
    return Composed(view)


def question_views(edition: Edition, asked: Iterable[Question], here: Address, near: Sequence[Offered] = ()) -> tuple[QuestionView, ...]:
    """Return what can be asked, each answer with its own page and how many dates are on it; `near` may come nearest to a choice."""
    counts = dates_by_answer(edition)

    def option(value: Value) -> OptionView:
        page = addresses.choice_page(value.key)
        link = Link(here.link_to(page), value.words, page == here)
        return OptionView(value.key, value.words, link, str(counts[value.key]), ruled_out(value, near))

    return tuple(QuestionView(one.key, one.words, tuple(map(option, one.values))) for one in asked)


def _how_many(dates: Iterable[Offered]) -> str:
    dates = tuple(dates)
    room = sum(one.has_room for one in dates)
    count = say_count("{count}\u00a0date", "{count}\u00a0dates", len(dates))
    if not dates:
        return say("No date is set just now.")
    if not room:
        return say("{dates}, none with room just now.", dates=count)
    return say_count("{dates}, {count} with room.", "{dates}, {count} with room.", room, dates=count)


def compose_choice(edition: Edition, value: Value, here: Address) -> Composed:
    """Make the page of what answers to one value."""
    dates = offered(edition)
    found = [one for one in dates if value.matches(one)]
    classes = [plan for _, plan in edition.classes if any(one.plan is plan for one in found) or value.matches(Offered(plan, None))]
    lead = _found(found, len(classes))
    calendar = here.link_to(addresses.choice_calendar(value.key)) if found else ""
    news = here.link_to(addresses.choice_feed(value.key)) if found and edition.studio.profile.public_address else ""
    both = ((calendar, "text/calendar"), (news, "application/atom+xml"))
    own = (Alternate(address, kind, value.heading) for address, kind in both if address)
    around = with_alternates(frame(edition, here, value.heading, labelled(value.heading, lead)), *own)
    links = (Link(here.link_to(addresses.class_page(plan.studio_class.key)), plan.studio_class.title) for plan in classes)
    view = ChoiceView(
        frame=around,
        title=value.heading,
        lead=lead,
        months=by_month(edition, found, here),
        classes=tuple(links),
        nearest=() if any(one.has_room for one in found) else tuple(date_row(edition, one, here) for one in _nearest(value, dates)),
        others=question_views(edition, questions(edition), here),
        calendar=Link(calendar, say("These dates as a calendar file")) if calendar else None,
        news=Link(news, say("These dates as news for a feed reader")) if news else None,
        all_dates=Link(here.link_to(addresses.DATES), say("All dates, with several choices at once")),
    )
    return Composed(view)


def _found(found: list[Offered], classes: int) -> str:
    if not classes:
        return say("There is no such class just now.")
    many = say_count("{count}\u00a0class", "{count}\u00a0classes", classes)
    return (
        say("{classes}, {dates}", classes=many, dates=_how_many(found))
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
