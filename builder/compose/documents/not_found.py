"""The page that a host shows where there is none."""

from urllib.parse import urlsplit

from markupsafe import Markup

from builder.compose import addresses
from builder.compose.addresses import Address, Rooted
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import page_frame
from builder.compose.views.text_page import TextPageView
from builder.model.studio import Studio
from builder.words.say import say


def compose_not_found(edition: Edition, studio: Studio, here: Address) -> Composed:
    """Say that nothing is here, and lead back. Hosts show it at any depth, so its links begin at the root of the host."""
    at = Rooted(here.folder, here.path, urlsplit(studio.profile.public_address).path.rstrip("/"))
    title = say("Page not found")
    text = Markup("<p>{}</p>\n<p><a href='{}'>{}</a></p>").format(
        say("There is no page at this address. It may have moved, or the class is over."),
        at.link_to(addresses.CATALOGUE),
        say("All classes and dates"),
    )
    around = page_frame(edition, at, title, title)
    return Composed(title, TextPageView(around, title, str(text)))
