"""How long something keeps, from the words of a recipe: `3 months`, `12 months after the cure`, `6 weeks`."""

import re

from builder.model.keeping.durability import Durability

_LENGTH = re.compile(r"(\d{1,3})\s+(day|week|month|year)s?\b", re.IGNORECASE)
_DAYS = {"day": 1, "week": 7}


def durability_in(text: str) -> Durability | None:
    """Read the length of time with which a text begins; None where it begins with something else."""
    match = _LENGTH.match(text.strip())
    if not match:
        return None
    number, unit = int(match[1]), match[2].casefold()
    if unit in _DAYS:
        return Durability(0, number * _DAYS[unit])
    return Durability(number * (12 if unit == "year" else 1), 0)


def plain_length_in(text: str) -> tuple[int, str] | None:
    """Read a text that is a length of time and nothing else: its number and its unit; None for any other."""
    match = _LENGTH.fullmatch(text.strip())
    return (int(match[1]), match[2].casefold()) if match else None
