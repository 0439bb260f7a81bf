"""What each class sees of an edition.

Decided: a document about a class is composed from this, and never from the whole edition. Why: it cannot look at what changes elsewhere, so
that it is known until something changes that the class sees, and no list says what depends on what.
"""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from builder.compose.edition import Alike, Edition, Site
from builder.compose.site.related import classes_like
from builder.compose.templates import Templates
from builder.model.dates.published_date import PublishedDate
from builder.model.finding import Finding
from builder.model.held_back import HeldBack
from builder.model.library import Unread
from builder.model.remembered import remembered
from builder.model.seen_from import seen_from
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.reach import classes_concerned


def seen_by_classes(edition: Edition) -> tuple[Edition, ...]:
    """Return for each class what it sees: the same value as before where all that it sees is the same."""
    return tuple(_seen_by_classes(edition))


def _seen_by_classes(edition: Edition) -> Iterator[Edition]:
    concerned = [(finding, classes_concerned(finding, edition.studio)) for finding in edition.findings]
    for studio_class, plan in edition.classes:
        key = studio_class.key
        yield _seen(
            seen_from(edition.studio, studio_class),
            edition.studio.unread,
            tuple((date, told) for date, told in edition.studio.told.items() if date.class_key == key),
            edition.templates,
            edition.today,
            edition.with_pdf,
            edition.held,
            edition.listed & {key},
            edition.site,
            classes_like(edition, plan),
            *(one for one in edition.plans if one.studio_class.key == key),
            *(finding for finding, keys in concerned if key in keys),
        )


@remembered(512, tuple, Unread, Templates, date, HeldBack, frozenset, Site, Finding)
def _seen(
    studio: Studio,
    unread: Unread,
    told: tuple[tuple[PublishedDate, date], ...],
    templates: Templates,
    today: date,
    with_pdf: bool,
    held: HeldBack,
    listed: frozenset[str],
    site: Site,
    alike: tuple[Alike, ...],
    *plans_and_findings: ClassPlan | Finding,
) -> Edition:
    return Edition(
        replace(studio, unread=unread, told=dict(told)),
        tuple(one for one in plans_and_findings if isinstance(one, ClassPlan)),
        tuple(one for one in plans_and_findings if isinstance(one, Finding)),
        templates,
        today,
        with_pdf,
        held,
        listed=listed,
        whole_site=site,
        alike=alike,
    )
