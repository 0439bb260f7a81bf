"""What is done to a thing, said as an order: "the lye is poured in" becomes "poured the lye is in".

Patterns of words look for a verb and, behind it, for what it is done to. Every word is kept, so that what is denied stays denied.
"""

import re

# Participles that no rule makes, of verbs that patterns look for; each begins as its verb does.
PARTICIPLES = {
    "beat": "beaten", "bend": "bent", "blow": "blown", "eat": "eaten",
    "give": "given", "shake": "shaken", "take": "taken", "throw": "thrown",
}  # fmt: skip
_LEAD = r"(?P<lead>[\W_]*(?:(?:then|now|next|first|here|in the end|after that),?\s+)?)"
_SUBJECT = r"(?P<subject>(?:(?!(?:is|are|if|when|while|once|because|that|which|who)\b)[\w'’-]+[\s,]+){1,8}?)"
_BE = (
    r"(?P<be>(?:is|are|gets?|(?:can|may|could|might|should|must|will|has to|have to|needs? to|is to|are to) be)\s+"
    r"(?:(?:then|now|best|also|first|next|all|just|always|\w+ly)\s+){0,2})"
)
_DONE = rf"(?P<done>\w{{2,}}ed|put|{'|'.join(PARTICIPLES.values())})\b"
_PASSIVE = re.compile(rf"{_LEAD}{_SUBJECT}{_BE}{_DONE}", re.IGNORECASE)


def as_order(words: str) -> str | None:
    """Return the words of a clause with the verb before what it is done to; None where it tells of nothing that is done."""
    found = _PASSIVE.match(words)
    if found is None:
        return None
    return f"{found['lead']}{found['done']} {found['subject']}{found['be'].rstrip()}{words[found.end() :]}"
