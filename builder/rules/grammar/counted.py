"""How many orders words give: each verb of an order at their beginning, behind a comma, and behind "and" or "then".

Decided: a word that is a noun or an adjective too ("funnel and cap", "clean and dry paper") counts as an order only before what it would be
done to. Why: one order too few is a shorter report, one too many is a false alarm.
"""

import re
from collections.abc import Iterator

from builder.rules.grammar.orders import ADVERB, DETERMINERS, PEOPLE
from builder.rules.grammar.verbs import NOUN_TOO, VERBS, verbs_that

_NOUN_TOO = frozenset(verbs_that(NOUN_TOO))
_NOTHING_DONE = frozenset({"avoid", "do", "enjoy", "ensure", "remember", "see"})
_TO_SOMETHING = re.compile(
    rf"\s+(?:(?:in|on|off|up|down|out|aside|away|over)\s+)?(?:{DETERMINERS}|it|them|his|her|one|two|three|both|more|half|\d)\b",
    re.IGNORECASE,
)
_ORDER = re.compile(
    rf"(?:(?P<first>^[\W_]*)|,\s+|\b(?:and|then)\s+)(?P<lead>{ADVERB})(?P<verb>{VERBS}|have(?=\s+(?:an?|the|each|every)\b))\b"
    r"(?!\s+(?:is|are|was|of|can|may|not)\b|['’-])",
    re.IGNORECASE,
)
_PEOPLE_DO = re.compile(
    rf"^[\W_]*(?!(?:let|have)\b){PEOPLE}\s+(?:(?:can|may|should|must|now|then|each|both)\s+)*(?P<verb>(?!do not|don)\w+)", re.IGNORECASE
)
_OR = re.compile(r"\bor\b", re.IGNORECASE)


def orders_in(words: str) -> Iterator[re.Match[str]]:
    """Yield each order of some words: its group `verb` is what is to be done. Of two between which one may choose the first counts."""
    subject = _PEOPLE_DO.match(words)
    if subject:
        yield subject
    for found in _ORDER.finditer(words):
        verb = found["verb"].casefold()
        is_first = found["first"] is not None
        if (is_first and subject) or verb in _NOTHING_DONE or (_OR.search(found["lead"]) and not is_first):
            continue
        alone = verb in _NOUN_TOO and (not is_first or words.startswith(",", found.end()))
        if not alone or _TO_SOMETHING.match(words, found.end()):
            yield found
