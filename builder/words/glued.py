"""A space that stands before a sign as the language writes it, and at which no line breaks.

A space before a colon, a percent sign or a closing guillemet, and after an opening one, does not break (usage of French in Canada, from
memory). English has none of these spaces.
"""

import re

_SPACE = re.compile("(?<=«) | (?=[:%»])")
_NBSP = "\u00a0"


def glued(text: str) -> str:
    """Keep such signs with the word beside them."""
    return _SPACE.sub(_NBSP, text)
