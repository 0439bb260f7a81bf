"""Whether the steps of a part have something poured or filled by those who do it, by their words."""

import re

from builder.model.place import Place
from builder.model.teaching.lesson import Part
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import clauses_of, stands

_POURS = re.compile(r"\b(?:pour|ladle|fill)\b", re.IGNORECASE)
# What is poured cold, though something hot stands beside it; and sentences that give it to somebody grown up.
_COLD = re.compile(r"\b(?:scent|fragrance|essential|flavour|flavor|colou?r|tint|water|powder|spray|alcohol|cold)\b", re.IGNORECASE)
_ADULT = re.compile(r"\b(?:adult|grown-up|teacher|assistant|staff|parent)s?\b", re.IGNORECASE)


def pours_in(part: Part) -> Place | None:
    """Return where a step first tells those who do a part to pour or fill; None where none does, or an adult is to do it."""
    return next((place for step in part.steps for sentence in step.sentences if (place := _pours(sentence))), None)


def _pours(sentence: Sentence) -> Place | None:
    if _COLD.search(sentence.words) or _ADULT.search(sentence.words):
        return None
    for clause in clauses_of(sentence):
        for match in _POURS.finditer(clause.words):
            if stands(clause, match):
                return sentence.place(clause.begin + match.start(), clause.begin + match.end())
    return None
