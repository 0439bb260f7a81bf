"""The shopping list of all coming dates, for the studio only: a page and a PDF."""

from builder.compose import addresses
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES, page_frame, sheet_frame
from builder.compose.supplies.shopping_words import shop_list
from builder.compose.views.shopping import ShoppingView
from builder.model.document import Document
from builder.model.supplies.shopping import Shopping

STYLES = (*PAPER_STYLES, "shopping.css")
TITLE = "Shopping list"


def compose_shopping(edition: Edition, shopping: Shopping) -> tuple[Document, ...]:
    """Make the page and the PDF; nothing where there is no date to shop for."""
    if not shopping.occasions:
        return ()
    page, paper = addresses.SHOPPING_PAGE, addresses.SHOPPING_SHEET
    listed = shop_list(edition.studio, shopping)
    about = f"What to buy. {listed.scope}"
    on_page = ShoppingView(page_frame(edition, page, TITLE, about), page.link_to(paper) if edition.with_pdf else "", TITLE, listed)
    on_paper = ShoppingView(sheet_frame(edition, TITLE, about), "", TITLE, listed)
    return (
        Document(page.folder, page.path, TITLE, edition.templates.render("pages/shopping.html", on_page)),
        Document(paper.folder, paper.path, TITLE, edition.templates.render("sheets/shopping.html", on_paper), STYLES),
    )
