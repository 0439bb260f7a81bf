"""The catalogue: a card for each class in the order of their next dates, to be chosen by how, what, age and price."""

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.booking_words import who_may_come
from builder.compose.dates.time_words import WAYS, clock_from, common_start, time_strip
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame, with_style
from builder.compose.ornament.portrait import portrait_of
from builder.compose.ornament.svg import HEAD_MARK, Look, mark
from builder.compose.site.choices import Offered, questions, tokens_of
from builder.compose.site.dates_page import question_views
from builder.compose.site.nearest import near_classes, view_nearest
from builder.compose.teaching.class_facts import by_next_date, coming_dates, length, price, view_date
from builder.compose.views.frame import Link
from builder.compose.views.site.catalogue import CatalogueView, ClassCard
from builder.compose.views.site.dates import DateView
from builder.model.dates.studio_class import StudioClass
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say, say_count


def compose_catalogue(edition: Edition, studio: Studio, here: Address) -> Composed:
    """Make the page of all classes."""
    title = say("Classes")
    around = frame(edition, here, title, say("All classes at {studio}.", studio=studio.profile.name))
    asked = tuple(question for question in questions(edition) if not question.of_dates)
    around = with_style(around, here, addresses.FILTER) if asked else around
    view = CatalogueView(
        frame=around,
        title=title,
        lead=say_count("{count}\u00a0class.", "{count}\u00a0classes, the soonest first.", len(edition.classes)),
        cards=tuple(_card(edition, plan, here, tokens_of(asked, Offered(plan, None))) for _, plan in by_next_date(edition)),
        questions=question_views(edition, asked, here, near_classes(edition)),
        nearest_ones=view_nearest(edition, near_classes(edition), asked, here),
        all_dates=Link(here.link_to(addresses.DATES), say("All dates, by month, weekday and room")),
    )
    return Composed(view)


def _card(edition: Edition, plan: ClassPlan, here: Address, tokens: tuple[str, ...]) -> ClassCard:
    studio_class = plan.studio_class
    return ClassCard(
        address=here.link_to(addresses.class_page(studio_class.key)),
        title=studio_class.title,
        summary=studio_class.summary,
        format=say(WAYS[plan.format]),
        format_key=plan.format.key,
        length=length(studio_class),
        strip=time_strip(plan, clock_from(common_start(plan), edition.locale)),
        take_home=studio_class.take_home,
        for_whom=studio_class.for_whom,
        youngest=who_may_come(edition, studio_class),
        price=price(edition, studio_class),
        next=_next(edition, studio_class),
        marks=tuple(mark(portrait_of(edition.studio, made.batch), HEAD_MARK, Look.TINTED) for made in plan.made),
        tokens=" ".join(tokens),
    )


def _next(edition: Edition, studio_class: StudioClass) -> DateView | None:
    """Return the next date with room; where none has any, the next that takes place; where there is none, the next one."""
    coming = coming_dates(edition, studio_class)
    held = [date for date in coming if date.takes_place]
    free = [date for date in held if studio_class.has_room_on(date)]
    first = next(iter((*free, *held, *coming)), None)
    return view_date(edition, studio_class, first) if first else None
