"""Whether words say what to do when something goes wrong with what is made: a lotion splits, soap stays thin, a balm sets too soft.

First aid and what is asked of the weighing ("if the cup comes off the pan") are no such words.
"""

import re
from collections.abc import Iterable

from builder.model.teaching.prose import Sentence
from builder.rules.clauses import clauses_of

# Ordinary English of the trade (common practice, no source).
_SUPPOSED = re.compile(r"\b(?:if|should|in case|whenever)\b|\bwhen (?:it|they|the \w+) (?!is\b|are\b|has\b|have\b)", re.IGNORECASE)
_STATE = r"(?:thick|thin|runny|soft|hard|hot|cold|warm|stiff|brittle|greasy|grainy|lumpy|liquid|apart|cloudy|milky|wet|sticky|crumbly)"
_FAILS = re.compile(
    r"\b(?:splits?|separates?|separated|curdles?|curdled|seizes?|seized|breaks? (?:apart|up)|skin forms|streaks|lumps?|grains|cracks?|"
    r"crumbles?|sticks|puffs? up|rises|boils? (?:up|over)|weeps?|oozes?|oil (?:lies|floats|stands|swims|on top)|goes wrong|fails?|smokes?|"
    rf"(?:(?:is|are|stays?|still|turns?|turned|gets?|comes? out|sets?|becomes?) )+(?:too |very )?{_STATE}|"
    r"(?:does|do|did|will) not (?:trace|thicken|set|harden|melt|mix|blend|hold|firm|turn|clear|come)|(?:won|doesn|don)['’]t "
    r"(?:trace|thicken|set|harden|melt|mix|blend|hold|firm|turn|clear|come))\b",
    re.IGNORECASE,
)
# "Too soft: melt in a little more beeswax."
_TOO = re.compile(rf"(?:^|[.;]\s*)[\w ]*\b(?:too {_STATE}|not (?:set|mixed|thick|firm))\b[\w ]*$", re.IGNORECASE)


def says_how_to_mend(sentences: Iterable[Sentence]) -> bool:
    """Tell whether one of some sentences supposes that something goes wrong, and says what then."""
    return any(_mends(one) for one in sentences if not one.is_question)


def _mends(sentence: Sentence) -> bool:
    words = sentence.words
    if _SUPPOSED.search(words) and _FAILS.search(words):
        return True
    clauses = clauses_of(sentence)
    return len(clauses) > 1 and _TOO.search(clauses[0].words) is not None
