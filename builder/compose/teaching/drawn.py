"""A drawing to the figure that a document shows: its text alternative, the display of its scale, its caption."""

import re
from html import escape

from builder.model.drawing import READING, Drawing
from builder.words.say import say

# What a scale shows of an amount in words: the number and the unit of the first, without the other unit in brackets.
_ON_A_SCALE = re.compile(r"[\d.,\u00a0\u202f]+\s?(?:kg|g|oz|lb)(?=$|\s\()")

_WIDE = 'width="90mm"'  # Of a drawing with two halves.


def figure_html(drawing: Drawing, amount: str = "") -> str:
    """Return a drawing as HTML; `amount` is that of its step in words, which a scale in it shows where it is a weight."""
    weight = _ON_A_SCALE.match(amount) if drawing.shows_reading else None
    said = say(drawing.alt) + (f" {say('The display shows {weight}.', weight=weight[0])}" if weight else "")
    opened, _, rest = drawing.svg.replace(READING, escape(weight[0]) if weight else "").partition(">")
    caption = f"<figcaption>{escape(say(drawing.caption))}</figcaption>"
    wide = " wide" if _WIDE in opened else ""
    return f'<figure class="drawing{wide}">{opened} role="img"><title>{escape(said)}</title>{rest}{caption}</figure>'
