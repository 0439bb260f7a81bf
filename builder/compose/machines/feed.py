"""Dates as news feeds (RFC 4287): all of them, and those that answer to one value.

A feed has one entry for each coming date, new when it is set, moved or cancelled. A date has the same identifier in every feed.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date as day
from xml.etree import ElementTree

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.shown import shown
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.machines.absolute import absolute
from builder.compose.machines.calendar import uid_of
from builder.compose.machines.xml import as_text
from builder.compose.site.choices import Offered, Value, offered
from builder.compose.teaching.class_facts import price, view_date
from builder.model.dates.published_date import PublishedDate
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.studio import Studio
from builder.words.say import say

_ATOM = "http://www.w3.org/2005/Atom"


@dataclass(frozen=True)
class _News:
    """One date as it is shown."""

    studio_class: StudioClass
    date: ClassDate
    state: PublishedDate


def compose_feed(edition: Edition, studio: Studio, here: Address) -> Composed | None:
    """Return the feed of all dates; None where the studio has no public address, or no date."""
    title = say("Classes at {studio}", studio=studio.profile.name)
    return _composed(edition, here, title, addresses.HOME, offered(edition))


def compose_choice_feed(edition: Edition, value: Value, here: Address) -> Composed | None:
    """Return the feed of the dates that answer to one value; None where the studio has no public address, or no such date."""
    title = say("{what}, {studio}", what=value.heading, studio=edition.studio.profile.name)
    return _composed(edition, here, title, addresses.choice_page(value.key), filter(value.matches, offered(edition)))


def _composed(edition: Edition, here: Address, title: str, page: Address, dates: Iterable[Offered]) -> Composed | None:
    """Make a feed of dates that is told of on a page, the newest first."""
    home = absolute(edition, page)
    found = [_News(one.studio_class, one.date, shown(edition, one.studio_class, one.date)) for one in dates if one.date]
    if not home or not found:
        return None
    found.sort(key=lambda news: (news.date.on, news.studio_class.key))
    found.sort(key=lambda news: _told(edition, news), reverse=True)
    feed = ElementTree.Element("feed", {"xmlns": _ATOM, "xml:lang": edition.language})
    _text(feed, "title", title)
    _text(feed, "id", home)
    _text(feed, "updated", _midnight(_told(edition, found[0])))
    _text(ElementTree.SubElement(feed, "author"), "name", edition.studio.profile.name)
    _link(feed, "self", absolute(edition, here), "application/atom+xml")
    _link(feed, "alternate", home, "text/html")
    for news in found:
        _entry(feed, edition, news)
    return Composed(as_text(feed))


def _told(edition: Edition, news: _News) -> day:
    return news.state.told or edition.today


def _entry(feed: ElementTree.Element, edition: Edition, news: _News) -> None:
    studio_class, entry = news.studio_class, ElementTree.SubElement(feed, "entry")
    view = view_date(edition, studio_class, news.date)
    what = f"{studio_class.title}, {view.day}, {view.time}"
    _text(entry, "title", what if news.date.takes_place else say("Cancelled: {what}", what=what))
    _text(entry, "id", f"urn:uuid:{uid_of(edition, news.state)}")
    _text(entry, "updated", _midnight(_told(edition, news)))
    _link(entry, "alternate", absolute(edition, addresses.class_page(studio_class.key)), "text/html")
    note = f" {view.note}." if view.note else ""
    _text(entry, "summary", f"{studio_class.summary}{note} {price(edition, studio_class)}.")


def _text(parent: ElementTree.Element, name: str, text: str) -> None:
    ElementTree.SubElement(parent, name).text = text


def _link(parent: ElementTree.Element, rel: str, href: str, kind: str) -> None:
    ElementTree.SubElement(parent, "link", {"rel": rel, "href": href, "type": kind})


def _midnight(on: day) -> str:
    return f"{on.isoformat()}T00:00:00Z"
