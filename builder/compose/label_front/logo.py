"""The logo of the studio as the brand mark of a front, in place of its name in capitals. Lengths in millimetres.

Decided: it gives way to the name where it would be less than 4 mm high, and on a ground of the accent if nothing shows through it. Why: a
logo that cannot be made out says nothing, and a white box on a coloured ground looks like a mistake.
"""

from builder.compose.label.label_texts import Run
from builder.compose.label_front.designs import Ornament
from builder.compose.label_front.ground import Ground
from builder.compose.label_front.space import Space
from builder.compose.label_layout.label_lines import Block

# How high a logo is to the height of its label; below which height it gives way; how high it is at the least and at the most where there is
# room, and how much of the width it takes at the most.
OF_LABEL, LEAST, LOWEST, MOST, OF_WIDTH = 0.1, 4.0, 5.0, 8.0, 0.66


def logo_block(ground: Ground, space: Space, y: float) -> Block | None:
    """Place the logo below a height; None where there is none, or too little room for it."""
    logo, label = ground.text.logo, ground.label
    if logo is None or (ground.design.ornament is Ornament.ON_GROUND and not ground.to_fill_in and not logo.see_through):
        return None
    high = max(LOWEST, min(MOST, OF_LABEL * label.height))
    _, free = space.across(y, y + high)
    high = min(high, OF_WIDTH * free / logo.proportion)
    if high < LEAST:
        return None
    x, width = space.across(y, y + high)
    wide = high * logo.proportion
    left = x + (width - wide) / 2 if ground.is_centred else x
    return Block(left, y, wide, 0.0, ((Run(ground.text.brand),),), picture=logo.file, high=high)
