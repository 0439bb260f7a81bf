"""The size of a batch at home, in words: `500 g of oils`, `4 containers`."""

from builder.compose.punctuation import decimals_spoken
from builder.compose.recipe.wording import NBSP
from builder.model.dates.studio_class import HomeSize
from builder.words.say import say, say_count


def size_words(size: HomeSize) -> str:
    """Return a size as the studio has written it, in the words of the language that is spoken."""
    if size.containers is not None:
        return say_count("{count}\u00a0container", "{count}\u00a0containers", size.containers)
    if size.oils is not None:
        return say("{weight} of oils", weight=_weight(size.written.partition(" of ")[0]))
    return _weight(size.written)


def _weight(written: str) -> str:
    """Return a weight as it is written, its number and its unit on one line."""
    return decimals_spoken(written).replace(" ", NBSP)
