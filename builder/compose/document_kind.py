"""A kind of document: what it is about, where it lies, what its layout takes and who fills it in, how many to print, who may see it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import Enum
from typing import Any, Generic, NamedTuple, TypeVar

from builder.compose.addresses import Address, address
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES
from builder.compose.scopes import Scope
from builder.model.document import Document, Folder
from builder.model.teaching.class_plan import ClassPlan

S = TypeVar("S")


class Readers(Enum):
    """Who may see a document, the widest circle first. Those of the staff alone may show who comes."""

    PUBLIC = "everybody"
    STUDENTS = "students"
    STAFF = "staff"
    STAFF_WITH_NAMES = "staff, with the names of those who come"

    @property
    def folder(self) -> Folder:
        """Give the root of the output in which it lies."""
        return Folder.SITE if self is Readers.PUBLIC else Folder.PRINT


class Composed(NamedTuple):
    """What one document is to show: its title for whoever waits for it, and its view, or its text where it has no template."""

    title: str
    view: object


Composer = Callable[[Edition, S, Address], Composed | None]
# What the check list of a date says of how many to print, a line for each.
Copies = Callable[[Edition, ClassPlan], Iterable[str]]


def none_to_print(edition: Edition, plan: ClassPlan) -> Iterable[str]:  # noqa: ARG001
    """Give no line: of what lies on the site, or is for no class, no copies are made for a date."""
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
        """Give the address of the document about one subject."""
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
        html = str(composed.view) if self.template is None else edition.templates.render(self.template, composed.view)
        return Document(here.folder, here.path, composed.title, html, self.all_styles if here.is_paper else ())

    @property
    def all_styles(self) -> tuple[str, ...]:
        """Give the stylesheets of a sheet, in order."""
        return (*PAPER_STYLES, *self.styles)


AnyKind = DocumentKind[Any]
