"""Where each document goes, and how one links to another: every address of the output is made here.

Keys of classes, recipes and pages are small letters, figures and single hyphens (`read/text/file_names.py`), and so is what texts become
here; two hyphens stand between two of them, so that no two documents have one address. `compose` refuses to make a publication in which
any have.
Links are relative and name a file, so that the pages work from a disk, from a folder of a host and from its root.

Decided: two hyphens divide the parts of an address that the studio has named, and one address for two documents is an error. Why: a sheet
must not be written over another.
"""

import posixpath
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import count
from unicodedata import decomposition, normalize
from urllib.parse import quote

from builder.model.dates.studio_class import HomeSize, StudioClass
from builder.model.document import SITE_PAGES, Folder
from builder.model.recipe.filling import Filling
from builder.model.teaching.class_plan import ClassPlan, MadeProduct

WELCOME = "welcome"
PAPER, LARGE_PRINT = ".pdf", "--large-print.pdf"
# Paths of what others link to; the names in braces are those of its scope.
CLASS_PAGE, TEXT_PAGE, CLASS_CALENDAR = "classes/{class}.html", "{page}.html", "classes/{class}.ics"
CLASS_SHARING = "classes/{class}--sharing.png"
CHOICE_PAGE, CHOICE_CALENDAR, CHOICE_FEED = "find/{value}.html", "find/{value}.ics", "find/{value}.xml"
PUBLIC_TAKE_HOME = "classes/{class}--take-home-{recipe}--{size}.html"


@dataclass(frozen=True)
class Address:
    """A place in the output: one of its two roots and a path below it."""

    folder: Folder
    path: str

    def link_to(self, other: "Address") -> str:
        """Return the relative link from this document to another, also into the other root beside it."""
        return self.link(f"{other.folder}/{other.path}")

    def link(self, path: str) -> str:
        """Return the relative link from this document to a path of the output folder."""
        here = posixpath.dirname(f"{self.folder}/{self.path}")
        return quote(posixpath.relpath(path, here))

    @property
    def is_paper(self) -> bool:
        """Tell whether a sheet lies here, and no page."""
        return self.path.endswith(PAPER)

    @property
    def is_large_print(self) -> bool:
        """Tell whether a sheet in large print lies here."""
        return self.path.endswith(LARGE_PRINT)

    @property
    def on_paper(self) -> "Address":
        """Return the place of the sheet that says the same as the page here."""
        return Address(self.folder, posixpath.splitext(self.path)[0] + PAPER)

    @property
    def in_large_print(self) -> "Address":
        """Return the place of the sheet in large print that says the same as the page here."""
        return Address(self.folder, posixpath.splitext(self.path)[0] + LARGE_PRINT)


@dataclass(frozen=True)
class Rooted(Address):
    """A page that a host shows at any depth: its links begin at the root of the host, with the path `root` at which the site lies."""

    root: str = ""

    def link(self, path: str) -> str:
        """Return the link to a path of the output folder."""
        return f"{self.root}/{quote(path.removeprefix(f'{Folder.SITE}/'))}"


HOME, CATALOGUE, DATES, WAYS, VISIT, GALLERY = (Address(Folder.SITE, f"{name}.html") for name in SITE_PAGES)
CALENDAR, FEED = Address(Folder.SITE, "dates.ics"), Address(Folder.SITE, "dates.xml")
FILTER = Address(Folder.SITE, "styles/filter.css")
SHARING = Address(Folder.SITE, "sharing.png")
NOT_FOUND = Address(Folder.SITE, "404.html")


def address(folder: Folder, path: str, names: Mapping[str, str]) -> Address:
    """Fill in the names in the braces of a path."""
    return Address(folder, path.format_map(names))


def class_page(key: str) -> Address:
    """Return the place of a class's page."""
    return address(Folder.SITE, CLASS_PAGE, {"class": key})


def class_sharing(key: str) -> Address:
    """Return the place of the picture that stands for a class where its page is passed on."""
    return address(Folder.SITE, CLASS_SHARING, {"class": key})


def class_calendar(key: str) -> Address:
    """Return the place of the calendar file of a class."""
    return address(Folder.SITE, CLASS_CALENDAR, {"class": key})


