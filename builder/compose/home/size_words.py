"""The size of a batch at home, in words: `500 g of oils`, `4 containers`."""

from builder.compose.punctuation import decimals_spoken
from builder.model.dates.studio_class import HomeSize
from builder.words.say import say, say_count


def size_words(size: HomeSize) -> str:
    """Return a size as the studio has written it, in the words of the language that is spoken."""
    if size.containers is not None:
        return say_count("{count}\u00a0container", "{count}\u00a0containers", size.containers)
    if size.oils is not None:
        return say("{weight} of oils", weight=decimals_spoken(size.written.partition(" of ")[0]))
    return decimals_spoken(size.written)
