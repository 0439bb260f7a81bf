"""A starter for a studio that writes in French: what its labels say is the recipe's own in French, and in English in translation."""

import re
from textwrap import dedent, indent

_HEAD = "# What the label says in English, which the law of Canada asks for beside French.\ntranslations:\n  English:\n    name: [[name]]\n"
_BLOCKS = re.compile(r"^(?=[a-z])", re.MULTILINE)


def swapped(recipe: str, french: str) -> str:
    """Put the French texts of a starter in the place of its English ones, and those under `translations:`."""
    told = _by_key(dedent(french.partition("  French:\n")[2]))
    own = _by_key(recipe)
    moved = [key for key in own if key in told and key != "name"]
    texts = "".join(told[key] if key in moved else block for key, block in own.items())
    return texts + _HEAD + indent("".join(own[key] for key in moved), "    ")


def _by_key(text: str) -> dict[str, str]:
    """Return the texts of the keys of a mapping, each with its key; under nothing what stands before the first."""
    return {block.partition(":")[0] if block[0].isalpha() else "": block for block in _BLOCKS.split(text) if block}
