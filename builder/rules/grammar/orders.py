"""Whether words order something: they begin with a verb, or say what people do."""

import re
from functools import lru_cache

from builder.rules.grammar.verbs import VERBS

# What stands before a noun.
DETERMINERS = "the|an?|some|all|your|their|its|this|that|these|those|each|every"
# Each word in one way and at most eight of them: what nobody writes takes no longer to read.
ADVERB = (
    r"(?:(?:then|now|next|first|second|third|and|or|also|just|please|always|once|again|well|so|instead|afterwards?|later|meanwhile|"
    r"together|\w+ly)\b[\s,]*){0,8}"
)
ORDER = rf"{ADVERB}(?:{VERBS})\b(?!\s+(?:is|are|was|of|can|may)\b)"
PEOPLE = (
    rf"{ADVERB}(?:you|we|students?|the students?|guests?|everyone|everybody|each (?:student|guest|pair|group|"
    rf"person)|the teacher|teachers?|an assistant|(?:the )?children|(?:the )?kids|"
    r"one partner|pairs|groups|they|let|let's|have (?:an?|the|each|every)|i)\b"
)
_BEGINS = re.compile(rf"[\W_]*(?:{ORDER}|{PEOPLE})", re.IGNORECASE)
_BEGINS_ORDER = re.compile(rf"[\W_]*{ORDER}", re.IGNORECASE)
_SO = re.compile(rf",\s*so\s+{ORDER}", re.IGNORECASE)
_LEADS_IN = re.compile(
    r"[\W_]*(?:when|while|if|once|as|after|before|to|for|in|with|without|at|on|now|then|until|during|not (?:only|too)|"
    r"don['’]t|do not|never|no)\b",
    re.IGNORECASE,
)
# It begins where its spaces do: from within them none is looked for.
NEW_ORDER = re.compile(
    rf",\s*+(?=(?:(?:but|just|then|and|instead|simply)\s*)?{ORDER})|(?:,|(?<!\s))\s++\b(?:but|until|unless)\b", re.IGNORECASE
)


def begins_order(words: str) -> bool:
    """Tell whether words begin with the verb of an order."""
    return bool(_BEGINS_ORDER.match(words))


@lru_cache(4096)
def orders_something(words: str) -> bool:
    """Tell whether words begin with an order or say what people do, be it after words that lead in to it, or a reason."""
    if _SO.search(words):
        return True
    first, *rest = re.split(r"[,;:]\s", words)
    return bool(_BEGINS.match(first)) or (bool(_LEADS_IN.match(first)) and any(map(_BEGINS.match, rest)))
