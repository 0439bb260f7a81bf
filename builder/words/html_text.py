"""What finished HTML says, without its tags."""

import re
from html import unescape

_TAG = re.compile(r"<[^>]*>")


def text_in(html: str, for_a_tag: str = " ") -> str:
    """Return the words of HTML on one line; `for_a_tag` stands in place of each tag."""
    return " ".join(unescape(_TAG.sub(for_a_tag, html)).split())
