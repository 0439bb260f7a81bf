"""What `frames/page.html` and `frames/sheet.html` show around every document."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Link:
    """A link and its words; `here` is True on the page that it leads to."""

    address: str
    words: str
    here: bool = False


@dataclass(frozen=True)
class Sender:
    """Who publishes: the studio's name, its address and its contacts, each contact with its link (empty where it has none)."""

    name: str
    tagline: str
    address: tuple[str, ...]
    contacts: tuple[Link, ...]


@dataclass(frozen=True)
class Alternate:
    """The same for programs: its address, its media type, its title."""

    address: str
    type: str
    title: str


@dataclass(frozen=True)
class Sharing:
    """How a page shows where somebody passes it on (Open Graph): the words of the page, its address, and a picture with its text."""

    title: str
    kind: str
    locale: str
    picture: str = ""
    picture_text: str = ""


@dataclass(frozen=True)
class PageFrame:
    """The frame of a page for the screen.

    `alternates` say the same for programs, `data` is for search engines (JSON-LD, empty where there is none), `sharing` is how the page
    shows where somebody passes it on. `menu` leads to the main pages, `all_pages` (at the foot) to every one that stands by itself; `as_of`
    says of which day the page is. A page that stays in the studio has no menu. `canonical` is empty where the studio has no public
    address; the address of `home` is empty where there is nowhere to go. `style` stands in the page: the studio's own colours, and all of
    it on a page that may be shown at any depth. `logo` is the address of a picture beside the studio's name.
    """

    language: str
    title: str
    description: str
    sender: Sender
    home: Link
    menu: tuple[Link, ...]
    styles: tuple[str, ...]
    icon: str
    canonical: str = ""
    alternates: tuple["Alternate", ...] = ()
    all_pages: tuple[Link, ...] = ()
    as_of: str = ""
    data: str = ""
    sharing: "Sharing | None" = None
    style: "OwnStyle | None" = None
    logo: str = ""


@dataclass(frozen=True)
class OwnStyle:
    """A style that stands in the page itself, and its hash, by which the policy of the page lets it in."""

    css: str
    hash: str


@dataclass(frozen=True)
class SheetFrame:
    """The frame of a sheet of paper. `paper` is `letter` or `a4`, `logo` a picture by its path in the studio folder.

    `title_style` is the style of titles in a font of the studio's own.
    """

    language: str
    title: str
    description: str
    paper: str
    sender: Sender
    logo: str = ""
    title_style: str = ""


Frame = PageFrame | SheetFrame
