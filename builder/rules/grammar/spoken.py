"""Whether a sentence speaks of something by the patterns of a table, as an instruction and not as a question."""

from collections.abc import Iterable

from builder.model.place import Place
from builder.model.teaching.prose import Sentence
from builder.model.teaching.word_pattern import WordPattern
from builder.rules.clauses import Clause, clauses_of, first_meant
from builder.rules.grammar.pattern_search import Words, any_in


def spoken_of(
    sentence: Sentence, says: tuple[WordPattern, ...], unless: tuple[WordPattern, ...], clauses: Iterable[Clause] | None = None
) -> Place | None:
    """Return where a sentence, or those of its `clauses`, first says it; None where nothing does, or what is in `unless` turns it off."""
    if sentence.is_question or any_in(unless, Words(sentence.words)):
        return None
    return first_meant(sentence, clauses_of(sentence) if clauses is None else clauses, says)
