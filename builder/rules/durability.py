"""How long something keeps, from the words of a recipe: `3 months`, `12 months after the cure`, `6 weeks`, or in French `12 mois`."""

import re

from builder.model.keeping.durability import Durability

_FRENCH = {"jour": "day", "semaine": "week", "mois": "month", "an": "year"}
_LENGTH = re.compile(rf"(\d{{1,3}})\s+({'|'.join((*_FRENCH.values(), *_FRENCH))})s?\b", re.IGNORECASE)
_FROM_THE_CURE = re.compile("cure|maturation", re.IGNORECASE)
_DAYS = {"day": 1, "week": 7}


def durability_in(text: str) -> Durability | None:
    """Read the length of time with which a text begins; None where it begins with something else."""
    match = _LENGTH.match(text.strip())
    if not match:
        return None
    number, unit = int(match[1]), _unit(match)
    if unit in _DAYS:
        return Durability(0, number * _DAYS[unit])
    return Durability(number * (12 if unit == "year" else 1), 0)


def plain_length_in(text: str) -> tuple[int, str] | None:
    """Read a text that is a length of time and nothing else: its number and its unit; None for any other."""
    match = _LENGTH.fullmatch(text.strip())
    return (int(match[1]), _unit(match)) if match else None


def counts_from_the_cure(keeps: str) -> bool:
    """Tell whether a soap is said to keep for so long after its cure."""
    return bool(_FROM_THE_CURE.search(keeps))


def _unit(length: re.Match[str]) -> str:
    unit = length[2].casefold()
    return _FRENCH.get(unit, unit)
