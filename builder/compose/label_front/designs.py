"""The designs of labels: what differs between them, while the law, the grid and the face of all facts stay the same.

Decided: designs differ in the face of the name, in where the mark of the recipe stands and in what bears the accent; facts have one face
in all of them. Why: a teacher who changes the design changes the dress and no document, and no rule has to be checked anew.

Decided: every sign stands in black; the accent is a flat field beneath it and never a letter. Why: most studios have one grey printer.
"""

from dataclasses import dataclass
from enum import Enum


class Ornament(Enum):
    """Where the mark of the recipe stands."""

    ABOVE = "above the name"
    CORNER = "from a corner, cut by the edge"
    ON_CLOTH = "on a patch of a cloth that is woven from the shares"
    WREATH = "above its petals, which grow around the label"
    ON_GROUND = "again and again on a ground of the accent"


@dataclass(frozen=True)
class Design:
    """One design. `face` is that of the name, `most` its largest size in points, `leading` the height of its lines to its size.

    `border` is how much of each edge its ornament takes, in millimetres. `stripes` are two threads of the accent, `dashes` a seam of it
    with the mark in cross-stitch, `leaves` sprays on both sides of the mark. `kept` is the part of
    the size that a name has without a mark which it keeps beside one, `variant_face` the face of the variant.
    """

    name: str
    face: str
    ornament: Ornament
    is_centred: bool
    capitals: bool = False
    leading: float = 1.0
    most: float = 40.0
    border: float = 0.0
    stripes: bool = False
    dashes: bool = False
    leaves: bool = False
    kept: float = 0.62
    variant_face: str = ""


# A label less wide or high than this, in millimetres, has a narrower border.
FULL_BORDER = 60.0


def border_scale(width: float, height: float) -> float:
    """Return what a border is made smaller by on a small label."""
    return min(1.0, min(width, height) / FULL_BORDER)


DESIGNS: dict[str, Design] = {
    one.name: one
    for one in (
        Design("posy", "label serif", Ornament.ABOVE, is_centred=True, leading=1.02, most=34.0, leaves=True, variant_face="label italic"),
        Design("poster", "label narrow", Ornament.CORNER, is_centred=False, capitals=True, leading=1.1, most=46.0, kept=0.62),
        Design(
            "linen",
            "label light",
            Ornament.ON_CLOTH,
            is_centred=False,
            leading=1.02,
            most=38.0,
            stripes=True,
            kept=0.72,
            variant_face="label light",
        ),
        Design(
            "garland", "label italic", Ornament.WREATH, is_centred=True, leading=1.05, most=34.0, border=5.3, variant_face="label italic"
        ),
        Design("slate", "label heavy", Ornament.ON_GROUND, is_centred=False, leading=1.0, most=34.0, kept=0.72),
        Design(
            "sampler",
            "label hand",
            Ornament.ABOVE,
            is_centred=True,
            leading=1.12,
            most=32.0,
            border=2.6,
            dashes=True,
            variant_face="label hand",
        ),
    )
}
USUAL = DESIGNS["posy"]
