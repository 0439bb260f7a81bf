"""A photograph, turned upright, made no larger than a page needs, and written anew from its points alone.

A page names it in several widths, so that a phone need not load what a wide screen shows. Decided: each of them is written at the best of
a few qualities at which it takes no more bytes than its points are worth. Why: a leaf-covered hedge takes five times the bytes of a bar on
a cloth, and a page has to stay light whatever the photograph shows.

Decided: AVIF beside WebP, at the library's quick speed and in one thread. Why: measured on made-up scenes of 960 and 1600 points, at the
same likeness (peak signal to noise) it takes a fifth to a third fewer bytes than WebP, in 0.04 to 0.2 seconds a file; the slower speed 6
saves 3 % more in six times that; and several threads give other bytes than one. A library that was built without AVIF publishes no
photographs and says so, since a site must not be another one for being made on another machine.
"""

import io
import warnings
from bisect import bisect_left
from collections.abc import Mapping
from functools import cache, lru_cache

from PIL import Image, ImageCms, ImageOps, features

from builder.model.picture import LONGEST, Size
from builder.pictures.picture import Picture, PictureError

FORMATS = {".jpg": "JPEG", ".jpeg": "JPEG", ".png": "PNG", ".webp": "WEBP"}
# What is published, and never read.
AVIF = {".avif": "AVIF"}
QUALITY: Mapping[str, Mapping[str, int]] = {
    "JPEG": {"quality": 85},
    "WEBP": {"quality": 85, "method": 4},
    "PNG": {"compress_level": 6},
    "AVIF": {"speed": 9, "max_threads": 1},
}
# The qualities that are tried for a page, and the most bytes for each point of a photograph of that width and three quarters of its height:
# 13 KB where it is 480 points wide, 52 KB where it is 960.
QUALITIES: Mapping[str, tuple[int, ...]] = {
    "JPEG": (80, 70, 60, 50, 40, 30, 20),
    "WEBP": (80, 70, 60, 50, 40, 30, 20),
    "AVIF": (65, 55, 45, 35, 25),
}
BYTES_A_POINT = 0.075


def clean_photograph(data: bytes, kind: str) -> Picture:
    """Return a photograph upright, no larger than a page needs. Raises PictureError where it cannot be read."""
    plain = upright(data)
    return Picture(_written(plain, kind, QUALITY[kind]), Size(*plain.size), see_through="A" in plain.getbands())


def photograph_at(data: bytes, width: int, kind: str) -> bytes:
    """Return a photograph so many points wide, as few bytes as its width is worth.

    Raises PictureError where it cannot be read, or not be written as such a kind here.
    """
    if kind == "AVIF" and not features.check("avif"):
        raise PictureError("The library for pictures on this machine (Pillow) was built without AVIF.")
    plain = upright(data)
    height = max(1, round(plain.height * width / plain.width))
    shown = plain.resize((width, height), Image.Resampling.LANCZOS) if width < plain.width else plain
    if kind == "PNG":
        return _written(shown, kind, QUALITY[kind])
    most, qualities = BYTES_A_POINT * shown.width * shown.width * 3 / 4, QUALITIES[kind]

    @cache
    def written(place: int) -> bytes:
        return _written(shown, kind, {**QUALITY[kind], "quality": qualities[place]})

    if len(written(0)) <= most:
        return written(0)
    # The lower the quality, the fewer the bytes: the best that fits is found by halves.
    first = bisect_left(range(len(qualities)), True, lo=1, key=lambda place: len(written(place)) <= most)
    return written(min(first, len(qualities) - 1))


@lru_cache(maxsize=2)
def upright(data: bytes) -> Image.Image:
    """Return the points of a photograph as its scene stood, in the usual colours. Raises PictureError where it cannot be read."""
    try:
        with warnings.catch_warnings():
            # A picture of a few kilobytes can unfold to gigabytes.
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            # What Pillow merely finds odd in a file that it can read is no concern of the studio.
            warnings.simplefilter("ignore", UserWarning)
            with Image.open(io.BytesIO(data), formats=sorted(set(FORMATS.values()))) as opened:
                opened.draft("RGB", (2 * LONGEST, 2 * LONGEST))
                upright = ImageOps.exif_transpose(opened)
                plain = _in_usual_colours(upright)
        plain.thumbnail((LONGEST, LONGEST), Image.Resampling.LANCZOS)
        return plain
    except (Image.DecompressionBombWarning, Image.DecompressionBombError):
        raise PictureError("This picture has more points than any page can show.") from None
    except (OSError, ValueError, SyntaxError, EOFError, OverflowError, MemoryError):
        raise PictureError("This file cannot be read as a picture: it is damaged, or of another kind than its ending says.") from None


def _written(plain: Image.Image, kind: str, how: Mapping[str, int]) -> bytes:
    if kind == "JPEG" and plain.mode != "RGB":
        plain = _on_white(plain)
    # A picture made from the points alone has nothing else to pass on.
    bare = Image.new(plain.mode, plain.size)
    bare.paste(plain)
    written = io.BytesIO()
    bare.save(written, kind, **how)
    return written.getvalue()


def _in_usual_colours(image: Image.Image) -> Image.Image:
    """Return the points in the colours that every screen takes for granted (sRGB), with transparency where there is any."""
    mode = "RGBA" if image.has_transparency_data else "RGB"
    profile = image.info.get("icc_profile")
    if profile and image.mode in ("RGB", "RGBA", "CMYK", "L"):
        try:
            given = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            made = ImageCms.profileToProfile(image, given, ImageCms.createProfile("sRGB"), outputMode=mode)
        except (ImageCms.PyCMSError, OSError, ValueError):
            made = None
        if made is not None:
            return made
    return image.convert(mode)


def _on_white(image: Image.Image) -> Image.Image:
    ground = Image.new("RGB", image.size, "white")
    ground.paste(image, mask=image.getchannel("A") if "A" in image.getbands() else None)
    return ground


def made_with() -> tuple[str, ...]:
    """Return the libraries beneath the one that makes pictures, each with its version."""
    return tuple(f"{name} {features.version(name)}" for name in features.get_supported())
