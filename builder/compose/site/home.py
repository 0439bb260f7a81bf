"""The home page: the promise, the next dates with room, the ways in, the teacher, pictures, what to know before one comes."""

from dataclasses import replace

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.booking_words import as_of, terms_facts, visit_facts
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.ornament.portrait import Portrait, portrait_of
from builder.compose.ornament.svg import PAGE_MARK, Look, mark
from builder.compose.ornament.words import how_to_read
from builder.compose.picture_files import Shown, picture_view
from builder.compose.site.choices import offered
from builder.compose.site.gallery import shown_pictures
from builder.compose.site.rows import date_row
from builder.compose.site.ways import ways_of_teaching
from builder.compose.teaching.pieces import writer_of
from builder.compose.views.frame import Link
from builder.compose.views.site.home import HomeView
from builder.model.studio import Studio
from builder.words.say import say, say_count

_NEXT = 5
_PICTURES = 4
_ABOUT = "about"


def compose_home(edition: Edition, studio: Studio, here: Address) -> Composed:
    """Make the start page of the site."""
    profile, look, welcome = studio.profile, studio.profile.look, studio.pages.get(addresses.WELCOME)
    around = frame(edition, here, profile.name, profile.tagline or say("Classes at {studio}", studio=profile.name))
    blocks = welcome.blocks if welcome else ()
    # A text of several blocks is opened by its first; one of a single block stands under its own heading.
    lead, rest = (blocks[:1], blocks[1:]) if len(blocks) > 1 else ((), blocks)
    writer = writer_of(edition, here, "pages")
    dates = offered(edition)
    free = [one for one in dates if one.has_room]
    classes = say_count("The {count}\u00a0class", "All {count}\u00a0classes", len(edition.classes))
    room = [Link(here.link_to(addresses.DATES), say("Dates with room"))] if free else []
    drawn = _mark(edition)
    view = HomeView(
        frame=around,
        heading=profile.tagline or profile.name,
        lead_html=writer.fill_blocks(lead),
        actions=(*room, Link(here.link_to(addresses.CATALOGUE), classes)),
        mark_html=mark(drawn, PAGE_MARK, Look.TINTED) if drawn else "",
        mark_name=drawn.recipe if drawn else "",
        mark_read=how_to_read(drawn) if drawn else "",
        next=tuple(date_row(edition, one, here) for one in free[:_NEXT]),
        as_of=as_of(edition) if free else "",
        all_dates=Link(here.link_to(addresses.DATES), say_count("{count}\u00a0date in all", "All {count}\u00a0dates", len(dates))),
        ways=tuple(replace(way, facts=()) for way in ways_of_teaching(edition, here)),
        rest_heading=welcome.title if welcome else "",
        rest_html=writer.fill_blocks(rest),
        teacher=profile.teacher,
        portrait=picture_view(edition, here, look.portrait.text, look.portrait_alt, Shown.IN_A_ROW) if look.portrait else None,
        about=Link(here.link_to(addresses.text_page(_ABOUT)), studio.pages[_ABOUT].title) if _ABOUT in studio.pages else None,
        pictures=shown_pictures(edition, here, _PICTURES),
        facts=(*(visit_facts(profile.venue) if profile.venue else ()), *terms_facts(profile.booking)),
        visit=Link(here.link_to(addresses.VISIT), say("How to find us, and how to book")),
    )
    return Composed(view)


def _mark(edition: Edition) -> Portrait | None:
    """Return the recipe to show: the one of most petals, as it shows best how a mark is read."""
    drawn = [portrait_of(edition.studio, made.batch) for _, plan in edition.classes for made in plan.made]
    return max(drawn, key=lambda one: (len(one.parts), one.recipe), default=None)
