"""A kind of document: what it is about, where it lies, what its layout takes and who fills it in, how many to print, who may see it."""

from collections.abc import Callable, Iterable
from contextvars import copy_context
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any, Generic, NamedTuple, TypeVar

from builder.compose.addresses import Address, address
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES
from builder.compose.scopes import Scope
from builder.compose.templates import OWN_PAPER
from builder.model.document import Document, Folder, Joined, JoinedSheet
from builder.model.own_document import SeenBy
from builder.model.teaching.class_plan import ClassPlan

S = TypeVar("S")


class Readers(Enum):
    """Who may see a document, the widest circle first. Those of the staff alone may show who comes."""

    PUBLIC = str(SeenBy.EVERYBODY)
    STUDENTS = str(SeenBy.STUDENTS)
    STAFF = str(SeenBy.STAFF)
    STAFF_WITH_NAMES = "staff, with the names of those who come"

    @property
    def folder(self) -> Folder:
        """Return the root of the output in which it lies."""
        return Folder.SITE if self is Readers.PUBLIC else Folder.PRINT


class Joins(NamedTuple):
    """What follows a sheet in one file, and what the sheet shows once the pages of each of them are known, and its own."""

    sheets: tuple[JoinedSheet, ...]
    view: Callable[[tuple[int, ...], int], object]


class Composed(NamedTuple):
    """What one document is to show: its view, or its text where it has no template."""

    view: object
    joins: Joins | None = None


class Lies(Enum):
    """Where what a date prints lies, in the order in which the pack names it: in the pack, or in a file of its own."""

    IN_THE_PACK = auto()
    WITH_NAMES = auto()  # It names people, and what is printed in one go is passed on in one go.
    ON_STOCK = auto()  # It goes on sheets of labels or tags.
    LOOKED_UP = auto()  # It needs no paper.


@dataclass(frozen=True)
class ToPrint:
    """What is printed of one document for a date.

    `line` says it on the check list. For the pack: `name` names it (empty where it is in none), `copies` counts each page of cards in
    order (one number where all of it is printed as often), `said` stands in place of the number, `subject` is what the document is about
    where that is not the date. `apart`: its pages are cards, so that none is printed on the back of another. `on_both_sides` is told of
    what lies on sheets of its own, such as labels.
    """

    line: str
    name: str = ""
    copies: tuple[int, ...] = (1,)
    said: str = ""
    subject: Any = None
    apart: bool = False
    on_both_sides: bool = False
    lies: Lies = Lies.IN_THE_PACK


Composer = Callable[[Edition, S, Address], Composed | None]
# How many to print for a date.
Copies = Callable[[Edition, ClassPlan], Iterable[ToPrint]]


def none_to_print(edition: Edition, plan: ClassPlan) -> Iterable[ToPrint]:  # noqa: ARG001
    """Return nothing: of what lies on the site, or is for no class, no copies are made for a date."""
    return ()


@dataclass(frozen=True)
class DocumentKind(Generic[S]):
    """One row of the table of documents.

    `path` holds names of the scope in braces; `public_path` stands in its place for classes whose sheets are public. `view` is what the
    composer makes, `template` (in `layouts/`, None where the view is the text) what shows it, with `styles` beside those of all paper.
    `like` is the name of the document whose view one of the studio's own shows.
    """

    name: str
    scope: Scope[S]
    path: str
    view: type
    template: str | None
    compose: Composer[S]
    readers: Readers
    styles: tuple[str, ...] = ()
    copies: Copies = none_to_print
    public_path: str = ""
    like: str = ""

    def place(self, subject: S) -> Address:
        """Return the address of the document about one subject."""
        names = self.scope.names(subject)
        if self.public_path and self.scope.is_public(subject):
            return address(Folder.SITE, self.public_path, names)
        return address(self.readers.folder, self.path, names)

    def make(self, edition: Edition, subject: S) -> Document | None:
        """Make the document about one subject; None where there is nothing to show."""
        here = self.place(subject)
        composed = self.compose(edition, subject, here)
        if composed is None:
            return None
        joins = composed.joins
        # It is asked for when sheets have been pressed, and still speaks the language of the run.
        here_and_now = copy_context()
        joined = Joined(joins.sheets, lambda *pages: here_and_now.run(lambda: self._html(edition, joins.view(*pages)))) if joins else None
        html = self._html(edition, composed.view)
        return Document(here.folder, here.path, html, self._styles_in(edition) if here.is_paper else (), joined)

    def _html(self, edition: Edition, view: object) -> str:
        return str(view) if self.template is None else edition.templates.render(self.template, view)

    def _styles_in(self, edition: Edition) -> tuple[str, ...]:
        """Return the stylesheets of a sheet with the one that the studio adds: to no labels, whose every place has been worked out."""
        own = () if "labels.css" in self.styles else edition.templates.own_styles(OWN_PAPER)
        return (*self.all_styles, *own)

    @property
    def all_styles(self) -> tuple[str, ...]:
        """Return the stylesheets of a sheet, in order."""
        return (*PAPER_STYLES, *self.styles)


AnyKind = DocumentKind[Any]
