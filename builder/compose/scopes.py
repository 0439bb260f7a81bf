"""What a document can be about: the studio, a page of text, a class, a home size, a date, what of a date fills one kind of container."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Generic, TypeVar

from builder.compose import addresses
from builder.compose.edition import Edition
from builder.compose.home.size_words import size_words
from builder.compose.label.label_questions import labels_are_held
from builder.compose.label_layout.label_plans import LabelPlan, labels_planned
from builder.compose.label_layout.sharing import OneLabel, on_shared_sheets
from builder.compose.site.choices import Value, values
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, HomeBatch
from builder.model.teaching.lesson import Page
from builder.words.listed import listed

S = TypeVar("S")


@dataclass(frozen=True)
class AtHome:
    """One home size of what a class makes."""

    plan: ClassPlan
    home: HomeBatch


@dataclass(frozen=True)
class Labelled:
    """The labels of one date that lie on sheets of one kind, in their order: of one product, or of several whose labels are of one size.

    The first of them lies on the position `first` of its sheet, counted from 1, and its back, where backs have sheets of their own, on
    `first_back`.
    """

    plan: ClassPlan
    labels: tuple[OneLabel, ...]
    first: int = 1
    first_back: int = 1

    @property
    def of(self) -> tuple[LabelPlan, ...]:
        """Return what they are of, each kind of container once."""
        return tuple({id(one.plan): one.plan for one in self.labels}.values())

    @property
    def title(self) -> str:
        """Name what they are of."""
        return listed([plan.name for plan in self.of])


@dataclass(frozen=True)
class Scope(Generic[S]):
    """What documents are about: all of them in an edition, the names of one in a path, its title, and whether it is for everybody.

    `of_one_class`: what they say is of one class, so that they are composed from what that class sees.
    """

    name: str
    all: Callable[[Edition], Iterable[S]]
    names: Callable[[S], Mapping[str, str]]
    title: Callable[[S], str]
    is_public: Callable[[S], bool] = lambda _: False
    of_one_class: bool = False


def _pages(edition: Edition) -> Iterable[Page]:
    """Return every page but the welcome text, which stands on the home page."""
    return (page for key, page in sorted(edition.studio.pages.items()) if key != addresses.WELCOME)


def _home_sizes(edition: Edition) -> Iterable[AtHome]:
    return (AtHome(plan, home) for _, plan in edition.classes for made in plan.made for home in made.home)


def labelled(edition: Edition, plan: ClassPlan) -> Iterator[Labelled]:
    """Yield the labels of a date that fit and that nothing holds back; the first begin where a sheet has been used up."""
    first = plan.date.first_label if plan.date else 1
    printed = (labels for labels in labels_planned(edition.studio, plan) if not labels_are_held(edition, plan, labels.made))
    for labels in on_shared_sheets(printed):
        yield Labelled(plan, labels, first)
        first = 1


def _labels(edition: Edition) -> Iterator[Labelled]:
    return (one for plan in edition.plans for one in labelled(edition, plan))


def _names_at_home(at: AtHome) -> Mapping[str, str]:
    return addresses.home_names(at.plan.studio_class, at.home.batch.recipe.key, at.home.size)


def _names_labelled(one: Labelled) -> Mapping[str, str]:
    first, *others = one.of
    names = addresses.filling_names(one.plan, first.made, first.filling)
    return {**names, "filling": f"{names['filling']}--and-others"} if others else names


def _title_at_home(at: AtHome) -> str:
    return f"{at.home.batch.recipe.name}, {size_words(at.home.size)}"


def _class_title(plan: ClassPlan) -> str:
    return plan.studio_class.title


def _class_names(plan: ClassPlan) -> Mapping[str, str]:
    return {"class": plan.studio_class.key}


STUDIO = Scope[Studio]("studio", lambda edition: (edition.studio,), lambda _: {}, lambda _: "")
PAGE = Scope[Page]("page of text", _pages, lambda page: {"page": page.key}, lambda page: page.title)
CHOICE = Scope[Value]("answer that people choose by", values, lambda value: {"value": value.key}, lambda value: value.heading)
CLASS = Scope[ClassPlan]("class", lambda edition: (plan for _, plan in edition.classes), _class_names, _class_title, of_one_class=True)
HOME_SIZE = Scope[AtHome](
    "home size", _home_sizes, _names_at_home, _title_at_home, lambda at: at.plan.studio_class.sheets_are_public, of_one_class=True
)
DATE = Scope[ClassPlan]("date", lambda edition: edition.plans, addresses.date_names, _class_title, of_one_class=True)
LABELS = Scope[Labelled]("date and container", _labels, _names_labelled, lambda one: one.title, of_one_class=True)
