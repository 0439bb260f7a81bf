"""Whether hands spray, pour or wipe with alcohol by the words of a lesson, where no amount in braces names it.

Vapour of isopropyl alcohol and of ethanol burns at room temperature (section 9 of suppliers' safety data sheets, from memory).

Decided: a word is enough, and no spray bottle among the tools is. Why: the caution belongs before the step, and what only stands ready is
not open.
"""

from collections.abc import Iterable

from builder.model.hazard import Hazard
from builder.model.remembered import remembered
from builder.model.teaching.flame_words import ALCOHOL, FlameWords, SpokenOf
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import is_order
from builder.rules.grammar.passive import as_order
from builder.rules.grammar.pattern_search import Words, any_in
from builder.rules.grammar.spoken import spoken_of


def vapour_said(sentences: Iterable[Sentence], flame_words: FlameWords) -> tuple[Hazard, ...]:
    """Return the hazard of vapour where one of some sentences has something done with alcohol; none where none does."""
    return (Hazard.FLAMMABLE,) if any(takes_alcohol(one, flame_words) for one in sentences) else ()


def takes_alcohol(sentence: Sentence, flame_words: FlameWords) -> bool:
    """Tell whether a sentence has something done with alcohol."""
    words = flame_words.get(ALCOHOL)
    return words is not None and _takes_up(sentence, words)


@remembered(4096)
def _takes_up(sentence: Sentence, words: SpokenOf) -> bool:
    """Tell whether a sentence has it in somebody's hands. The words are looked for first, since few sentences have any of them."""
    if not any_in(words.says, Words(sentence.words)) or spoken_of(sentence, words.says, words.unless) is None:
        return False
    return is_order(sentence) or as_order(sentence.words) is not None
