"""The frames of an edition's documents: head, menu, sender."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from functools import partial

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.dates import plain_date
from builder.compose.edition import Edition
from builder.compose.look import look_css, own_style, title_css
from builder.compose.machines.absolute import absolute
from builder.compose.machines.json_ld import Node, as_script
from builder.compose.machines.sharing import with_sharing
from builder.compose.picture_files import logo_address
from builder.compose.views.frame import Alternate, Frame, Link, PageFrame, Sender, Sharing, SheetFrame
from builder.model.document import Folder
from builder.model.own_document import MainPage
from builder.model.studio import Studio
from builder.rules.dates.telephone import dialled
from builder.words.outward import outward
from builder.words.say import message, say

PLAIN_STYLES = ("tokens.css", "words.css", "screen.css")  # What a page of text alone needs.
SCREEN_STYLES = (*PLAIN_STYLES, "site.css")
SCREEN_SIGNS = ("alert.svg",)  # What these styles show.
PAPER_STYLES = ("tokens.css", "words.css", "paper.css")
# Pages of the studio's own that have a place in the menu, by their keys; all others are at the foot.
_OWN_IN_MENU = {"safety": message("Safety"), "about": message("About")}


def page_frame(edition: Edition, here: Address, title: str, description: str) -> PageFrame:
    """Return the frame of a page; the studio's name ends its title."""
    profile = edition.studio.profile
    public = outward(profile.public_address.rstrip("/"))
    is_public = here.folder is Folder.SITE
    full_title = title if title == profile.name else f"{title}, {profile.name}"
    canonical = absolute(edition, here) if is_public else ""
    styles = tuple(here.link_to(addresses.style(here.folder, name)) for name in SCREEN_STYLES)
    home = Link(here.link_to(addresses.HOME) if is_public else public, profile.name, here == addresses.HOME)
    menu = _menu(edition, here) if is_public else ()
    icon = here.link_to(addresses.icon(here.folder))
    sharing = Sharing(title, "website", edition.locale) if canonical else None
    alternates = tuple(_alternates(edition, here)) if is_public else ()
    around = PageFrame(
        edition.language,
        full_title,
        description,
        _at_home(sender(edition), public) if is_public else sender(edition),
        home,
        menu,
        styles,
        icon,
        canonical,
        alternates,
        _all_pages(edition, here) if is_public else (),
        say("This page was made on {day}.", day=plain_date(edition.today, edition.locale)) if is_public else "",
        sharing=sharing,
        style=own_style(css) if (css := look_css(edition, here)) else None,
        logo=logo_address(edition.studio, here),
    )
    return with_sharing(edition, around)


def _alternates(edition: Edition, here: Address) -> Iterator[Alternate]:
    """Yield the dates as a calendar and, where the studio has a public address, as news."""
    if not edition.site.has_dates:
        return
    title = say("Dates at {studio}", studio=edition.studio.profile.name)
    yield Alternate(here.link_to(addresses.CALENDAR), "text/calendar", title)
    if edition.studio.profile.public_address:
        yield Alternate(here.link_to(addresses.FEED), "application/atom+xml", title)


def with_alternates(around: Frame, *own: Alternate) -> Frame:
    """Put before the calendar and the news of all dates those of a page's own dates."""
    return replace(around, alternates=(*own, *around.alternates)) if isinstance(around, PageFrame) else around


def frame(edition: Edition, here: Address, title: str, description: str) -> Frame:
    """Return the frame of what lies at an address, a sheet or a page."""
    make = sheet_frame if here.is_paper else partial(page_frame, here=here)
    return make(edition, title=title, description=description)


def sheet_frame(edition: Edition, title: str, description: str) -> SheetFrame:
    """Return the frame of a sheet."""
    paper = edition.studio.profile.paper.casefold()
    logo = edition.studio.profile.look.logo
    font = edition.studio.title_font
    titles = title_css(font.path) if font and font.prints else ""
    return SheetFrame(edition.language, title, description, paper, sender(edition), logo.text if logo else "", titles)


def with_data(around: Frame, nodes: list[Node]) -> Frame:
    """Add to the frame of a page what it says for search engines; a sheet says nothing to them."""
    return replace(around, data=as_script(nodes)) if isinstance(around, PageFrame) else around


def with_style(around: Frame, here: Address, style: Address) -> Frame:
    """Add a stylesheet of its own to the frame of a page."""
    return replace(around, styles=(*around.styles, here.link_to(style))) if isinstance(around, PageFrame) else around


def sender(edition: Edition) -> Sender:
    """Return the studio as the sender of its documents."""
    profile = edition.studio.profile
    links: dict[str, Callable[[str], str]] = {"email": "mailto:{}".format, "phone": partial(telephone_link, edition.studio), "web": str}
    contacts = tuple(Link(outward(links[kind](text)), text) for kind, text in profile.contact.items() if kind in links)
    return Sender(profile.name, profile.tagline, profile.address, contacts)


def _at_home(whose: Sender, site: str) -> Sender:
    """Return a sender for pages of its own site, which do not tell where the site is."""
    return replace(whose, contacts=tuple(one for one in whose.contacts if one.address.rstrip("/") != site))


def telephone_link(studio: Studio, number: str) -> str:
    """Return the link that dials a number from anywhere (RFC 3966); empty where that cannot be told."""
    to = dialled(studio, number)
    return f"tel:{to}" if isinstance(to, str) else ""


def _main_pages(edition: Edition) -> dict[MainPage, tuple[Address, str]]:
    """Return the pages that every studio has, in order, each with its words; without those that have nothing to show."""
    shown = {
        MainPage.CLASSES: (addresses.CATALOGUE, say("Classes")),
        MainPage.DATES: (addresses.DATES, say("Dates")),
        MainPage.WAYS: (addresses.WAYS, say("Ways of teaching")),
        MainPage.VISIT: (addresses.VISIT, say("Visit")),
        MainPage.PICTURES: (addresses.GALLERY, say("Pictures")),
    }
    if not edition.classes:
        del shown[MainPage.WAYS]
    if not edition.site.has_pictures:
        del shown[MainPage.PICTURES]
    return shown


def _menu(edition: Edition, here: Address) -> tuple[Link, ...]:
    """Return the pages that the studio wants in its menu; else the main pages, and those of its own by which people judge it."""
    wanted, ours = edition.studio.profile.look.menu, _main_pages(edition)
    if wanted is not None:
        pages = {key: (addresses.text_page(key), title) for key, title in edition.site.pages} | ours
        return _links([pages[name.text] for name in wanted if name.text in pages], here)
    own = [(addresses.text_page(key), say(words)) for key, words in _OWN_IN_MENU.items() if key in dict(edition.site.pages)]
    return _links([*(page for key, page in ours.items() if key is not MainPage.PICTURES), *own], here)


def _all_pages(edition: Edition, here: Address) -> tuple[Link, ...]:
    """Return every page that stands by itself: the second way to each."""
    pages = ((key, title) for key, title in edition.site.pages if key != addresses.WELCOME)
    own = [(addresses.text_page(key), title) for key, title in sorted(pages, key=lambda page: page[1].casefold())]
    return _links([(addresses.HOME, say("Home")), *_main_pages(edition).values(), *own], here)


def _links(entries: Iterable[tuple[Address, str]], here: Address) -> tuple[Link, ...]:
    return tuple(Link(here.link_to(there), words, there == here) for there, words in entries)
