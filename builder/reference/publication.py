"""The pages become HTML that looks like every other page of ours."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from builder.compose import addresses
from builder.compose.frames import SCREEN_STYLES
from builder.compose.templates import Templates
from builder.compose.views.frame import Link, PageFrame, Sender
from builder.compose.views.text_page import TextPageView
from builder.model.document import CopiedFile, Document, Folder, Origin, Publication
from builder.read.text.markdown import render_page
from builder.reference.page import Page
from builder.reference.pages import START, pages

_NAME = "stillroom"
_REFERENCE = Link(f"{START}.html", f"{_NAME} reference")


def reference_publication(layouts: Path) -> Publication:
    """Make the documents of the whole reference and the files that they show, with the templates of a folder."""
    return text_publication(layouts, pages(), _REFERENCE)


def text_publication(layouts: Path, texts: Sequence[Page], home: Link, *more: Link) -> Publication:
    """Make web pages of texts, each with its key for an address, and the files that they show; `home` and `more` stand at their head."""
    templates = Templates((layouts,))
    styles = [(addresses.style(Folder.SITE, name).path, f"styles/{name}") for name in SCREEN_STYLES]
    copies = (*styles, (addresses.icon(Folder.SITE).path, "styles/icon.svg"))
    return Publication(
        tuple(_document(templates, page, home, more) for page in texts),
        tuple(CopiedFile(Folder.SITE, path, Origin.LAYOUTS, source) for path, source in copies),
    )


def _document(templates: Templates, page: Page, home: Link, more: tuple[Link, ...]) -> Document:
    title = f"{page.title}, {_NAME}"
    heading, _, text = page.text.partition("\n")
    address = f"{page.key}.html"
    frame = PageFrame(
        language="en",
        title=title,
        description=page.title,
        sender=Sender(_NAME, "", (), ()),
        home=replace(home, here=home.address == address),
        menu=tuple(replace(link, here=link.address == address) for link in more),
        styles=tuple(addresses.style(Folder.SITE, name).path for name in SCREEN_STYLES),
        icon=addresses.icon(Folder.SITE).path,
    )
    view = TextPageView(frame, heading.removeprefix("# "), render_page(text))
    return Document(Folder.SITE, address, templates.render("pages/text.html", view))
