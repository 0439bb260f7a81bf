"""The studio's own pages of text."""

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.teaching.pieces import writer_of
from builder.compose.views.text_page import TextPageView
from builder.model.teaching.lesson import Page
from builder.words.html_text import text_in

DESCRIPTION_LENGTH = 160
PAGES = "pages"


def compose_page(edition: Edition, page: Page, here: Address) -> Composed:
    """Make a page."""
    text = page_text(edition, page, here)
    around = frame(edition, here, page.title, _description(text) or page.title)
    return Composed(TextPageView(around, page.title, text))


def page_text(edition: Edition, page: Page, here: Address) -> str:
    """Return the text of a page as finished HTML. A page speaks of no batch, so that it has no amounts to fill in."""
    return writer_of(edition, here, PAGES).fill_blocks(page.blocks)


def _description(html: str) -> str:
    """Return the beginning of a text, without its tags, cut at a word."""
    plain = text_in(html)
    if len(plain) <= DESCRIPTION_LENGTH:
        return plain
    return plain[:DESCRIPTION_LENGTH].rsplit(" ", 1)[0].rstrip(",;:") + " …"
