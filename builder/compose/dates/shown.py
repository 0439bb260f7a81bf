"""A date as this publication shows it, with the day on which it was first shown so: what calendars go by."""

from dataclasses import replace

from builder.compose.edition import Edition
from builder.model.dates.published_date import PublishedDate
from builder.model.dates.studio_class import ClassDate, StudioClass


def shown(edition: Edition, studio_class: StudioClass, date: ClassDate) -> PublishedDate:
    """Return the state of a date; what the last publication showed as it is was told on the day of then, anything else is told today."""
    state = PublishedDate(studio_class.key, date.first_set, date.on, not date.takes_place, date.revision)
    return replace(state, told=edition.studio.told.get(state, edition.today))
