"""The shopping list of all coming dates, for the studio only: a page and a sheet."""

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.supplies.shopping_words import shop_list
from builder.compose.views.shopping import ShoppingView
from builder.model.studio import Studio
from builder.words.say import say


def compose_shopping(edition: Edition, studio: Studio, here: Address) -> Composed | None:
    """Make the list; nothing where there is no date to shop for."""
    if edition.shopping is None or not edition.shopping.occasions:
        return None
    listed = shop_list(studio, edition.shopping)
    title = say("Shopping list")
    around = frame(edition, here, title, say("What to buy. {scope}", scope=listed.scope))
    return Composed(ShoppingView(around, edition.pdf_of(here), title, listed))
