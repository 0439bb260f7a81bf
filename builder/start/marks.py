"""The marks of a starter, filled: `[[name]]` becomes the value of that name, `[[100 g|3.5 oz]]` the one or the other by the units."""

import json
import re
from collections.abc import Mapping

_MARK = re.compile(r"\[\[([^\[\]\n]+)\]\]")
# They stand for what depends on a recipe, and `lesson_text.py` fills them.
LESSON_MARKS = ("weigh", "then")
_BEFORE_NOTE = re.compile(r"(?<=\S) {2,}# ")
# A text that YAML reads as itself without quotes, in a line of its own, and in a list.
_PLAIN = re.compile(r"[^\W_][^\n:#\[\]{}\"&*!|>%`\\]*")
_WORDS = ("yes", "no", "true", "false", "on", "off", "null", "y", "n", "rest")


def filled(text: str, values: Mapping[str, str], *, in_ounces: bool) -> str:
    """Fill the marks of a text. Raises KeyError for a name that has no value."""

    def fill(mark: re.Match[str]) -> str:
        grams, between, ounces = mark[1].partition("|")
        if between:
            return ounces if in_ounces else grams
        return mark[0] if mark[1].split(" ")[0] in LESSON_MARKS else values[mark[1]]

    return _BEFORE_NOTE.sub("   # ", _MARK.sub(fill, text))


def scalar(text: str) -> str:
    """Write a text so that YAML reads it as that text, quoted only where it has to be."""
    is_plain = _PLAIN.fullmatch(text) and text == text.strip() and text.casefold() not in _WORDS
    return text if is_plain else json.dumps(text, ensure_ascii=False)


def flow(texts: tuple[str, ...]) -> str:
    """Write a list in one line."""
    return f"[{', '.join(json.dumps(text, ensure_ascii=False) if ',' in text else scalar(text) for text in texts)}]"
