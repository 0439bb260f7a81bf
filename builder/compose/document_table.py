"""The documents, one row each, in the order in which they are made and, on the check list, printed.

A new document is a view, a template, a composer and a row. A row says who may see it, and with that whether its composer is given a plan
with the names of those who come (`editions`).
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.document_kind import AnyKind, Composed, Composer, DocumentKind, Lies, Readers, S, ToPrint
from builder.compose.documents.batch_cards import compose_batch_cards, copies_of_batch_cards
from builder.compose.documents.bench_cards import compose_bench_cards, compose_bench_steps, copies_of_cards, copies_of_steps
from builder.compose.documents.checklists import compose_checklist, copies_of_checklist
from builder.compose.documents.dose_cards import compose_dose_cards, copies_of_dose_cards
from builder.compose.documents.label_portfolio import compose_portfolio
from builder.compose.documents.label_test_page import compose_test_page
from builder.compose.documents.labels import compose_labels
from builder.compose.documents.not_found import compose_not_found
from builder.compose.documents.packs import Packed, compose_pack
from builder.compose.documents.published_dates import compose_published_dates
from builder.compose.documents.shopping import compose_shopping
from builder.compose.documents.tags import compose_tags, copies_of_tags
from builder.compose.documents.take_home import compose_take_home
from builder.compose.documents.teacher_sheets import (
    compose_assistants_sheet,
    compose_teacher_sheet,
    copies_of_assistants_sheet,
    copies_of_teacher_sheet,
)
from builder.compose.documents.text_pages import compose_page
from builder.compose.edition import Edition
from builder.compose.for_staff.documents import (
    compose_costs,
    compose_home_workings,
    compose_reasons,
    compose_roster,
    compose_workings,
    copies_of_costs,
    copies_of_reasons,
    copies_of_roster,
    copies_of_workings,
)
from builder.compose.home.home_copies import copies_of_take_home
from builder.compose.label.label_counts import label_totals
from builder.compose.machines.calendar import compose_calendar, compose_choice_calendar, compose_class_calendar
from builder.compose.machines.feed import compose_choice_feed, compose_feed
from builder.compose.own_documents import own_kinds
from builder.compose.recipe.wording import sentence
from builder.compose.scopes import CHOICE, CLASS, DATE, HOME_SIZE, LABELS, PAGE, STUDIO, labelled
from builder.compose.site.catalogue import compose_catalogue
from builder.compose.site.class_pages import compose_class_page
from builder.compose.site.dates_page import compose_choice, compose_dates
from builder.compose.site.filter_rules import compose_rules
from builder.compose.site.gallery import compose_gallery
from builder.compose.site.home import compose_home
from builder.compose.site.visit import compose_visit
from builder.compose.site.ways import compose_ways
from builder.compose.views.bench_cards import BatchCardsView, BenchCardsView, BenchStepsView
from builder.compose.views.doses import DoseCardsView
from builder.compose.views.for_staff import CostsView, ReasonsView, RosterView, TeacherView, WorkingsView
from builder.compose.views.frame import Link
from builder.compose.views.labels import LabelsView
from builder.compose.views.pack import PackView
from builder.compose.views.running import ChecklistView
from builder.compose.views.shopping import ShoppingView
from builder.compose.views.site.catalogue import CatalogueView
from builder.compose.views.site.class_page import ClassPageView
from builder.compose.views.site.dates_page import ChoiceView, DatesView
from builder.compose.views.site.home import GalleryView, HomeView, VisitView, WaysView
from builder.compose.views.take_home import TakeHomeView
from builder.compose.views.text_page import TextPageView
from builder.model.dates.published_date import FILE
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say


def documents_of(studio: Studio) -> tuple[AnyKind, ...]:
    """Return every kind of document that a studio publishes: ours, and then its own."""
    return (*DOCUMENTS, *own_kinds(studio, DOCUMENTS))


def copies_to_print(edition: Edition, plan: ClassPlan) -> Iterable[str]:
    """Return the lines of the check list that say how many to print for a date, one for each document."""
    return (one.line for kind in documents_of(edition.studio) for one in kind.copies(edition, plan) if one.line)


def sheets_to_print(edition: Edition, plan: ClassPlan) -> Iterable[Packed]:
    """Yield the sheets that a date prints, in order, and the labels, each file of which is a sheet."""
    for kind in documents_of(edition.studio):
        yield from (Packed(kind.place(one.subject or plan), one) for one in kind.copies(edition, plan) if one.name)
        if kind is LABELLED:
            named = ((one, say("Labels, {product}", product=one.title)) for one in labelled(edition, plan))
            yield from (Packed(kind.place(one), ToPrint("", name, lies=Lies.ON_STOCK)) for one, name in named)


def _with_links(name: str, compose: Composer[S]) -> Composer[S]:
    """Add to a page of the site the links to the documents of the studio's own that are like it and for everybody."""

    def composed(edition: Edition, subject: S, here: Address) -> Composed | None:
        made = compose(edition, subject, here)
        own = (kind for kind in own_kinds(edition.studio, DOCUMENTS) if kind.like == name and kind.readers is Readers.PUBLIC)
        links = ((kind, kind.place(subject)) for kind in own)
        also = tuple(Link(here.link_to(at), sentence(kind.name)) for kind, at in links if edition.with_pdf or not at.is_paper)
        view: Any = made.view if made else None
        return Composed(replace(view, also=also)) if made else None

    return composed


