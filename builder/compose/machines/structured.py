"""What a page of a class says as JSON-LD in the words of schema.org: the class, its dates and prices, and the studio.

Nothing stands here that the page does not say too; nobody who comes is named. Addresses are absolute, so that a studio without a public
address has none of this; times carry the offset of the studio's zone, so that without a zone the dates are left out.
"""

from collections.abc import Mapping
from datetime import datetime
from fractions import Fraction
from typing import Any

from builder.compose import addresses
from builder.compose.dates.booking_words import last_day_to_book
from builder.compose.dates.time_words import format_words
from builder.compose.edition import Edition
from builder.compose.machines.absolute import absolute
from builder.compose.machines.calendar import in_zone
from builder.compose.machines.json_ld import SCHEMA, Node
from builder.compose.machines.sharing import class_picture
from builder.compose.teaching.class_facts import coming_dates, date_fragment, ends
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.dates.telephone import dialled

# Below so many free seats they are few.
_FEW = 4


def class_data(edition: Edition, plan: ClassPlan) -> list[Node]:
    """Return a class with its dates, and the studio that gives it."""
    page = absolute(edition, addresses.class_page(plan.studio_class.key))
    return [_course(edition, plan, page), studio_node(edition)] if page else []


def studio_node(edition: Edition) -> Node:
    """Return the studio, with how to reach it and where it is."""
    profile, home = edition.studio.profile, absolute(edition, addresses.HOME)
    contact = {"email": profile.contact.get("email"), "telephone": _telephone(edition.studio), "description": profile.tagline}
    return _without_nothing({"@type": "Organization", "@id": f"{home}#studio", "name": profile.name, "url": home, **contact})


def _telephone(studio: Studio) -> str:
    number = studio.profile.contact.get("phone", "")
    to = dialled(studio, number) if number else ""
    return to if isinstance(to, str) else number


def _course(edition: Edition, plan: ClassPlan, page: str) -> Node:
    studio_class = plan.studio_class
    dates = coming_dates(edition, studio_class) if edition.studio.profile.time_zone else ()
    return _without_nothing(
        {
            "@type": "Course",
            "@id": f"{page}#class",
            "name": studio_class.title,
            "description": studio_class.summary,
            "url": page,
            "inLanguage": edition.language,
            "timeRequired": f"PT{round(studio_class.length.minutes)}M",
            "isAccessibleForFree": not studio_class.price,
            "typicalAgeRange": f"{studio_class.youngest}-",
            "learningResourceType": format_words(plan.format),
            "image": class_picture(edition, studio_class),
            "provider": {"@id": f"{absolute(edition, addresses.HOME)}#studio"},
            "hasCourseInstance": [_instance(edition, studio_class, date, page) for date in dates],
        }
    )


def _instance(edition: Edition, studio_class: StudioClass, date: ClassDate, page: str) -> Node:
    moved = bool(date.moved_from) and date.takes_place
    status = "EventCancelled" if not date.takes_place else "EventRescheduled" if moved else "EventScheduled"
    free = max(0, studio_class.seats - date.enrolled)
    return _without_nothing(
        {
            "@type": ["CourseInstance", "EducationEvent"],
            "@id": f"{page}#{date_fragment(date)}",
            "name": studio_class.title,
            "startDate": _moment(edition, date.on),
            "endDate": _moment(edition, ends(studio_class, date)),
            "previousStartDate": _moment(edition, date.moved_from[-1]) if moved else None,
            "eventStatus": f"{SCHEMA}/{status}",
            "eventAttendanceMode": f"{SCHEMA}/OfflineEventAttendanceMode",
            "courseMode": "onsite",
            "location": _place(edition),
            "organizer": {"@id": f"{absolute(edition, addresses.HOME)}#studio"},
            "maximumAttendeeCapacity": studio_class.seats if date.takes_place else None,
            "remainingAttendeeCapacity": free if date.takes_place else None,
            "offers": _offer(edition, studio_class, date, page) if date.takes_place else None,
        }
    )


def _offer(edition: Edition, studio_class: StudioClass, date: ClassDate, page: str) -> Node:
    free, last = studio_class.seats - date.enrolled, last_day_to_book(edition, studio_class, date)
    availability = "SoldOut" if free <= 0 else "LimitedAvailability" if free < _FEW else "InStock"
    return _without_nothing(
        {
            "@type": "Offer",
            "price": _price(studio_class.price),
            "priceCurrency": edition.studio.profile.currency,
            "availability": f"{SCHEMA}/{availability}",
            "validThrough": last.isoformat() if last else None,
            "url": page,
        }
    )


def _place(edition: Edition) -> Node:
    profile, venue = edition.studio.profile, edition.studio.profile.venue
    if venue is None:
        return {"@type": "Place", "name": profile.name, "address": ", ".join(profile.address)}
    address = {
        "@type": "PostalAddress",
        "streetAddress": venue.street,
        "addressLocality": venue.town,
        "addressRegion": venue.state,
        "postalCode": venue.postcode,
        "addressCountry": venue.country,
    }
    return _without_nothing(
        {"@type": "Place", "name": venue.name or profile.name, "address": _without_nothing(address), "hasMap": venue.map}
    )


def _moment(edition: Edition, moment: datetime) -> str:
    return in_zone(edition, moment).isoformat(timespec="seconds")


def _price(value: Fraction) -> str:
    return f"{float(value):.2f}" if value.denominator > 1 else str(value)


def _without_nothing(node: Mapping[str, Any]) -> Node:
    return {key: value for key, value in node.items() if value not in (None, "", [])}
