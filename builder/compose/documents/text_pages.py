"""The studio's own pages of text."""

import re
from html import unescape

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.compose.frames import page_frame
from builder.compose.teaching.pieces import page_filling
from builder.compose.views.text_page import TextPageView
from builder.model.document import Document
from builder.model.teaching.lesson import Page

DESCRIPTION_LENGTH = 160
PAGES = "pages"


def compose_pages(edition: Edition) -> tuple[Document, ...]:
    """Make every page but the welcome text, which stands on the catalogue."""
    pages = (page for key, page in sorted(edition.studio.pages.items()) if key != addresses.WELCOME)
    return tuple(_compose_page(edition, page) for page in pages)


def page_text(edition: Edition, page: Page, here: Address) -> str:
    """Give the text of a page as finished HTML. A page speaks of no batch, so that it has no amounts to fill in."""
    return page_filling(edition, here, PAGES).fill_blocks(page.blocks)


def _compose_page(edition: Edition, page: Page) -> Document:
    here = addresses.text_page(page.key)
    text = page_text(edition, page, here)
    frame = page_frame(edition, here, page.title, _description(text) or page.title)
    html = edition.templates.render("pages/text.html", TextPageView(frame, page.title, text))
    return Document(here.folder, here.path, frame.title, html)


def _description(html: str) -> str:
    """Give the beginning of a text, without its tags, cut at a word."""
    plain = " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())
    if len(plain) <= DESCRIPTION_LENGTH:
        return plain
    return plain[:DESCRIPTION_LENGTH].rsplit(" ", 1)[0].rstrip(",;:") + " …"
