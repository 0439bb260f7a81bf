"""What the words of a part say of lye and raw soap in the hands of those who do it, where no amount in braces names them."""

from collections.abc import Mapping

from builder.model.place import Place
from builder.model.remembered import remembered
from builder.model.teaching.lesson import Part
from builder.model.teaching.lye_words import LyeWords
from builder.model.teaching.prose import Sentence
from builder.model.teaching.word_pattern import WordPattern
from builder.rules.clauses import clauses_of, explains, is_order
from builder.rules.grammar.spoken import spoken_of


@remembered(1024)
def hazards_said(part: Part, lye_words: LyeWords) -> Mapping[str, Place]:
    """Return each hazard that a part speaks of as being handled in it, with where it first says so.

    What turns a row off counts in parts of the students alone: there it says that staff do it.
    """
    in_steps = {id(one) for step in part.steps for one in step.sentences}
    found: dict[str, Place] = {}
    for sentence in part.sentences:
        is_title = sentence in part.title_says
        if not is_title and id(sentence) not in in_steps and not is_order(sentence):
            continue
        for hazard, words in lye_words.items():
            unless = words.unless if part.by_hand else ()
            place = None if hazard in found else _where(sentence, words.in_titles if is_title else words.says, unless)
            if place:
                found[hazard] = place
    return found


def _where(sentence: Sentence, patterns: tuple[WordPattern, ...], unless: tuple[WordPattern, ...]) -> Place | None:
    clauses = (clause for clause in clauses_of(sentence) if not explains(clause))
    return spoken_of(sentence, patterns, unless, clauses)
