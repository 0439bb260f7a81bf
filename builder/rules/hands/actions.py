"""What a step, or a caution, has hands do one after the other: the verbs of its orders.

What is forbidden, asked or only supposed ("if it sticks, wait a day") is not done now.

Decided: of one clause the first forty orders are read. Why: no step has so many, and a file that is one sentence takes no longer than its
length.
"""

import re
from collections.abc import Iterable
from itertools import islice

from builder.model.teaching.prose import Sentence
from builder.rules.clauses import Clause, clauses_of, stands
from builder.rules.grammar.counted import orders_in

_MOST = 40
# What an order stands behind, if it does not begin its sentence.
_BEFORE_ONE = re.compile(r"[,;:!?.\u2013\u2014-]|\b(?:and|then)\b", re.IGNORECASE)


def actions_in(sentences: Iterable[Sentence]) -> tuple[str, ...]:
    """Return the verbs of what some sentences order to be done, in their order, those that come twice included."""
    return tuple(
        found["verb"].casefold()
        for sentence in sentences
        for clause in clauses_of(sentence)
        for found in islice(orders_in(clause.words), _MOST)
        if stands(clause, found) and not _depends(clause, found)
    )


def may_be_over(sentences: Iterable[Sentence], most: int) -> bool:
    """Tell soon whether some sentences may order more than so many things; of most steps they cannot."""
    return sum(1 + len(_BEFORE_ONE.findall(one.words)) for one in sentences) > most


def _depends(clause: Clause, found: re.Match[str]) -> bool:
    """Tell whether something is done only if what stands before it in its clause holds."""
    return any(end <= found.start("verb") for _, end in clause.supposed)