def _pack(edition: Edition, plan: ClassPlan, here: Address) -> Composed:
    return compose_pack(edition, plan, here, sheets_to_print(edition, plan))


def _checklist(edition: Edition, plan: ClassPlan, here: Address) -> Composed:
    return compose_checklist(edition, plan, here, copies_to_print(edition, plan))


PUBLIC, STUDENTS, STAFF, STAFF_WITH_NAMES = Readers
LABEL, LOOKED_UP = ("labels.css",), ("looked-up.css",)
DATED = "{class}/{date}/"
HOME = "{class}/take-home-{recipe}--{size}.html"
HOME_ON_PAPER, PUBLIC_ON_PAPER = (path.replace(".html", addresses.PAPER) for path in (HOME, addresses.PUBLIC_TAKE_HOME))
HOME_LARGE, PUBLIC_LARGE = (path.replace(".html", addresses.LARGE_PRINT) for path in (HOME, addresses.PUBLIC_TAKE_HOME))

LABELLED = DocumentKind(
    "labels", LABELS, DATED + "labels-{filling}.pdf", LabelsView, "sheets/labels.html", compose_labels, STUDENTS, LABEL, label_totals
)
DOCUMENTS: tuple[AnyKind, ...] = (
    DocumentKind("home page", STUDIO, addresses.HOME.path, HomeView, "pages/home.html", _with_links("home page", compose_home), PUBLIC),
    DocumentKind(
        "catalogue", STUDIO, addresses.CATALOGUE.path, CatalogueView, "pages/catalogue.html",
        _with_links("catalogue", compose_catalogue), PUBLIC,
    ),
    DocumentKind(
        "class page", CLASS, addresses.CLASS_PAGE, ClassPageView, "pages/class.html", _with_links("class page", compose_class_page), PUBLIC
    ),
    DocumentKind("dates", STUDIO, addresses.DATES.path, DatesView, "pages/dates.html", _with_links("dates", compose_dates), PUBLIC),
    DocumentKind(
        "page of a choice", CHOICE, addresses.CHOICE_PAGE, ChoiceView, "pages/choice.html",
        _with_links("page of a choice", compose_choice), PUBLIC,
    ),
    DocumentKind("calendar of a choice", CHOICE, addresses.CHOICE_CALENDAR, str, None, compose_choice_calendar, PUBLIC),
    DocumentKind("news of a choice", CHOICE, addresses.CHOICE_FEED, str, None, compose_choice_feed, PUBLIC),
    DocumentKind("rules of the filter", STUDIO, addresses.FILTER.path, str, None, compose_rules, PUBLIC),
    DocumentKind("ways of teaching", STUDIO, addresses.WAYS.path, WaysView, "pages/ways.html", compose_ways, PUBLIC),
    DocumentKind("visit", STUDIO, addresses.VISIT.path, VisitView, "pages/visit.html", compose_visit, PUBLIC),
    DocumentKind("pictures", STUDIO, addresses.GALLERY.path, GalleryView, "pages/gallery.html", compose_gallery, PUBLIC),
    DocumentKind("dates for programs", STUDIO, FILE, str, None, compose_published_dates, PUBLIC),
    DocumentKind("calendar", STUDIO, addresses.CALENDAR.path, str, None, compose_calendar, PUBLIC),
    DocumentKind("news", STUDIO, addresses.FEED.path, str, None, compose_feed, PUBLIC),
    DocumentKind("page not found", STUDIO, addresses.NOT_FOUND.path, TextPageView, "pages/text.html", compose_not_found, PUBLIC),
    DocumentKind("calendar of a class", CLASS, addresses.CLASS_CALENDAR, str, None, compose_class_calendar, PUBLIC),
    DocumentKind(
        "page of text", PAGE, addresses.TEXT_PAGE, TextPageView, "pages/text.html", _with_links("page of text", compose_page), PUBLIC
    ),
    DocumentKind(
        "check list", DATE, DATED + "checklist.pdf", ChecklistView, "sheets/checklist.html", _checklist, STAFF, ("checklist.css",),
        copies_of_checklist,
    ),
    DocumentKind(
        "teacher's sheet", DATE, DATED + "teacher.pdf", TeacherView, "sheets/teacher.html", compose_teacher_sheet, STAFF,
        ("runs-on.css", "class-steps.css", "teacher.css"), copies_of_teacher_sheet,
    ),
    DocumentKind(
        "assistants' sheet", DATE, DATED + "assistants.pdf", TeacherView, "sheets/assistants.html", compose_assistants_sheet, STAFF,
        ("runs-on.css", "class-steps.css", "teacher.css"), copies_of_assistants_sheet,
    ),
    DocumentKind(
        "bench cards", DATE, DATED + "bench-cards.pdf", BenchCardsView, "sheets/bench-cards.html", compose_bench_cards, STUDENTS,
        ("bench-card.css",), copies_of_cards,
    ),
    DocumentKind(
        "steps at the bench", DATE, DATED + "bench-steps.pdf", BenchStepsView, "sheets/bench-steps.html", compose_bench_steps, STUDENTS,
        ("runs-on.css", "class-steps.css", "bench-steps.css"), copies_of_steps,
    ),
    DocumentKind(
        "batch cards", DATE, DATED + "batch-cards.pdf", BatchCardsView, "sheets/batch-cards.html", compose_batch_cards, STUDENTS,
        ("batch-card.css",), copies_of_batch_cards,
    ),
    DocumentKind(
        "dose cards", DATE, DATED + "dose-cards.pdf", DoseCardsView, "sheets/dose-cards.html", compose_dose_cards, STUDENTS,
        ("dose-card.css",), copies_of_dose_cards,
    ),
    DocumentKind(
        "take-home page", HOME_SIZE, HOME, TakeHomeView, "pages/take-home.html", compose_take_home, STUDENTS,
        public_path=addresses.PUBLIC_TAKE_HOME,
    ),
    DocumentKind(
        "take-home sheet", HOME_SIZE, HOME_ON_PAPER, TakeHomeView, "sheets/take-home.html", compose_take_home, STUDENTS,
        ("runs-on.css", "take-home.css"), copies_of_take_home, PUBLIC_ON_PAPER,
    ),
    DocumentKind(
        "take-home sheet in large print", HOME_SIZE, HOME_LARGE, TakeHomeView, "sheets/take-home.html", compose_take_home, STUDENTS,
        ("runs-on.css", "take-home.css", "large-print.css"), public_path=PUBLIC_LARGE,
    ),
    DocumentKind(
        "roster", DATE, DATED + "roster.pdf", RosterView, "sheets/roster.html", compose_roster, STAFF_WITH_NAMES, LOOKED_UP,
        copies_of_roster,
    ),
    DocumentKind("costs", DATE, DATED + "costs.pdf", CostsView, "sheets/costs.html", compose_costs, STAFF, LOOKED_UP, copies_of_costs),
    DocumentKind(
        "reasons for the format", DATE, DATED + "why-this-format.pdf", ReasonsView, "sheets/reasons.html", compose_reasons, STAFF,
        LOOKED_UP, copies_of_reasons,
    ),
    DocumentKind(
        "workings", DATE, DATED + "workings.pdf", WorkingsView, "sheets/workings.html", compose_workings, STAFF, LOOKED_UP,
        copies_of_workings,
    ),
    DocumentKind(
        "workings of the home sizes", CLASS, "{class}/workings-at-home.pdf", WorkingsView, "sheets/workings.html", compose_home_workings,
        STAFF, LOOKED_UP,
    ),
    LABELLED,
    DocumentKind("tags", DATE, DATED + "tags.pdf", LabelsView, "sheets/labels.html", compose_tags, STUDENTS, LABEL, copies_of_tags),
    DocumentKind("pack to print", DATE, DATED + "pack.pdf", PackView, "sheets/pack.html", _pack, STAFF, ("pack.css",)),
    DocumentKind("shopping page", STUDIO, "shopping.html", ShoppingView, "pages/shopping.html", compose_shopping, STAFF),
    DocumentKind(
        "shopping list", STUDIO, "shopping.pdf", ShoppingView, "sheets/shopping.html", compose_shopping, STAFF, ("shopping.css",)
    ),
    DocumentKind("label test page", STUDIO, "label-test-page.pdf", LabelsView, "sheets/labels.html", compose_test_page, STAFF, LABEL),
    DocumentKind("label portfolio", STUDIO, "label-portfolio.pdf", LabelsView, "sheets/labels.html", compose_portfolio, STAFF, LABEL),
)  # fmt: skip
