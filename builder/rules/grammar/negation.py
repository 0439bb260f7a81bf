"""What a negation rules over: what follows it in its clause, up to a new order, and all of a list that begins with "no"."""

import re
from functools import lru_cache

from builder.rules.grammar.orders import NEW_ORDER, ORDER

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
_NO = re.compile(r"\b(?:no|without)\b", re.IGNORECASE)
_NEVER = re.compile(r"\b(?:never|not|don['’]t|nobody|no one|cannot|can['’]t)\b", re.IGNORECASE)
_WITHOUT_LAST = re.compile(r"\bwithout\W+(?:[\w'’-]+\W+){0,4}$", re.IGNORECASE)
_BREAKS = re.compile(r"[,;:]")
# A "no" reaches over four words, which are seldom longer than so many signs together.
_REACH = 120
# "No food, drink and gum at the bench" forbids all of a list; what comes after a verb that is no noun is a new order.
_NO_LIST = re.compile(
    r"[\W_]*(?:(?:at|on|in|near|by)\s[^,;:]{0,30}\s)?(?:there\s+(?:is|are)\s+)?no\s+"
    r"(?P<listed>(?:(?!(?:in|into|with|on|onto|to|over|then|while|when|for|if)\b)[\w'’-]+[\s,/()]+){0,8})$",
    re.IGNORECASE,
)
_NOUN_TOO = r"(?:drink|snack|smoke)s?\b"
_LISTED_VERB = re.compile(rf"\s*(?:and\s+|or\s+)?{_NOUN_TOO}(?=\W+(?:and|or|at|on|in|near|by|while|when)\b)", re.IGNORECASE)
_AND_ORDER = re.compile(rf"\band\s+(?!{_NOUN_TOO}){ORDER}", re.IGNORECASE)
_LEADS_ON = re.compile(r"\b(?:in|into|with|on|onto|to|over|and|then)\b", re.IGNORECASE)
# A bare "no" is an answer: "No, pour it slowly" orders what it says.
_NEW_CLAUSE = re.compile(r",\s*(?:so|but|because|since|you|we|they|it)\b", re.IGNORECASE)
_ONLY_NO = re.compile(r"[\W_]*(?:never|not|avoid|do not|don['’]t)[\W_]*(?:ever|under any circumstances)?[\W_]*", re.IGNORECASE)


@lru_cache(4096)
def without_seeming_ones(words: str) -> str:
    """Return words with blanks for what looks like a negation and is none, as long as they were."""
    return _NO_NEGATION.sub(lambda found: " " * len(found[0]), words)


def scope(words: str, begin: int) -> int:
    """Return where the clause begins that a match stands in: after the last comma with a new order, unless it goes on with `or`.

    The match may be that order itself: "do not wait, pour it in".
    """
    start = 0
    for found in NEW_ORDER.finditer(words[: begin + _REACH]):
        if found.end() > begin:
            break
        head = words[start : found.start()]
        is_list = (_GOES_ON.search(words, found.start(), begin) or _OR_SOON.match(words, begin)) and negates(head)
        is_list = is_list or bool(_NO_LIST.match(f"{head} ") and _LISTED_VERB.match(words, found.end()))
        only_no = _ONLY_NO.fullmatch(head) is not None
        if not is_list and not only_no:
            start = found.end()
    return start


def negates(before: str) -> bool:
    """Tell whether what stands before a match in its clause denies it; who does nothing without something does it with it."""
    without = _WITHOUT_LAST.search(before, len(before) - _REACH)
    if without is not None and _NEVER.search(_BREAKS.split(before[: without.start()])[-1]):
        return False
    weak = _WEAK.finditer(before, len(before) - _REACH)
    return _STRONG.search(before) is not None or any(_reaches(before[one.end() :]) for one in weak)


def _reaches(between: str) -> bool:
    """Tell whether a "no" or "without" still rules over what comes after some words."""
    return len(between.split()) <= 4 and not _LEADS_ON.search(between) and not _NEW_CLAUSE.search(between)


def lists_no(before: str, inside: str) -> bool:
    """Tell whether a match is of a list that begins with "no"."""
    found = _NO_LIST.fullmatch(before)
    return found is not None and not _AND_ORDER.search(found["listed"] + inside)


def denies_within(inside: str) -> bool:
    """Tell whether a match denies itself."""
    return _STRONG.search(inside) is not None or _NO.search(inside) is not None
