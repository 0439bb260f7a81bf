"""How well one colour can be read on another, and the nearest shade that can. Colours are `#` and six digits.

The contrast is that of WCAG 2.2 (relative luminance and contrast ratio, section 5; the least of 4.5 to 1 for text is its criterion 1.4.3
at level AA, that of 7 to 1 its criterion 1.4.6 at level AAA).
"""

from collections.abc import Iterable
from colorsys import hls_to_rgb, rgb_to_hls
from itertools import chain

LEAST, HIGH = 4.5, 7.0
_STEPS = 200


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours, from 1 to 21."""
    low, high = sorted((_luminance(one), _luminance(other)))
    return (high + 0.05) / (low + 0.05)


def lowest_contrast(colour: str, grounds: Iterable[str]) -> float:
    """Return the contrast of a colour on that of several grounds on which it is the hardest to read."""
    return min(contrast(colour, ground) for ground in grounds)


def readable(colour: str, grounds: tuple[str, ...], least: float, *, darker: bool) -> str:
    """Return the nearest shade of a colour, darker or lighter, that reaches a contrast on every ground; itself where it does."""
    hue, light, strong = rgb_to_hls(*_parts(colour))
    end = 0.0 if darker else 1.0
    shades = (_colour(hls_to_rgb(hue, light + (end - light) * step / _STEPS, strong)) for step in range(_STEPS))
    return next((shade for shade in chain([colour], shades) if lowest_contrast(shade, grounds) >= least), _colour((end, end, end)))


def mixed(one: str, other: str, share: float) -> str:
    """Return the colour between two, with so much of the other in it."""
    return _colour(tuple(first + (then - first) * share for first, then in zip(_parts(one), _parts(other), strict=True)))


def night(colour: str, light: float) -> str:
    """Return a dark, quiet ground of the hue of a colour; `light` is from 0 (black) to 1."""
    hue, _, strong = rgb_to_hls(*_parts(colour))
    return _colour(hls_to_rgb(hue, light, min(strong, 0.35)))


def _luminance(colour: str) -> float:
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in _parts(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _parts(colour: str) -> tuple[float, float, float]:
    red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    return red, green, blue


def _colour(parts: tuple[float, ...]) -> str:
    return "#" + "".join(f"{round(part * 255):02x}" for part in parts)
