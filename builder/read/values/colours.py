"""Colours as pages on the web name them."""

import re

from builder.model.finding_kind import STOP, FindingKind
from builder.read.text.text_error import TextError

FINDS = (FindingKind("colour-unreadable", STOP, "A colour is not written as six digits."),)
_DIGITS = re.compile(r"#?([0-9a-fA-F]{6}|[0-9a-fA-F]{3})")


def parse_colour(text: str) -> str:
    """Read `#7a3b69`, or `#736` for short. Raises TextError."""
    found = _DIGITS.fullmatch(text.strip())
    if found is None:
        wrong = f'"{text}" is not a colour that can be used here.'
        remedy = 'Write # and six digits in quotes, as programs for pictures show them, for example "#7a3b69".'
        raise TextError("colour-unreadable", wrong, remedy)
    digits = found[1].lower()
    return "#" + (digits if len(digits) == 6 else "".join(2 * digit for digit in digits))
