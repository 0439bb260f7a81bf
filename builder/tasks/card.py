"""Show what is known of one ingredient."""

import argparse
from pathlib import Path

from builder.compose.recipe.card_text import card_lines
from builder.library import CONTENT
from builder.read.library import read_shelf
from builder.refusals import no_such
from builder.tasks.place import studio_around
from builder.tasks.told import status_of
from builder.terminal.cards import print_card


def card(options: argparse.Namespace) -> int:
    """Print the card of an ingredient, from the studio's own shelf or the library."""
    ingredients, findings = read_shelf(options.studio or studio_around(Path.cwd()), CONTENT)
    card = ingredients.get(" ".join(options.name.split()).casefold())
    if card is None:
        names = sorted({card.name for card in ingredients.values()})
        no_such("ingredient", options.name, names)
    print_card(card_lines(card))
    return status_of(findings)
