"""Lengths of time that a studio writes, `6 weeks`, in the language that is spoken; what says more than that stays as it is written."""

from builder.rules.durability import plain_length_in
from builder.words.say import messages, say_count

_FORMS = {
    "day": messages("{count}\u00a0day", "{count}\u00a0days"),
    "week": messages("{count}\u00a0week", "{count}\u00a0weeks"),
    "month": messages("{count}\u00a0month", "{count}\u00a0months"),
    "year": messages("{count}\u00a0year", "{count}\u00a0years"),
}


def length_words(written: str) -> str:
    """Return a length of time in words."""
    length = plain_length_in(written)
    return say_count(*_FORMS[length[1]], length[0]) if length else written
