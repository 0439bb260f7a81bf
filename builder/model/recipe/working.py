"""How one number of a batch came to be, with what went into it."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Given:
    """One number that went into a working, in `unit`: what it is a number of (`of`), and whose figure it is.

    `source` is empty for the recipe's own, and may be `from_memory`. `name` is a message (`words/say.py`).
    """

    name: str
    value: Fraction
    unit: str
    source: str = ""
    of: str = ""
    from_memory: bool = False


@dataclass(frozen=True)
class Working:
    """How one result came to be. `rule` is a stable key; its words are in `compose/recipe/wording.py`."""

    rule: str
    of: str
    given: tuple[Given, ...]
    result: Fraction
    unit: str
