"""What stands in braces: the name of an amount, `passage: NAME` and `caution: NAME` in paragraphs of their own, or `drawing: NAME`."""

import re

from builder.read.text.markdown import Token

STANDING_ALONE = ("passage", "caution")
DRAWING = "drawing"  # It stands in a step, or with others in a paragraph of their own.
BEFORE_A_COLON = (*STANDING_ALONE, DRAWING)
_WITH_COLON = re.compile(r"([^:]*?) ?: ?(.*)")


def divide_brace(written: str) -> tuple[str, str]:
    """Return the word before the colon, small, and the name after it; without a colon the word is empty."""
    inside = " ".join(written[1:-1].split())
    match = _WITH_COLON.fullmatch(inside)
    return (match[1].casefold(), match[2]) if match else ("", inside)


def standing_alone(inline: Token) -> tuple[str, str] | None:
    """Return the word and the name of a paragraph that is only `{passage: NAME}` or `{caution: NAME}`."""
    children = inline.children or []
    if len(children) != 1 or children[0].type != "brace":
        return None
    word, name = divide_brace(children[0].content)
    return (word, name) if word in STANDING_ALONE and name else None


def drawings_alone(inline: Token) -> bool:
    """Tell whether a paragraph holds nothing but drawings."""
    children = inline.children or []
    braces = [child for child in children if child.type == "brace"]
    others = [child for child in children if child.type not in ("brace", "softbreak") and (child.type != "text" or child.content.strip())]
    return bool(braces) and not others and all(divide_brace(child.content)[0] == DRAWING for child in braces)
