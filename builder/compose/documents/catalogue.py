"""The catalogue: the welcome text, and a card for each class in the order of their next dates."""

from datetime import datetime

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.time_words import clock_from, common_start, format_words, time_strip
from builder.compose.document_kind import Composed
from builder.compose.documents.text_pages import page_text
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.ornament.portrait import portrait_of
from builder.compose.ornament.svg import PAGE_MARK, Look, mark
from builder.compose.recipe.wording import sentence
from builder.compose.teaching.class_facts import coming_dates, length, picture_of, price, view_dates, youngest
from builder.compose.teaching.format_words import how_it_is_made
from builder.compose.views.catalogue import CatalogueView, ClassCard
from builder.model.dates.studio_class import StudioClass
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say


def compose_catalogue(edition: Edition, studio: Studio, here: Address) -> Composed:
    """Make the start page of the site."""
    profile = studio.profile
    welcome = studio.pages.get(addresses.WELCOME)
    around = frame(edition, here, profile.name, profile.tagline or say("Classes at {studio}", studio=profile.name))
    heading = welcome.title if welcome else profile.name
    welcome_html = page_text(edition, welcome, here) if welcome else ""
    cards = tuple(_card(edition, studio_class, sheet, here) for studio_class, sheet in _by_next_date(edition))
    return Composed(around.title, CatalogueView(around, heading, welcome_html, cards))


def _by_next_date(edition: Edition) -> list[tuple[StudioClass, ClassPlan]]:
    def order(entry: tuple[StudioClass, ClassPlan]) -> tuple[bool, list[datetime], str]:
        coming = coming_dates(edition, entry[0])
        held = [date.on for date in coming if date.takes_place]
        return (not held, held, entry[0].title.casefold())

    return sorted(edition.classes, key=order)


def _card(edition: Edition, studio_class: StudioClass, plan: ClassPlan, here: Address) -> ClassCard:
    return ClassCard(
        key=studio_class.key,
        address=here.link_to(addresses.class_page(studio_class.key)),
        title=studio_class.title,
        picture=picture_of(studio_class, here),
        summary=studio_class.summary,
        format=format_words(plan.format),
        how=how_it_is_made(edition.studio, plan),
        strip=time_strip(plan, clock_from(common_start(plan), edition.locale)),
        for_whom=sentence(studio_class.for_whom),
        youngest=youngest(studio_class),
        length=length(studio_class),
        price=price(edition, studio_class),
        dates=view_dates(edition, studio_class),
        marks=tuple(mark(portrait_of(edition.studio, made.batch), PAGE_MARK, Look.TINTED) for made in plan.made),
    )
