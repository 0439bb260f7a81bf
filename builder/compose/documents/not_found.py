"""The page that a host shows where there is none.

Decided: its style and its icon stand in the page, whose policy lets in that one style by its hash, and pictures that are written out. Why:
hosts show the page at any depth and under any folder, where no address of a file is sure to lead anywhere.
"""

from base64 import b64encode
from dataclasses import replace
from urllib.parse import urlsplit

from markupsafe import Markup

from builder.compose import addresses
from builder.compose.addresses import Address, Rooted
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import PLAIN_STYLES, page_frame
from builder.compose.look import look_css, own_style
from builder.compose.views.frame import OwnStyle
from builder.compose.views.text_page import TextPageView
from builder.model.studio import Studio
from builder.words.say import say


def compose_not_found(edition: Edition, studio: Studio, here: Address) -> Composed:
    """Return the page that says that nothing is here. Hosts show it at any depth, so its links begin at the root of the host."""
    at = Rooted(here.folder, here.path, urlsplit(studio.profile.public_address).path.rstrip("/"))
    title = say("Page not found")
    links = ((addresses.HOME, say("Home")), (addresses.CATALOGUE, say("All classes")), (addresses.DATES, say("All dates")))
    text = Markup("<p>{}</p>\n<ul class='plain'>{}</ul>").format(
        say("There is no page at this address. It may have moved, or the class is over."),
        Markup("").join(Markup("<li><a href='{}'>{}</a></li>").format(at.link_to(there), words) for there, words in links),
    )
    around = replace(page_frame(edition, at, title, title), styles=(), style=_style(edition), icon=_icon(edition))
    return Composed(TextPageView(around, title, str(text)))


def _icon(edition: Edition) -> str:
    drawn = edition.templates.source("styles/icon.svg")
    return f"data:image/svg+xml;base64,{b64encode(drawn.encode()).decode()}"


def _style(edition: Edition) -> OwnStyle:
    css = "".join(edition.templates.source(f"styles/{name}") for name in PLAIN_STYLES)
    return own_style(css + look_css(edition))
