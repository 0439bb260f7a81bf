"""The ways of teaching: what each is, how the time of its next class is spent, from what age, and its classes."""

from collections.abc import Iterator

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates import dates
from builder.compose.dates.time_words import WAYS, clock_from, common_start, format_words, time_strip
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.recipe.wording import duration, sentence, whole_minutes
from builder.compose.site.choices import key_of_way, values
from builder.compose.teaching.class_facts import ages_from, by_next_date
from builder.compose.views.frame import Link
from builder.compose.views.site.home import WaysView, WayView
from builder.model.dates.studio_class import Format
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say, say_count


def ways_of_teaching(edition: Edition, here: Address) -> tuple[WayView, ...]:
    """Return each way in which some class is taught."""
    return tuple(_ways(edition, here))


def compose_ways(edition: Edition, studio: Studio, here: Address) -> Composed | None:
    """Make the page that puts the ways of teaching side by side; None where there is no class."""
    ways = ways_of_teaching(edition, here)
    if not ways:
        return None
    title = say("Ways of teaching")
    lead = say("What the teacher does and what you do, in each kind of class. The bar shows how the time of one class is spent.")
    around = frame(edition, here, title, say("How classes at {studio} are taught, side by side.", studio=studio.profile.name))
    return Composed(WaysView(around, title, lead, ways))


def _ways(edition: Edition, here: Address) -> Iterator[WayView]:
    for way in Format:
        plans = [plan for _, plan in by_next_date(edition) if plan.format is way]
        if not plans:
            continue
        first = plans[0]
        key = key_of_way(way)
        page = addresses.choice_page(key) if any(value.key == key for value in values(edition)) else addresses.DATES
        count = say_count("{count}\u00a0class and its dates", "{count}\u00a0classes and their dates", len(plans))
        yield WayView(
            key=way.key,
            name=say(WAYS[way]),
            sentence=format_words(way),
            strip=time_strip(first, clock_from(common_start(first), edition.locale)),
            example=first.studio_class.title,
            facts=_facts(edition, plans),
            classes=tuple(Link(here.link_to(addresses.class_page(plan.studio_class.key)), plan.studio_class.title) for plan in plans),
            page=Link(here.link_to(page), count),
        )


def _facts(edition: Edition, plans: list[ClassPlan]) -> tuple[tuple[str, str], ...]:
    classes = [plan.studio_class for plan in plans]
    lengths = sorted({whole_minutes(one.length) for one in classes})
    prices = sorted({one.price for one in classes})
    currency, locale = edition.studio.profile.currency, edition.locale
    youngest = min(one.youngest for one in classes)
    return (
        (say("Age"), sentence(ages_from(youngest))),
        (say("Length"), _span([duration(minutes) for minutes in lengths])),
        (say("Price"), _span([dates.price(price, currency, locale) for price in prices])),
    )


def _span(written: list[str]) -> str:
    return written[0] if len(written) == 1 else say("{least} to {most}", least=written[0], most=written[-1])
