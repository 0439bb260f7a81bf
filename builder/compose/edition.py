"""What all documents of one run share: the studio, its classes worked out, the findings, the day, the templates."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import NamedTuple

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.templates import Templates
from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding
from builder.model.held_back import NOTHING_HELD, HeldBack
from builder.model.roster.roster_file import is_roster
from builder.model.studio import Studio
from builder.model.supplies.shopping import Shopping
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import LinkHole, LinkTo


@dataclass(frozen=True)
class Site:
    """What a document about one class says of the site: the keys of all classes, the keys of all pages of text with their titles, and
    whether any class has a picture, or a date to come.
    """

    classes: frozenset[str]
    pages: tuple[tuple[str, str], ...]
    has_pictures: bool
    has_dates: bool


class Alike(NamedTuple):
    """A class that is like another one: its key, its title, and in words what they have in common."""

    key: str
    title: str
    why: str


@dataclass(frozen=True)
class Edition:
    """One run. `plans` holds one class plan for each date, or one without a date; `with_pdf` says whether PDFs will be made.

    `held` is what stops hold back, of which only labels are still among the plans. `shopping` is what to buy for all dates. `listed` are
    the classes that have a roster. Of what one class sees (`seen_by_classes`) `whole_site` and `alike` are all that is about others.
    """

    studio: Studio
    plans: tuple[ClassPlan, ...]
    findings: Sequence[Finding]
    templates: Templates
    today: date
    with_pdf: bool = True
    held: HeldBack = NOTHING_HELD
    shopping: Shopping | None = None
    listed: frozenset[str] = frozenset()
    whole_site: Site | None = None
    alike: tuple[Alike, ...] | None = None

    def pdf_of(self, here: Address) -> str:
        """Return the link from a page to the sheet that says the same; empty from a sheet, and where no PDFs are made."""
        return here.link_to(here.on_paper) if self.with_pdf and not here.is_paper else ""

    def large_print_of(self, here: Address) -> str:
        """Return the link from a page to the sheet that says the same in large print; empty from a sheet, and where no PDFs are made."""
        return here.link_to(here.in_large_print) if self.with_pdf and not here.is_paper else ""

    @property
    def locale(self) -> str:
        """Return the locale of dates and prices."""
        return self.studio.locale

    @property
    def language(self) -> str:
        """Return the language tag of every document."""
        return self.locale.replace("_", "-")

    @cached_property
    def classes(self) -> tuple[tuple[StudioClass, ClassPlan], ...]:
        """Return each class that is published, with the first of its plans."""
        first: dict[str, ClassPlan] = {}
        for plan in self.plans:
            first.setdefault(plan.studio_class.key, plan)
        return tuple((plan.studio_class, plan) for plan in first.values())

    def target(self, hole: LinkHole) -> Address:
        """Return the document that a link of the studio's text means; what is held back is looked for on the catalogue."""
        key, site = hole.target.text, self.site
        if hole.kind is LinkTo.PAGE:
            return addresses.text_page(key) if key in dict(site.pages) else addresses.CATALOGUE
        return addresses.class_page(key) if key in site.classes else addresses.CATALOGUE

    @cached_property
    def site(self) -> Site:
        """Return what documents about one class say of the site."""
        if self.whole_site:
            return self.whole_site
        classes = [studio_class for studio_class, _ in self.classes]
        return Site(
            frozenset(one.key for one in classes),
            tuple((key, page.title) for key, page in self.studio.pages.items()),
            any(one.picture for one in classes),
            any(date.on.date() >= self.today for one in classes for date in one.dates),
        )

    @property
    def names_somebody(self) -> bool:
        """Tell whether it holds, or may hold in a finding, what somebody wrote of a person."""
        in_findings = any(is_roster(finding.place.file) for finding in self.findings)
        return bool(self.listed) or in_findings or any(plan.names_somebody for plan in self.plans)
