"""How a batch as weighed is divided over containers."""

from math import floor

from builder.model.batch_sheet import Portions
from builder.model.quantity import Mass


def reckon_portions(total: Mass, fill: Mass, wanted: int | None, kept_back: Mass) -> Portions:
    """Give how many whole portions a batch yields and what is left once they are filled.

    `kept_back` is what fills no container: the weight to show and what stays in the pot. It is not part of what is left.
    """
    to_fill = total - kept_back
    yields = max(floor(to_fill / fill), 0)
    if wanted is not None:
        yields = min(yields, wanted)
    return Portions(fill, wanted, yields, to_fill - fill * yields)
