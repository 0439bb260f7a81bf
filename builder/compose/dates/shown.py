"""A date as this publication shows it, with the day on which it was first shown so: what calendars and feeds go by.

Decided: the day that the class file names (`announced`) wins over what the last publication kept, and that over the clock; a day to come,
or one that tells of fewer changes than the revision counts, is as good as none. Why: the studio's files are the same on every machine and
in an empty output folder, and what they say is meant; a stamp from the clock tells readers of a change where there was none.
"""

from dataclasses import replace

from builder.compose.edition import Edition
from builder.model.dates.published_date import PublishedDate
from builder.model.dates.studio_class import ClassDate, StudioClass


def shown(edition: Edition, studio_class: StudioClass, date: ClassDate) -> PublishedDate:
    """Return the state of a date; told on the day that its file names, else when it was first published so, which may be today."""
    state = PublishedDate(studio_class.key, date.first_set, date.on, not date.takes_place, date.revision)
    return replace(state, told=date.announced_by(edition.today) or edition.studio.told.get(state, edition.today))
