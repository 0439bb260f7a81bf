"""Whether something is done in a part of a lesson by somebody's hands, and not only said or waited for.

Steps are done. Text is done where it orders hands to a pot, a bar or a tool ("Cut a bar of one day"): a teacher's part is often written so.
What is said, shown from afar, handed out or read is not.
"""

import re

from builder.model.teaching.lesson import Part, Who
from builder.rules.clauses import is_bare_order
from builder.rules.grammar.verbs import BY_HAND, verbs_that

_HANDS = re.compile(
    rf"\b(?:{'|'.join(verbs_that(BY_HAND))}|bring out|uncover)\b"
    r"|\bput\b(?!\W+(?:on\W+)?(?:\w+\W+){0,2}(?:goggles|gloves|aprons?|masks?|gear)\b)",
    re.IGNORECASE,
)


def is_done(part: Part) -> bool:
    """Tell whether hands do something in a part."""
    if part.who is Who.WAITING:
        return False
    return bool(part.steps) or any(is_bare_order(one) and _HANDS.search(one.words) for one in part.sentences if one not in part.title_says)
