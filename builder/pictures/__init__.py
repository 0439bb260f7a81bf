"""The one door to pictures: the bytes of a studio's picture become those that are published, or why they cannot.

A photograph tells where and when it was taken and with what; a drawing can hold programs, names of the computer's folders, and things that
a reader's browser would fetch from elsewhere. Neither is passed on. The same bytes give the same bytes.
"""

from functools import lru_cache

from builder.model.picture import LONGEST
from builder.pictures.drawing import clean_drawing
from builder.pictures.photograph import AVIF, FORMATS, clean_photograph, made_with, photograph_at
from builder.pictures.picture import Picture, PictureError
from builder.pictures.sharing import draw_sharing

__all__ = ["LONGEST", "Picture", "PictureError", "clean_picture", "draw_sharing", "made_with", "picture_at"]


@lru_cache(maxsize=32)
def clean_picture(data: bytes, ending: str) -> Picture:
    """Make of a picture what is published; the ending of its name says its kind. Raises PictureError where it cannot be read."""
    kind = ending.lower()
    return clean_drawing(data) if kind == ".svg" else clean_photograph(data, FORMATS[kind])


def picture_at(data: bytes, ending: str, width: int, wanted: str) -> bytes:
    """Make of a picture what a page shows where it is so many points wide, of a kind that an ending says. A drawing fits every width.

    Raises PictureError where it cannot be read, or not be written as such a kind here.
    """
    return photograph_at(data, width, (FORMATS | AVIF)[wanted.lower()]) if width else clean_picture(data, ending).data
