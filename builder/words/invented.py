"""What a new studio has in place of its own address and mail address: invented, and never to be printed on what people take home.

Decided: an address is invented where a line of it is that of an example, and a mail or web address where its domain is example.com,
example.net or example.org, which are reserved for that (RFC 2606, section 3); names ending in `.example` are taken as they stand, since
only examples that are read as such have them.
"""

import re

_LINE = re.compile(r"\bexample (?:street|town)\b", re.IGNORECASE)
_DOMAIN = re.compile(r"(?:^|[@/.])example\.(?:com|net|org)(?![\w-]|\.\w)", re.IGNORECASE)


def is_invented_address(lines: tuple[str, ...]) -> bool:
    """Tell whether a postal address is one to put the studio's own in place of."""
    return any(_LINE.search(line) for line in lines)


def is_invented_contact(text: str) -> bool:
    """Tell whether a mail or web address is one that nobody can have."""
    return bool(_DOMAIN.search(text))
