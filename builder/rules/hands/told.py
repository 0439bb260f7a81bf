"""Which amounts a step only tells, as what went into the pot when it was made, and gives into nobody's hands."""

import re

from builder.model.teaching.lesson import Mention, Step
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import is_order

# "It held 500 g of oils and 372 g of lye at the start": both a word of the past and of the beginning, so that lye in a jug stays lye.
_PAST = re.compile(r"\b(?:held|weighed|came to|had)\b", re.IGNORECASE)
_BEGINNING = re.compile(
    r"\b(?:at (?:the (?:start|beginning|outset)|first)|to begin with|before the cook(?:ing)?|originally)\b", re.IGNORECASE
)


def handled_mentions(step: Step) -> tuple[Mention, ...]:
    """Return the amounts of a step that whoever does it has in hand: all but those that a sentence only tells of the beginning."""
    told = {number for number, one in enumerate(step.sentences) if _tells(one)}
    return tuple(mention for mention in step.mentions if step.sentence_of(mention) not in told)


def _tells(sentence: Sentence) -> bool:
    words = sentence.words
    return not is_order(sentence) and _PAST.search(words) is not None and _BEGINNING.search(words) is not None
