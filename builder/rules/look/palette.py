"""The colours of pages by day and by night that follow from the accent and the paper of a studio.

Decided: a colour that cannot be read is found, and a shade of it that can be read is taken meanwhile. Why: whoever looks for a class does
not see the finding.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.model.own_document import Look
from builder.rules.look.colours import HIGH, LEAST, mixed, night, readable

# As `tokens.css` and `screen.css` have them.
INK, WHITE, PAPER, ACCENT = "#12252b", "#ffffff", "#f6f8f7", "#0b5160"
NIGHT_INK = "#ecf3f2"


@dataclass(frozen=True)
class Palette:
    """Colours by the names that styles have for them."""

    day: Mapping[str, str]
    night: Mapping[str, str]


def palette(look: Look) -> Palette:
    """Return the colours; nothing where the studio names none."""
    if not (look.accent or look.paper):
        return Palette({}, {})
    accent, paper = look.accent or ACCENT, paper_of(look)
    pale, inked = _grounds(look)[-1], accent_of(look)
    dark = [night(look.paper or accent, light) for light in (0.075, 0.115, 0.155)]
    lit = readable(accent, tuple(dark), HIGH, darker=False)
    return Palette(
        {
            "paper": paper, "pale": pale, "line": mixed(paper, INK, 0.2), "strong-line": mixed(paper, INK, 0.65), "accent": inked,
            "on-accent": WHITE, "leaf": inked,
        },
        {
            "paper": dark[0], "sheet": dark[1], "pale": dark[2], "line": mixed(dark[1], NIGHT_INK, 0.2),
            "strong-line": mixed(dark[1], NIGHT_INK, 0.6), "accent": lit, "on-accent": dark[0], "leaf": lit,
        },
    )  # fmt: skip


def paper_of(look: Look) -> str:
    """Return the paper on which the ink can be read: that of the studio, or a lighter shade of it."""
    return readable(look.paper, (INK,), HIGH, darker=False) if look.paper else PAPER


def accent_of(look: Look) -> str:
    """Return the accent that can be read on every ground by day: that of the studio, or a darker shade of it."""
    return readable(look.accent or ACCENT, _grounds(look), LEAST, darker=True)


def _grounds(look: Look) -> tuple[str, str, str]:
    """Return the grounds on which words stand by day: the paper, the sheet, and the paper with a little of the accent."""
    paper = paper_of(look)
    return paper, WHITE, mixed(paper, look.accent or ACCENT, 0.08)
