"""Whether a match in a sentence is an instruction: not negated, not reported, not asked, not explained.

Rules of English grammar as they are needed for steps of lessons: a negation rules over what follows it in its clause; a new order after a
comma begins a new clause; what stands behind the danger excuses it only where it is said of it ("is never", "is forbidden").
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from builder.model.place import Place
from builder.model.teaching.prose import Sentence
from builder.model.teaching.word_pattern import WordPattern, Words, possible_in

_DIVIDES = re.compile(r"[;:!?]|\.\s|\s[-\u2013\u2014]\s(?!(?<=\d...)\d)|\u2014")
_VERBS = (
    "add|apply|arrange|ask|attach|avoid|bag|bake|balance|beat|begin|blend|bless|blot|boil|bottle|break|"
    "bring|brush|build|burn|bury|buy|calm|cap|carry|check|chill|choose|chop|chuck|clean|clear|clip|close|coat|"
    "collect|combine|come|cook|cool|count|cover|crumble|crush|cure|cut|dab|decant|decorate|dig|dilute|dip|"
    "defrost|disinfect|dissolve|divide|do|dose|dot|drain|drape|draw|dress|drink|drip|drizzle|drop|dry|dump|dust|"
    "eat|empty|enjoy|ensure|eyeball|feed|feel|fetch|fill|filter|find|finish|fit|flush|foam|fold|follow|freeze|"
    "froth|funnel|gargle|gather|get|gift|give|go|grate|grease|grind|guess|hammer|hand|handle|hang|heap|"
    "heat|help|hold|immerse|infuse|inhale|insert|invert|join|keep|knead|knock|label|ladle|lather|lay|leave|"
    "let|lick|lift|light|line|look|loosen|lower|make|mark|mask|massage|measure|melt|microwave|mist|mix|"
    "mold|mop|mould|move|note|open|pack|paint|pass|paste|pat|peel|pick|pierce|pile|place|plug|polish|pop|"
    "pour|prepare|press|prick|pull|pulse|pump|push|put|raise|reach|read|record|reheat|remember|remove|"
    "repeat|replace|rest|rinse|roll|rotate|rub|run|sanitise|sanitize|save|scatter|scent|scoop|scrape|screw|"
    "scrub|seal|see|sell|send|separate|serve|set|shake|shape|sharpen|shut|sieve|sift|simmer|sip|sit|skip|"
    "slice|slide|slosh|smell|smooth|sniff|soak|soften|spin|splash|split|spoon|spray|spread|sprinkle|squeeze|"
    "stand|start|stay|steam|steep|sterilise|sterilize|stick|stir|stop|store|strain|substitute|suck|suspend|"
    "swallow|swap|sweep|swill|swirl|swish|switch|take|tap|taste|tear|tell|test|thaw|thin|throw|tie|tilt|"
    "tip|tongue|top|top-up|touch|transfer|treat|trickle|trim|try|tuck|turn|twist|undo|unmold|unmould|"
    "unplug|unscrew|unwrap|use|wait|walk|warm|wash|watch|wear|weigh|wet|whip|whisk|wipe|wrap|write|zap"
)
_ADVERB = (
    r"(?:(?:then|now|next|finally|first|second|third|lastly|and|or|also|just|simply|please|quickly|slowly|carefully|"
    r"gently|gradually|always|immediately|"
    r"once|again|well|so|instead|afterwards?|later|meanwhile|together|\w+ly)\b[\s,]*)*"
)
_ORDER = rf"{_ADVERB}(?:{_VERBS})\b(?!\s+(?:is|are|was|of|can|may)\b)"
_PEOPLE = (
    rf"{_ADVERB}(?:you|we|students?|the students?|guests?|everyone|everybody|each (?:student|guest|pair|group|"
    rf"person)|the teacher|teachers?|an assistant|children|kids|"
    r"one partner|pairs|groups|they|let|let's|have (?:the|each|every)|i)\b"
)
_BEGINS = re.compile(rf"[\W_]*(?:{_ORDER}|{_PEOPLE})", re.IGNORECASE)
_BEGINS_ORDER = re.compile(rf"[\W_]*{_ORDER}", re.IGNORECASE)
_SO = re.compile(rf",\s*so\s+{_ORDER}", re.IGNORECASE)
_LEADS_IN = re.compile(
    r"[\W_]*(?:when|while|if|once|as|after|before|to|for|in|with|without|at|on|now|then|until|during|not (?:only|too)|don['’]t|do not|never|no)\b",
    re.IGNORECASE,
)
_NEW_ORDER = re.compile(rf",\s*(?=(?:but|just|then|and|instead|simply)?\s*{_ORDER})|,?\s+\b(?:but|until|unless)\b", re.IGNORECASE)
_OR_SOON = re.compile(r"(?:[\w'’-]+\s+){1,2}n?or\b", re.IGNORECASE)
_GOES_ON = re.compile(r"\b(?:or|nor)\b", re.IGNORECASE)
_NO_NEGATION = re.compile(
    r"\bnot only\b|\bno(?:t)? (?:more|longer|less|later|fewer|hotter|warmer|higher) than\b|\bnot (?:too|yet|so|quite|very|just)\b"
    r"|\b(?:don['’]t|do not|never|no need to) (?:forget|hesitate|worry|be (?:afraid|shy|scared)|mind|wait|stop)\b|"
    r"\bno (?:problem|worries|matter|time|rush|hurry)\b"
    r"|\bif not\b|\bwhether or not\b|\bor not\b",
    re.IGNORECASE,
)
_STRONG = re.compile(
    r"\b(?:do not|does not|did not|don['’]t|doesn['’]t|didn['’]t|never|not|must not|cannot|can['’]t|mustn['’]t|"
    r"shouldn['’]t|won['’]t|isn['’]t|aren['’]t|nor|neither|nobody|no one|nothing|none|no need|needn['’]t"
    r"|avoid\w*|beware|refrain\w*|refuse\w*|forbid\w*|stop if|instead of|rather than|in place of|mind that|no longer|danger of|"
    r"risk of|harm of|warn\w*|prevent\w*|see why|explain\w*|why)\b",
    re.IGNORECASE,
)
_WEAK = re.compile(r"\b(?:without|no|free of|free from|other than|except|instead of|than|skip\w*)\b", re.IGNORECASE)
_NEVER_WITHOUT = re.compile(r"\b(?:never|not|don['’]t|nobody|no one|cannot|can['’]t)\b[^,;:]*\bwithout\W+(?:[\w'’-]+\W+){0,4}$", re.IGNORECASE)
# "No food, drink and gum at the bench" forbids all of a list; what comes after a verb that is no noun is a new order.
_NO_LIST = re.compile(
    r"[\W_]*(?:(?:at|on|in|near|by)\s[^,;:]{0,30}\s)?(?:there\s+(?:is|are)\s+)?no\s+"
    r"(?P<listed>(?:(?!(?:in|into|with|on|onto|to|over|then|while|when|for|if)\b)[\w'’-]+[\s,/()]+){0,8})$",
    re.IGNORECASE,
)
_NOUN_TOO = r"(?:drink|snack|smoke)s?\b"
_LISTED_VERB = re.compile(rf"\s*(?:and\s+|or\s+)?{_NOUN_TOO}(?=\W+(?:and|or|at|on|in|near|by|while|when)\b)", re.IGNORECASE)
_AND_ORDER = re.compile(rf"\band\s+(?!{_NOUN_TOO}){_ORDER}", re.IGNORECASE)
_LEADS_ON = re.compile(r"\b(?:in|into|with|on|onto|to|over|and|then)\b", re.IGNORECASE)
_KEPT_AWAY = re.compile(
    r"\b(?:keep\w*|kept|stay\w*)\b[^,;:]{0,80}?\b(?:away|off|out of|clear of|apart|far from|separate)\b|\bclear\b[^;:]{0,120}\boff\b"
    r"|\bleave\b[^,;:]{0,40}?\b(?:off|out)\b",
    re.IGNORECASE | re.DOTALL,
)
_SAID_OF_IT = re.compile(
    r"\W*(?:[\w'’-]+\W+){0,4}?(?:is|are|must|may|should|can|does|do|has|have|would|will|belongs?|stays?|goes|go|gets?)\s+(?:be\s+)?"
    r"(?:only\s+)?(?:never|not|no\b|nowhere|forbidden|banned|dangerous|wrong|unsafe|out\b|risky|poisonous|explosive|"
    r"deadly|left out|for the floor|for spills|for the bench|kept away|a mistake|a burn|caustic waste)|"
    r"\W*(?:[\w'’-]+\W+){0,1}?(?:(?:isn|aren|mustn|doesn|don|can|shouldn|won)['’]?t|cannot|never)\b|"
    r"[^\w,]*(?:is|are|can|may|will|could|would)?\s*(?:erupts?|boils?|spits?|explodes?|bursts?|eats?|"
    r"eaten|burns?|kills?|poisons?|attacks?|attacked)\b",
    re.IGNORECASE,
)
_EXPLAINS = re.compile(
    r"\b(?:eats|eaten|burns|blinds|gives off|give off|lies on|lie on|floats?|measures?|is for|are for|could|boils|"
    r"spits|makes|make|would|destroys|attacks|cracks|shatters|"
    r"means|became|becomes|was|were|because|happens|causes?|reacts?|swells?|erupts?|contains?|looks?|feels?|smells?|"
    r"comes from|is called)\b",
    re.IGNORECASE,
)
_IF = re.compile(
    r"(?:^|(?<=[,;:]\s)|(?<=\bor\s)|(?<=\band\s)|(?<=\s))\b(?:if|in case|should (?=(?:any|some|the|a|lye|soap)\b)|"
    r"whenever|when(?=\s+(?:lye|raw soap|soap|oil|something|anything)\s+(?:gets|splashes|spills|lands|"
    r"touches)))\b[^,;:]*(?:,|$)",
    re.IGNORECASE,
)
_ONLY_NO = re.compile(r"[\W_]*(?:never|no|not|avoid|do not|don['’]t)[\W_]*(?:ever|under any circumstances)?[\W_]*", re.IGNORECASE)
_FINE = re.compile(r"\b(?:forbidden|banned|not allowed|wrong|a mistake|myth|old wives)\b", re.IGNORECASE)


@dataclass(frozen=True)
class Clause:
    """A piece of a sentence that is read by itself: its words, and where in the sentence it begins."""

    sentence: Sentence
    words: str
    begin: int

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
        return _NO_NEGATION.sub(lambda found: " " * len(found[0]), self.words)

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
    if _SO.search(sentence.words):
        return True
    first, *rest = re.split(r"[,;:]\s", sentence.words)
    return bool(_BEGINS.match(first)) or (bool(_LEADS_IN.match(first)) and any(map(_BEGINS.match, rest)))


def says(sentence: Sentence, words: re.Pattern[str]) -> bool:
    """Tell whether a sentence says one of some words, and does not deny, suppose or ask it."""
    matches = ((clause, match) for clause in clauses_of(sentence) for match in words.finditer(clause.words))
    return any(stands(clause, match) for clause, match in matches)


def orders(sentence: Sentence, words: re.Pattern[str]) -> bool:
    """Tell whether a sentence orders what one of some words says, and does not deny or suppose it."""
    return is_order(sentence) and says(sentence, words)


def is_bare_order(sentence: Sentence) -> bool:
    """Tell whether a sentence begins with the verb of an order."""
    return bool(_BEGINS_ORDER.match(sentence.words))


def explains(clause: Clause) -> bool:
    """Tell whether a clause tells how things are, and orders nothing."""
    return bool(_EXPLAINS.search(clause.words)) and not is_order(clause.sentence)


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
    scope = _scope(words, match.start())
    before, inside, after = words[scope : match.start()], words[match.start() : match.end()], words[match.end() :]
    if _negates(before) or (not says_no_itself and _lists_no(before, inside)):
        return False
    if not says_no_itself and (_STRONG.search(inside) or re.search(r"\b(?:no|without)\b", inside, re.IGNORECASE)):
        return False
    if not says_no_itself and any(begin <= match.end() and end >= match.start() for begin, end in clause.kept_away):
        return False
    rest = after if says_no_itself else after.split(",")[0]
    return not _SAID_OF_IT.match(rest) if not says_no_itself else True


def _scope(words: str, begin: int) -> int:
    """Return where the clause begins that a match stands in: after the last comma with a new order, unless it goes on with `or`.

    The match may be that order itself: "do not wait, pour it in".
    """
    start, goes_on = 0, max((found.start() for found in _GOES_ON.finditer(words, 0, begin)), default=-1)
    for found in _NEW_ORDER.finditer(words):
        if found.end() > begin:
            break
        head = words[start : found.start()]
        is_list = (goes_on >= found.start() or _OR_SOON.match(words, begin)) and _negates(head)
        is_list = is_list or bool(_NO_LIST.match(f"{head} ") and _LISTED_VERB.match(words, found.end()))
        only_no = _ONLY_NO.fullmatch(head) is not None
        if not is_list and not only_no:
            start = found.end()
    return start


def _negates(before: str) -> bool:
    if _NEVER_WITHOUT.search(before):
        return False
    return _STRONG.search(before) is not None or any(_reaches(before[weak.end() :]) for weak in _WEAK.finditer(before))


def _reaches(between: str) -> bool:
    """Tell whether a "no" or "without" still rules over what comes after some words."""
    return len(between.split()) <= 4 and not _LEADS_ON.search(between)


def _lists_no(before: str, inside: str) -> bool:
    """Tell whether a match is of a list that begins with "no"."""
    found = _NO_LIST.fullmatch(before)
    return found is not None and not _AND_ORDER.search(found["listed"] + inside)


def first_meant(sentence: Sentence, clauses: Iterable[Clause], patterns: tuple[WordPattern, ...]) -> Place | None:
    """Return the place of the first match of patterns in clauses of a sentence that stands as an instruction; None where none does."""
    for clause in clauses:
        words = Words(clause.words)
        for pattern in possible_in(patterns, words):
            for match in pattern.find_all(words):
                if stands(clause, match):
                    return sentence.place(clause.begin + match.start(), clause.begin + match.end())
    return None
