"""How a picture is shown: the widths in which a page names it, and which of them a phone loads."""

from dataclasses import dataclass

# The longest side in points: a page of paper is 190 mm wide, where that is 214 points to the inch.
LONGEST = 1600
# The widths in which a page names a photograph, and the widest that a phone is told of: in a row of pictures, and by itself.
WIDTHS = (480, 960, LONGEST)
ON_A_PHONE_IN_A_ROW, ON_A_PHONE = WIDTHS[:2]
# What a studio writes in place of a description of a picture that says nothing which the text does not: such a picture is passed over in
# silence. Nothing written is no decision, and a finding.
DECORATIVE = "decorative"


def heard(written: str) -> str:
    """Return what those hear who do not see a picture, from what the studio wrote of it; nothing of one that is there to please the eye."""
    return "" if written.strip().casefold() == DECORATIVE else written


@dataclass(frozen=True)
class Size:
    """Width and height in points."""

    width: int
    height: int


@dataclass(frozen=True)
class PictureFile:
    """A picture of the studio as it is published. `size` is None where a drawing does not say; `see_through`: what is behind it shows."""

    size: Size | None
    is_photograph: bool = False
    see_through: bool = False

    @property
    def widths(self) -> tuple[int, ...]:
        """Return the widths in which a photograph is published: none above its own."""
        if not self.is_photograph or self.size is None:
            return ()
        return (*(width for width in WIDTHS if width < self.size.width), self.size.width)

    @property
    def everywhere(self) -> str:
        """Return the ending of the kind of file that every browser shows."""
        return ".png" if self.see_through else ".jpg"

    @property
    def usual_width(self) -> int:
        """Return the width in which a photograph is shown by a browser that cannot choose."""
        return min(ON_A_PHONE, self.widths[-1])
