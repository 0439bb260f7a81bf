"""Whether a step has a number written down, so that a document has to give it a place: what no step wrote, no later step can use."""

import re

from builder.model.teaching.lesson import Step
from builder.rules.clauses import clauses_of, stands

# "Write the weight down", "write down what it shows": not "write it on the label", which has a place already.
_WRITES = re.compile(r"\b(?:write|note)\s+(?:[\w'’]+\s+){0,6}?down\b", re.IGNORECASE)


def writes_down(step: Step) -> bool:
    """Tell whether a step orders that something is written down."""
    clauses = (clause for sentence in step.sentences for clause in clauses_of(sentence))
    return any(stands(clause, match) for clause in clauses for match in _WRITES.finditer(clause.words))
