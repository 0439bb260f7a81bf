"""What all documents of one run share: the studio, its classes worked out, the findings, the day, the templates."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.templates import Templates
from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding
from builder.model.held_back import NOTHING_HELD, HeldBack
from builder.model.studio import Studio
from builder.model.supplies.shopping import Shopping
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import LinkHole


@dataclass(frozen=True)
class Edition:
    """One run. `plans` holds one class plan for each date, or one without a date; `with_pdf` says whether PDFs will be made.

    `held` is what stops hold back, of which only labels are still among the plans. `shopping` is what to buy for all dates.
    """

    studio: Studio
    plans: tuple[ClassPlan, ...]
    findings: Sequence[Finding]
    templates: Templates
    today: date
    with_pdf: bool = True
    held: HeldBack = NOTHING_HELD
    shopping: Shopping | None = None

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
        key = hole.target.text
        if hole.kind == "page":
            return addresses.text_page(key) if key in self.studio.pages else addresses.CATALOGUE
        published = {studio_class.key for studio_class, _ in self.classes}
        return addresses.class_page(key) if key in published else addresses.CATALOGUE
