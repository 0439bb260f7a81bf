"""A caution of the studio whose text orders work to be done now: work in a box of warning has no tick, no letter and no place in its order.

Decided: only what is numbered, goes "first ... then", or names an amount or a time of making. Why: how to avoid a danger is told in orders
too ("pour slowly", "unplug before you touch it"), and those belong there. What to do after an accident is not looked at.
"""

import re
from collections.abc import Iterator
from functools import lru_cache

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import NOWHERE
from builder.model.studio import Studio
from builder.model.teaching.prose import Sentence, sentences_of, value_as_text
from builder.rules.grammar.verbs import MAKES, verbs_that
from builder.rules.hands.actions import actions_in

# Work on what is made: who puts on goggles, airs the room or keeps something away makes nothing.
_MAKING = frozenset(verbs_that(MAKES))
_NUMBERED = re.compile(r"(?:^|(?<=[.!?;:])\s+)(?:step\s+)?\(?\d{1,2}[.):]\s+(?=[A-Z])", re.IGNORECASE)
_FIRST = re.compile(r"\bfirst(?:ly)?\b", re.IGNORECASE)
_THEN = re.compile(r"\b(?:then|next|after that|afterwards|second(?:ly)?)\b", re.IGNORECASE)
_AMOUNT = re.compile(r"\d\s*(?:g|kg|grams?|ml|millilit(?:re|er)s?|oz|ounces?|drops?|teaspoons?|tablespoons?)\b", re.IGNORECASE)
_TIME = re.compile(r"\bfor\W+(?:(?:about|at least|another)\W+)?[\w-]+\W+(?:seconds?|minutes?|hours?)\b", re.IGNORECASE)
_AT_MOST = re.compile(
    r"\b(?:at most|at the most|no more|not more|never more|more than|less than|up to|below|under|above|over)\b", re.IGNORECASE
)


@rule_on(STUDIO, FindingKind("caution-hides-step", CAUTION, "A caution of the studio orders work to be done now, which is a step."))
def find_steps_in_cautions(studio: Studio) -> Iterator[Finding]:
    """Look at what each caution says of a danger and of how to avoid it."""
    for text in studio.cautions.values():
        for key, said in (("what", (text.what,)), ("avoid", text.avoid), ("again", (text.again,))):
            hidden = next((one for one in said if hides_a_step(one)), None)
            if hidden:
                yield caution(
                    "caution-hides-step",
                    text.at(key),
                    f'The caution "{text.name}" orders work: "{hidden}" In a caution it has no tick and no letter, and who knows the '
                    "warning skips it (ANSI Z535.6, from memory: a safety message holds hazard, consequence and how to avoid it).",
                    "Make it a step of the lesson, and leave in the caution what can happen and how to avoid it.",
                )
                break


@lru_cache(1024)
def hides_a_step(text: str) -> bool:
    """Tell whether a text of a caution orders work: in numbers, one after the other, or so much or so long of it."""
    sentences = sentences_of(value_as_text(_NUMBERED.sub(" ", text), NOWHERE))
    is_numbered = len(_NUMBERED.findall(text)) > 1
    if (is_numbered or _goes_on(text)) and len(_work(sentences)) > (0 if is_numbered else 1):
        return True
    return any(_by_measure(one) for one in sentences)


def _goes_on(text: str) -> bool:
    """Tell whether a text says what comes first, and what after it."""
    first = _FIRST.search(text)
    return first is not None and _THEN.search(text, first.end()) is not None


def _work(sentences: tuple[Sentence, ...]) -> tuple[str, ...]:
    return tuple(verb for verb in actions_in(sentences) if verb in _MAKING)


def _by_measure(sentence: Sentence) -> bool:
    """Tell whether a sentence orders work on an amount or for a time; what is a limit is how to avoid something."""
    measured = _AMOUNT.search(sentence.words) or _TIME.search(sentence.words)
    return measured is not None and _AT_MOST.search(sentence.words) is None and bool(_work((sentence,)))
