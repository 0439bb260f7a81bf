"""Whether hands put something over heat, or into water that scalds, by the words of a lesson.

Decided: a water bath scalds, whatever its batch is brought to. Why: oils for soap are warmed to 40 °C in water that may boil, and the
temperature of the phase tells nothing of the pan.
"""

from collections.abc import Iterable

from builder.model.hazard import Hazard
from builder.model.remembered import remembered
from builder.model.teaching.flame_words import OVER_HEAT, FlameWords, SpokenOf
from builder.model.teaching.lesson import Part
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import is_order
from builder.rules.grammar.spoken import spoken_of
from builder.rules.hazard import HEAT


def puts_over_heat(sentences: Iterable[Sentence], flame_words: FlameWords) -> bool:
    """Tell whether one of some sentences orders something over heat or into scalding water."""
    words = flame_words.get(OVER_HEAT)
    return words is not None and any(_orders(one, words) for one in sentences)


@remembered(20_000)
def _orders(sentence: Sentence, words: SpokenOf) -> bool:
    return is_order(sentence) and spoken_of(sentence, words.says, words.unless) is not None


def heat_said(part: Part, flame_words: FlameWords, hazards: Iterable[str]) -> tuple[Hazard, ...]:
    """Return the hazard of heat that the words of a part bring beside those that are known; none where one of heat is among them."""
    if any(hazard in HEAT for hazard in hazards) or not puts_over_heat(part.sentences, flame_words):
        return ()
    return (Hazard.HOT,)