def text_page(key: str) -> Address:
    """Return the place of a page of text; the welcome text stands on the home page."""
    return HOME if key == WELCOME else address(Folder.SITE, TEXT_PAGE, {"page": key})


def choice_page(value: str) -> Address:
    """Return the place of the page of what answers to one value."""
    return address(Folder.SITE, CHOICE_PAGE, {"value": value})


def choice_calendar(value: str) -> Address:
    """Return the place of the calendar file of what answers to one value."""
    return address(Folder.SITE, CHOICE_CALENDAR, {"value": value})


def choice_feed(value: str) -> Address:
    """Return the place of the news feed of what answers to one value."""
    return address(Folder.SITE, CHOICE_FEED, {"value": value})


def class_folder(key: str) -> str:
    """Return the folder of a class in the studio folder."""
    return f"classes/{key}"


def style(folder: Folder, name: str) -> Address:
    """Return the place of a stylesheet."""
    return Address(folder, f"styles/{name}")


def sign(folder: Folder, name: str) -> Address:
    """Return the place of a sign that styles show, beside which they lie as in the layouts."""
    return Address(folder, f"signs/{name}")


def title_font(folder: Folder, ending: str) -> Address:
    """Return the place of the font of the studio's own."""
    return Address(folder, f"styles/titles{ending}")


def icon(folder: Folder) -> Address:
    """Return the place of the little picture that browsers show beside a title."""
    return Address(folder, "styles/icon.svg")


def picture(folder: Folder, file: str) -> Address:
    """Return the place of a picture; `file` is its path in the studio folder."""
    return Address(folder, f"pictures/{file}")


def public_take_home(studio_class: StudioClass, recipe: str, size: HomeSize) -> Address:
    """Return the place of the page of a take-home sheet, of a class whose sheets are public."""
    return address(Folder.SITE, PUBLIC_TAKE_HOME, home_names(studio_class, recipe, size))


def home_names(studio_class: StudioClass, recipe: str, size: HomeSize) -> dict[str, str]:
    """Name a home size of a recipe of a class."""
    sizes = next(make.at_home for make in studio_class.makes if make.recipe.text == recipe)
    written = distinct_names(one.written for one in sizes)[sizes.index(size)]
    return {"class": studio_class.key, "recipe": recipe, "size": written}


def date_names(plan: ClassPlan) -> dict[str, str]:
    """Name a date of a class, or a full class where it has none."""
    return {"class": plan.studio_class.key, "date": occasion(plan)}


def filling_names(plan: ClassPlan, made: MadeProduct, filling: Filling) -> dict[str, str]:
    """Name what fills one kind of container on a date: the recipe, and any container but the recipe's own."""
    recipe, (own, *others) = made.batch.recipe.key, made.batch.fillings
    if filling is own:
        return {**date_names(plan), "filling": recipe}
    names = distinct_names(one.fill.container.text for one in others)
    number = next(number for number, one in enumerate(others) if one is filling)
    return {**date_names(plan), "filling": f"{recipe}--{names[number]}"}


def occasion(plan: ClassPlan) -> str:
    """Name the folder of a date; two dates on one day are told apart by the hour."""
    if plan.date is None:
        return "full-class"
    day = plan.date.on.date()
    same_day = [date for date in plan.studio_class.dates if date.on.date() == day]
    return day.isoformat() if len(same_day) < 2 else f"{day.isoformat()}-{plan.date.on:%H%M}"


def distinct_names(texts: Iterable[str]) -> tuple[str, ...]:
    """Return each text as part of a file name; where several come to the same, the later ones get a number."""
    names: list[str] = []
    for text in texts:
        plain = plain_name(text)
        numbered = (plain if number == 1 else f"{plain}-{number}" for number in count(1))
        names.append(next(name for name in numbered if name not in names))
    return tuple(names)


def plain_name(text: str) -> str:
    """Return a text as part of a file name: lower-case letters, digits and hyphens. A sign such as ½ becomes its figures."""
    spelled = (f" {normalize('NFKC', sign)}" if decomposition(sign).startswith("<fraction>") else sign for sign in text)
    return "-".join(re.findall(r"[a-z0-9]+", "".join(spelled).casefold()))
