"""What finished HTML says, without its tags."""

import re
from html import unescape

# A drawing shows once more what its step says.
_DRAWING = re.compile(r"<figure\b.*?</figure>", re.DOTALL)
_TAG = re.compile(r"<[^>]*>")


def text_in(html: str, for_a_tag: str = " ") -> str:
    """Return the words of HTML on one line; `for_a_tag` stands in place of each tag."""
    return " ".join(unescape(_TAG.sub(for_a_tag, html)).split())


def told_in(html: str) -> str:
    """Return the words of HTML on one line, without those of its drawings."""
    return text_in(_DRAWING.sub("", html), for_a_tag="")
