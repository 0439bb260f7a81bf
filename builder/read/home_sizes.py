"""The size of a batch for the kitchen at home: `250 g` in all, `500 g of oils`, or `4 containers`."""

import re

from builder.model.studio_class import HomeSize
from builder.read.amounts import parse_count, parse_mass
from builder.read.text_error import AmountError

_OF_OILS = re.compile(r"(.*\S)\s+of\s+(?:the\s+)?(?:oils?|fats?)", re.IGNORECASE)
_REMEDY = 'Write a weight such as "250 g", or "500 g of oils", or "4 containers".'


def parse_home_size(text: str) -> HomeSize:
    """Read a home size and keep how it was written."""
    of_oils = _OF_OILS.fullmatch(text)
    if of_oils:
        return HomeSize(text, oils=parse_mass(of_oils[1]))
    try:
        return HomeSize(text, total=parse_mass(text))
    except AmountError as error:
        if error.name != "unit-of-another-kind":
            raise AmountError(error.name, error.wrong, _REMEDY) from None
    try:
        return HomeSize(text, containers=parse_count(text).number)
    except AmountError as error:
        raise AmountError(error.name, error.wrong, _REMEDY) from None
