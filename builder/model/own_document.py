"""What a studio has of its own in its documents: whole documents, its look, and what can be wrong with a template."""

from dataclasses import dataclass
from enum import Enum, StrEnum

from builder.model.place import Name, Place, Placed


class SeenBy(StrEnum):
    """Who may see a document, the widest circle first."""

    EVERYBODY = "everybody"
    STUDENTS = "students"
    STAFF = "staff"


@dataclass(frozen=True)
class OwnDocument(Placed):
    """A template of the studio with the document that it is like, whose view it shows and for each of whose subjects it is made.

    `copies` is what the check list says of how many to print; empty where it says nothing.
    """

    name: Name
    like: Name
    template: Name
    on_paper: bool
    seen_by: SeenBy
    copies: str = ""


class LayoutFault(Enum):
    """What can be wrong with a document of the studio's own, or with a template."""

    LIKE_NOTHING = "it is like a document that there is not"
    NOT_FOR_SCREENS = "it is for screens and like one that is placed to the millimetre"
    SEEN_BY_TOO_MANY = "more people may see it than the one that it is like"
    NAME_NOT_PLAIN = "nothing is left of its name in an address"
    ADDRESS_TAKEN = "another document lies at its address"
    TEMPLATE_MISSING = "a template is not there"
    TEMPLATE_BROKEN = "a template cannot be read or filled in"
    NAME_UNKNOWN = "a template asks for what its view does not hold"
    NOT_USED = "a template is used by no document"
    SAFETY_DROPPED = "a template leaves out what ours says of a danger"
    SAFETY_HIDDEN = "a style hides what is said of a danger"


@dataclass(frozen=True)
class FaultyLayout:
    """One fault: where it is, what was written there, what could be written (or who may see it at the most), what is said of it."""

    fault: LayoutFault
    place: Place
    written: str = ""
    known: tuple[str, ...] = ()
    said: str = ""


@dataclass(frozen=True, kw_only=True)
class Look(Placed):
    """Colours as `#` and six digits, empty where ours hold; `logo` and `portrait`, that of the teacher, are pictures by their paths in the
    studio folder; `portrait_alt` is what the portrait shows, for those who do not see it; `title_font` is a font
    file there.

    `menu` are the pages at the head of each page, in their order; None where it is the usual ones.
    """

    accent: str = ""
    paper: str = ""
    logo: Name | None = None
    portrait: Name | None = None
    portrait_alt: str = ""
    title_font: Name | None = None
    menu: tuple[Name, ...] | None = None


USUAL_LOOK = Look()


class MainPage(StrEnum):
    """A page that every studio has, by what its menu calls it."""

    CLASSES = "classes"
    DATES = "dates"
    WAYS = "ways of teaching"
    VISIT = "visit"
    PICTURES = "pictures"
