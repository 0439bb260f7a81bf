"""How a seat is booked: what to do for each date, on what terms, and where it is."""

from dataclasses import replace
from datetime import date as day
from datetime import timedelta
from urllib.parse import quote

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.dates import long_date, plain_date
from builder.compose.edition import Edition
from builder.compose.punctuation import labelled
from builder.compose.recipe.wording import sentence
from builder.compose.teaching.class_facts import coming_dates, view_date, youngest
from builder.compose.views.frame import Link
from builder.compose.views.site.class_page import BookingView
from builder.compose.views.site.dates import DateView
from builder.model.dates.booking import Booking, Venue
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.teaching.supervision import ADULT
from builder.words.outward import outward
from builder.words.say import say


def dates_to_book(edition: Edition, studio_class: StudioClass) -> tuple[DateView, ...]:
    """Return the coming dates of a class, each with what to do about it."""
    return tuple(view_to_book(edition, studio_class, date) for date in coming_dates(edition, studio_class))


def view_to_book(edition: Edition, studio_class: StudioClass, date: ClassDate) -> DateView:
    """Return one date with what to do about it."""
    view = view_date(edition, studio_class, date)
    goes_on = say("{class_title}, {day}, {time}", class_title=studio_class.title, day=view.day, time=view.time)
    action = _action(edition, studio_class, date, view)
    return replace(view, action=action, goes_on=goes_on, until=_until(edition, studio_class, date))


def booking_view(edition: Edition, studio_class: StudioClass, here: Address) -> BookingView:
    """Return the terms of a class, and where it is; what the studio has not said is left out.

    Who comes with an adult stands beside the least age (`who_may_come`).
    """
    terms = terms_of(edition, studio_class)
    venue = edition.studio.profile.venue
    coming = coming_dates(edition, studio_class)
    calendar = here.link_to(addresses.class_calendar(studio_class.key))
    told = any(date.takes_place for date in coming)
    return BookingView(
        facts=terms_facts(replace(terms, with_an_adult_under=None, children=terms.children if studio_class.youngest < ADULT else "")),
        as_of=as_of(edition) if told else "",
        place=venue.lines if venue else (),
        map=Link(outward(venue.map), say("Map")) if venue and venue.map else None,
        visit=visit_facts(venue) if venue else (),
        calendar=Link(calendar, say("These dates as a calendar file")) if coming else None,
    )


def terms_facts(terms: Booking) -> tuple[tuple[str, str], ...]:
    """Return terms, each with its name; what is not said is left out."""
    age = terms.with_an_adult_under
    alone = say("Under {age} with an adult.", age=age) if age else ""
    facts = (
        (say("Children"), " ".join(text for text in (alone, terms.children) if text)),
        (say("Includes"), terms.includes),
        (say("Payment"), terms.payment),
        (say("If you cannot come"), terms.refunds),
    )
    return tuple((name, text) for name, text in facts if text)


def who_may_come(edition: Edition, studio_class: StudioClass) -> str:
    """Return in words from what age a class may be taken, and below which with an adult; not that where all who may come are older."""
    age = terms_of(edition, studio_class).with_an_adult_under
    alone = sentence(youngest(studio_class))
    if age is None or age <= studio_class.youngest:
        return alone
    return say("{from_age}, under {age} with an adult", from_age=alone, age=age)


def as_of(edition: Edition) -> str:
    """Return in words of which day the seats are."""
    return say("Seats as of {day}.", day=plain_date(edition.today, edition.locale))


def terms_of(edition: Edition, studio_class: StudioClass) -> Booking:
    """Return how a class is booked: what it says itself, and else what the studio says."""
    return studio_class.booking.over(edition.studio.profile.booking)


def last_day_to_book(edition: Edition, studio_class: StudioClass, date: ClassDate) -> day | None:
    """Return until when a seat can be booked; None where there is none to book, or nothing is said of it."""
    ends = terms_of(edition, studio_class).until
    if ends is None or not date.takes_place or not studio_class.has_room_on(date):
        return None
    return (date.on - timedelta(minutes=float(ends.minutes))).date()


def _until(edition: Edition, studio_class: StudioClass, date: ClassDate) -> str:
    last = last_day_to_book(edition, studio_class, date)
    return say("Book until {day}", day=long_date(last, edition.locale)) if last else ""


def _action(edition: Edition, studio_class: StudioClass, date: ClassDate, view: DateView) -> Link | None:
    """Return the studio's own link for a date with room, or else a mail that is filled in; nothing to do for a cancelled one."""
    if not date.takes_place:
        return None
    has_room = studio_class.has_room_on(date)
    link = date.link or terms_of(edition, studio_class).link
    if has_room and link:
        return Link(outward(link), say("Book"))
    mail = edition.studio.profile.contact.get("email")
    if not mail:
        return None
    words = say("Ask for a seat") if has_room else say("Join the waiting list")
    subject = labelled(words, f"{studio_class.title}, {view.day}, {view.time}").replace("\u00a0", " ")
    return Link(outward(f"mailto:{mail}?subject={quote(subject, safe='')}"), words)


def visit_facts(venue: Venue) -> tuple[tuple[str, str], ...]:
    """Return what visitors have to know, each with its name; what the studio has not said is left out."""
    facts = (
        (say("Getting here"), venue.getting_here),
        (say("Access"), venue.access),
        (say("Parking"), venue.parking),
    )
    return tuple((name, text) for name, text in facts if text)
