"""Whether a match in a sentence is an instruction: not negated, not reported, not asked, not explained.

Rules of English grammar as they are needed for steps of lessons: a negation rules over what follows it in its clause; a new order after a
comma begins a new clause; what stands behind the danger excuses it only where it is said of it ("is never", "is forbidden").
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property

from builder.model.place import Place
from builder.model.teaching.prose import Sentence
from builder.model.teaching.word_pattern import WordPattern
from builder.rules.grammar.negation import denies_within, lists_no, negates, scope, without_seeming_ones
from builder.rules.grammar.orders import begins_order, orders_something
from builder.rules.grammar.pattern_search import Words, possible_in

_DIVIDES = re.compile(r"[;:!?]|\.\s|\s[-\u2013\u2014]\s(?!(?<=\d...)\d)|\u2014")
_KEPT_AWAY = re.compile(
    r"\b(?:keep\w*|kept|stay\w*)\b[^,;:]{0,80}?\b(?:away|off|out of|clear of|apart|far from|separate)\b|\bclear\b[^;:]{0,120}\boff\b"
    r"|\bleave\b(?:(?!\band\b)[^,;:]){0,40}?\b(?:off|out)\b",
    re.IGNORECASE | re.DOTALL,
)
_SAID_OF_IT = re.compile(
    r"[^\w'’-]*(?:[\w'’-]+[^\w'’-]+){0,4}?(?:is|are|must|may|should|can|does|do|has|have|would|will|belongs?|stays?|goes|go|gets?)\s+(?:be\s+)?"
    r"(?:only\s+)?(?:never|not|no\b|nowhere|forbidden|banned|dangerous|wrong|unsafe|out\b|risky|poisonous|explosive|"
    r"deadly|left out|for the floor|for spills|for the bench|kept away|a mistake|a burn|caustic waste)|"
    r"[^\w'’-]*(?:[\w'’-]+[^\w'’-]+){0,1}?(?:(?:isn|aren|mustn|doesn|don|can|shouldn|won)['’]?t|cannot|never)\b|"
    r"[^\w,]*(?:(?:is|are|can|may|will|could|would)\s*)?(?:erupts?|boils?|spits?|explodes?|bursts?|eats?|"
    r"eaten|burns?|kills?|poisons?|attacks?|attacked)\b",
    re.IGNORECASE,
)
# What a reason or a condition says is not said of what stands before it.
_ENDS = re.compile(r",|\b(?:if|when|while|because|since|as long as)\b", re.IGNORECASE)
_EXPLAINS = re.compile(
    r"\b(?:eats|eaten|burns(?! (?:are|need))|blinds|gives off|give off|lies on|lie on|floats?|measures?|is for|are for|could|boils|"
    r"spits|makes|make|would|destroys|attacks|cracks|shatters|"
    r"means|became|becomes|was|were|because|happens|causes?|reacts?|swells?|erupts?|contains?|looks?|feels?|smells?|"
    r"comes from|is called)\b",
    re.IGNORECASE,
)
_PERMITS = re.compile(r"\b(?:can|may|should|must|has to|have to) be\b", re.IGNORECASE)
_IF = re.compile(
    r"(?:^|(?<=[,;:]\s)|(?<=\bor\s)|(?<=\band\s)|(?<=\s))\b(?:if|in case|should (?=(?:any|some|the|a|lye|soap)\b)|"
    r"whenever|when(?=\s+(?:lye|raw soap|soap|oil|something|anything)\s+(?:gets|splashes|spills|lands|"
    r"touches)))\b[^,;:]*(?:,|$)",
    re.IGNORECASE,
)
_FINE = re.compile(r"\b(?:forbidden|banned|not allowed|wrong|a mistake|myth|old wives)\b", re.IGNORECASE)


@dataclass(frozen=True)
class Clause:
    """A piece of a sentence that is read by itself: its words, and where in the sentence it begins."""

    sentence: Sentence
    words: str
    begin: int
    in_another_order: bool = False

    def span(self, match: re.Match[str]) -> tuple[int, int]:
        """Return where in the sentence a match begins and ends, which is the whole clause where its words stand in another order."""
        if not self.in_another_order:
            return self.begin + match.start(), self.begin + match.end()
        words = self.words.rstrip(" .")
        return self.begin + len(words) - len(words.lstrip()), self.begin + len(words)

    @cached_property
    def is_fine(self) -> bool:
        """Tell whether it says itself that what it speaks of is wrong."""
        return _FINE.search(self.words) is not None

    @cached_property
    def supposed(self) -> tuple[tuple[int, int], ...]:
        """Return where something is only supposed."""
        return tuple(one.span() for one in _IF.finditer(self.words))

    @cached_property
    def negating(self) -> str:
        """Return its words with blanks for what looks like a negation and is none."""
        return without_seeming_ones(self.words)

    @cached_property
    def kept_away(self) -> tuple[tuple[int, int], ...]:
        """Return where something is kept from something."""
        return tuple(one.span() for one in _KEPT_AWAY.finditer(self.negating))


def clauses_of(sentence: Sentence) -> tuple[Clause, ...]:
    """Divide a sentence at colons, semicolons and dashes. A match is looked for inside one clause."""
    found, begin = [], 0
    for match in _DIVIDES.finditer(sentence.words):
        found.append(Clause(sentence, sentence.words[begin : match.start()], begin))
        begin = match.end()
    found.append(Clause(sentence, sentence.words[begin:], begin))
    return tuple(clause for clause in found if clause.words.strip())


def is_order(sentence: Sentence) -> bool:
    """Tell whether a sentence orders: it begins with a verb or says what people do, be it after words that lead in to it, or a reason."""
    return orders_something(sentence.words)


def matches_in(sentence: Sentence, words: re.Pattern[str]) -> Iterator[tuple[Clause, re.Match[str]]]:
    """Yield wherever a sentence says one of some words, each with its clause."""
    return ((clause, match) for clause in clauses_of(sentence) for match in words.finditer(clause.words))


def says(sentence: Sentence, words: re.Pattern[str]) -> bool:
    """Tell whether a sentence says one of some words, and does not deny, suppose or ask it."""
    return any(stands(clause, match) for clause, match in matches_in(sentence, words))


def orders(sentence: Sentence, words: re.Pattern[str]) -> bool:
    """Tell whether a sentence orders what one of some words says, and does not deny or suppose it."""
    return is_order(sentence) and says(sentence, words)


def is_bare_order(sentence: Sentence) -> bool:
    """Tell whether a sentence begins with the verb of an order."""
    return begins_order(sentence.words)


def explains(clause: Clause) -> bool:
    """Tell whether a clause tells how things are, and orders nothing: the first of a sentence as part of it, each other by itself."""
    if not _EXPLAINS.search(clause.words) or (clause.in_another_order and _PERMITS.search(clause.words)):
        return False
    return not (any(map(orders_something, clause.words.split(", "))) if clause.begin else is_order(clause.sentence))


def stands(clause: Clause, match: re.Match[str], *, says_no_itself: bool = False) -> bool:
    """Tell whether a match is meant as it stands.

    False where the sentence asks, where the match lies in what is only supposed ("if lye splashes"), or where it is negated: before it in
    its clause, inside it, or by what is said of it. `says_no_itself`: the match is about something missing, so that its own "no" is no
    negation of it.
    """
    if clause.sentence.is_question or clause.is_fine:
        return False
    if any(begin <= match.start() and match.end() <= end for begin, end in clause.supposed):
        return False
    words = clause.negating
    before, inside, after = words[scope(words, match.start()) : match.start()], words[match.start() : match.end()], words[match.end() :]
    if negates(before):
        return False
    if says_no_itself:
        return True
    if lists_no(before, inside) or denies_within(inside):
        return False
    if any(begin <= match.end() and end >= match.start() for begin, end in clause.kept_away):
        return False
    return not _SAID_OF_IT.match(_ENDS.split(after)[0])


def first_meant(sentence: Sentence, clauses: Iterable[Clause], patterns: tuple[WordPattern, ...]) -> Place | None:
    """Return the place of the first match of patterns in clauses of a sentence that stands as an instruction; None where none does."""
    for clause in clauses:
        words = Words(clause.words)
        for pattern in possible_in(patterns, words):
            for match in words.find_all(pattern):
                if stands(clause, match):
                    return sentence.place(*clause.span(match))
    return None
