"""Whether hands spray, pour or wipe with alcohol by the words of a lesson, where no amount in braces names it.

Vapour of isopropyl alcohol and of ethanol burns at room temperature (section 9 of suppliers' safety data sheets, from memory).

Decided: a word is enough, and no spray bottle among the tools is. Why: the caution belongs before the step, and what only stands ready is
not open.
"""

from collections.abc import Iterable

from builder.model.hazard import Hazard
from builder.model.teaching.flame_words import ALCOHOL, FlameWords
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import is_order
from builder.rules.grammar.passive import as_order
from builder.rules.spoken import spoken_of


def vapour_said(sentences: Iterable[Sentence], flame_words: FlameWords) -> tuple[Hazard, ...]:
    """Return the hazard of vapour where one of some sentences has something done with alcohol; none where none does."""
    words = flame_words.get(ALCOHOL)
    done = (one for one in sentences if is_order(one) or as_order(one.words))
    met = words is not None and any(spoken_of(one, words.says, words.unless) is not None for one in done)
    return (Hazard.FLAMMABLE,) if met else ()
