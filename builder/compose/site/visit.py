"""The page for whoever comes: where classes are held, how to get there, on what terms they are booked."""

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.booking_words import terms_facts, visit_facts
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.views.frame import Link
from builder.compose.views.site.home import VisitView
from builder.model.studio import Studio
from builder.words.outward import outward
from builder.words.say import say


def compose_visit(edition: Edition, studio: Studio, here: Address) -> Composed:
    """Make the page for visitors."""
    profile, venue = studio.profile, studio.profile.venue
    title = say("Visit")
    around = frame(edition, here, title, say("Where {studio} is, how to get there, and how to book.", studio=profile.name))
    view = VisitView(
        frame=around,
        title=title,
        place=venue.lines if venue else (profile.name, *profile.address),
        map=Link(outward(venue.map), say("Map")) if venue and venue.map else None,
        visit=visit_facts(venue) if venue else (),
        terms=terms_facts(profile.booking),
        links=(Link(here.link_to(addresses.DATES), say("All dates")), Link(here.link_to(addresses.CATALOGUE), say("All classes"))),
    )
    return Composed(view)
