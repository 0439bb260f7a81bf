"""The dates as a news feed (RFC 4287): one entry for each coming date, new when it is set, moved or cancelled."""

from datetime import date
from xml.etree import ElementTree

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.shown import shown
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.machines.absolute import absolute
from builder.compose.machines.calendar import uid_of
from builder.compose.machines.xml import as_text
from builder.compose.teaching.class_facts import coming_dates, price, view_date
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.studio import Studio
from builder.words.say import say

_ATOM = "http://www.w3.org/2005/Atom"


def compose_feed(edition: Edition, studio: Studio, here: Address) -> Composed | None:
    """Give the feed, the newest first; None where the studio has no public address, or no date."""
    home = absolute(edition, addresses.CATALOGUE)
    found = [(studio_class, date) for studio_class, _ in edition.classes for date in coming_dates(edition, studio_class)]
    if not home or not found:
        return None
    told = {id(date): shown(edition, studio_class, date).told or edition.today for studio_class, date in found}
    found.sort(key=lambda one: (one[1].on, one[0].key))
    found.sort(key=lambda one: told[id(one[1])], reverse=True)
    title = say("Classes at {studio}", studio=studio.profile.name)
    feed = ElementTree.Element("feed", {"xmlns": _ATOM, "xml:lang": edition.language})
    _text(feed, "title", title)
    _text(feed, "id", home)
    _text(feed, "updated", _midnight(max(told.values())))
    _text(ElementTree.SubElement(feed, "author"), "name", studio.profile.name)
    _link(feed, "self", absolute(edition, here), "application/atom+xml")
    _link(feed, "alternate", home, "text/html")
    for studio_class, one in found:
        _entry(feed, edition, studio_class, one, told[id(one)])
    return Composed(title, as_text(feed))


def _entry(feed: ElementTree.Element, edition: Edition, studio_class: StudioClass, one: ClassDate, told: date) -> None:
    entry = ElementTree.SubElement(feed, "entry")
    view = view_date(edition, studio_class, one)
    what = f"{studio_class.title}, {view.day}, {view.time}"
    _text(entry, "title", what if one.takes_place else say("Cancelled: {what}", what=what))
    _text(entry, "id", f"urn:uuid:{uid_of(edition, shown(edition, studio_class, one))}")
    _text(entry, "updated", _midnight(told))
    _link(entry, "alternate", absolute(edition, addresses.class_page(studio_class.key)), "text/html")
    note = f" {view.note}." if view.note else ""
    _text(entry, "summary", f"{studio_class.summary}{note} {price(edition, studio_class)}.")


def _text(parent: ElementTree.Element, name: str, text: str) -> None:
    ElementTree.SubElement(parent, name).text = text


def _link(parent: ElementTree.Element, rel: str, href: str, kind: str) -> None:
    ElementTree.SubElement(parent, "link", {"rel": rel, "href": href, "type": kind})


def _midnight(day: date) -> str:
    return f"{day.isoformat()}T00:00:00Z"
