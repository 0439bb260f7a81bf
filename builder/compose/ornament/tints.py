"""The colour of a mark: that of what colours the product, else of its scent, else of what it is made of. A choice of ours, no code.

Each is light enough for black letters and dark enough to show in grey. Where a mark is black on white, nothing is lost.
"""

from builder.compose.ornament.portrait import Form, Portrait
from builder.model.recipe.ingredient import SCENTS, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.words.fold import fold

VIOLET, ORANGE, GREEN, WOOD, ROSE, YELLOW, BLUE, SAND, GREY = (
    "#aa9dd6", "#efa557", "#86c4a1", "#cba27b", "#e8a3ab", "#dfc05c", "#8db5da", "#cdc3b2", "#b7b7b2",
)  # fmt: skip
_WORDS = {
    VIOLET: ("lavandula", "violet", "lavender", "lavandin"),
    ORANGE: ("citrus", "orange", "mandarin", "tangerine", "annatto", "carotene"),
    GREEN: ("mentha", "peppermint", "spearmint", "eucalyptus", "melaleuca", "rosmarinus", "green", "spirulina", "pine", "fir"),
    WOOD: ("cedrus", "cedarwood", "santalum", "sandalwood", "vetiveria", "pogostemon", "brown", "cocoa", "vanilla", "clove", "cinnamon"),
    ROSE: ("rosa", "rose", "pelargonium", "geranium", "pink", "red", "beetroot"),
    YELLOW: ("yellow", "turmeric", "lemon", "lemongrass", "chamomile", "ylang"),
    BLUE: ("blue",),
    GREY: ("black", "charcoal"),
}
_OF_FORM = {Form.ROUND: BLUE, Form.POINTED: YELLOW, Form.BLUNT: SAND, Form.FACETED: ROSE, Form.NOTCHED: GREEN}


def tint_of(portrait: Portrait) -> str:
    """Return the colour of the petals as six digits."""
    colours = [card for card in portrait.cards if card.kind == IngredientKind.COLOURANT]
    scents = [card for card in portrait.cards if card.declared_as in SCENTS]
    named = (tint for card in (*colours, *scents) if (tint := _named(card)))
    return next(named, _OF_FORM[max(Form, key=lambda form: portrait.forms[form])])


def paler(tint: str, by: float) -> str:
    """Mix a colour with white, 0 for none of it and 1 for white alone."""
    parts = (int(tint[at : at + 2], 16) for at in (1, 3, 5))
    return "#" + "".join(f"{round(part + (255 - part) * by):02x}" for part in parts)


def _named(card: Ingredient) -> str:
    names = (card.name, *(card.label_name.inci if card.label_name else ()))
    words = {word.strip("(),/.") for name in names for word in fold(name).split()}
    return next((tint for tint, known in _WORDS.items() if words & set(known)), "")
