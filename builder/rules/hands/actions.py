"""What a step, or a caution, has hands do one after the other: the verbs of its orders.

What is forbidden, asked or only supposed ("if it sticks, wait a day") is not done now.
"""

import re
from collections.abc import Iterable

from builder.model.teaching.prose import Sentence
from builder.rules.clauses import Clause, clauses_of, stands
from builder.rules.grammar.counted import orders_in


def actions_in(sentences: Iterable[Sentence]) -> tuple[str, ...]:
    """Return the verbs of what some sentences order to be done, in their order, those that come twice included."""
    return tuple(
        found["verb"].casefold()
        for sentence in sentences
        for clause in clauses_of(sentence)
        for found in orders_in(clause.words)
        if stands(clause, found) and not _depends(clause, found)
    )


def _depends(clause: Clause, found: re.Match[str]) -> bool:
    """Tell whether something is done only if what stands before it in its clause holds."""
    return any(end <= found.start("verb") for _, end in clause.supposed)
