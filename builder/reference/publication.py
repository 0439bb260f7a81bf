"""The pages become HTML that looks like every other page of ours."""

from pathlib import Path

from builder.compose import addresses
from builder.compose.frames import SCREEN_STYLES
from builder.compose.templates import Templates
from builder.compose.views.frame import Link, PageFrame, Sender
from builder.compose.views.text_page import TextPageView
from builder.model.document import CopiedFile, Document, Folder, Publication
from builder.read.text.markdown import render_page
from builder.reference.page import Page
from builder.reference.pages import START, pages

_NAME = "stillroom"


def reference_publication(layouts: Path) -> Publication:
    """Make the documents of the whole reference and the files that they show, with the templates of a folder."""
    templates = Templates((layouts,))
    styles = [(addresses.style(Folder.SITE, name).path, f"styles/{name}") for name in SCREEN_STYLES]
    copies = (*styles, (addresses.icon(Folder.SITE).path, "styles/icon.svg"))
    return Publication(
        tuple(_document(templates, page) for page in pages()),
        tuple(CopiedFile(Folder.SITE, path, "layouts", source) for path, source in copies),
    )


def _document(templates: Templates, page: Page) -> Document:
    title = f"{page.title}, {_NAME}"
    heading, _, text = page.text.partition("\n")
    home = Link(f"{START}.html", f"{_NAME} reference", page.key == START)
    here = tuple(addresses.style(Folder.SITE, name).path for name in SCREEN_STYLES)
    frame = PageFrame(
        language="en",
        title=title,
        description=page.title,
        sender=Sender(_NAME, "", (), ()),
        home=home,
        menu=(),
        styles=here,
        icon=addresses.icon(Folder.SITE).path,
    )
    view = TextPageView(frame, heading.removeprefix("# "), render_page(text))
    return Document(Folder.SITE, f"{page.key}.html", title, templates.render("pages/text.html", view))
