"""The one door to pictures: the bytes of a studio's picture become those that are published, or why they cannot.

A photograph tells where and when it was taken and with what; a drawing can hold programs, names of the computer's folders, and things that
a reader's browser would fetch from elsewhere. Neither is passed on. The same bytes give the same bytes.

Decided: Pillow is loaded for photographs alone. Why: most studios have drawings, and to load it takes as long as to read three recipes.
"""

from functools import lru_cache

from builder.model.picture import LONGEST
from builder.pictures.drawing import clean_drawing
from builder.pictures.picture import Picture, PictureError

__all__ = ["LONGEST", "Picture", "PictureError", "clean_picture", "picture_at"]


@lru_cache(maxsize=32)
def clean_picture(data: bytes, ending: str) -> Picture:
    """Make of a picture what is published; the ending of its name says its kind. Raises PictureError where it cannot be read."""
    if ending.lower() == ".svg":
        return clean_drawing(data)
    from builder.pictures.photograph import FORMATS, clean_photograph

    return clean_photograph(data, FORMATS[ending.lower()])


def picture_at(data: bytes, ending: str, width: int, wanted: str) -> bytes:
    """Make of a picture what a page shows where it is so many points wide, of a kind that an ending says. A drawing fits every width.

    Raises PictureError where it cannot be read, or not be written as such a kind here.
    """
    if not width:
        return clean_picture(data, ending).data
    from builder.pictures.photograph import AVIF, FORMATS, photograph_at

    return photograph_at(data, width, (FORMATS | AVIF)[wanted.lower()])
