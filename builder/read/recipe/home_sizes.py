"""The size of a batch for the kitchen at home: `250 g` in all, `500 g of oils`, or `4 containers`."""

import re

from builder.model.dates.studio_class import HomeSize
from builder.model.recipe.quantity import Mass
from builder.read.text.text_error import AmountError
from builder.read.values.amounts import parse_count, parse_mass
from builder.read.values.kinds import Kind
from builder.read.values.measures import measure

_OF_OILS = re.compile(r"(.*\S)\s+of\s+(?:the\s+)?(?:oils?|fats?)", re.IGNORECASE)
_REMEDY = 'Write a weight such as "250 g", or "500 g of oils", or "4 containers".'


def parse_home_size(text: str) -> HomeSize:
    """Read a home size and keep how it was written. Raises AmountError."""
    of_oils = _OF_OILS.fullmatch(text)
    try:
        if of_oils:
            return HomeSize(text, oils=parse_mass(of_oils[1]))
        measured = measure(text, Kind.WEIGHT, Kind.COUNT)
        if measured.kind is Kind.WEIGHT:
            return HomeSize(text, total=Mass(measured.number))
        return HomeSize(text, containers=parse_count(text).number)
    except AmountError as error:
        raise AmountError(error.name, error.wrong, _REMEDY) from None
