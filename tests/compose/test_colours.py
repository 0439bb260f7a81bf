"""Every ink can be read on every ground, in light and in dark: WCAG 2.2, relative luminance and contrast ratio."""

import re
from collections.abc import Mapping

import pytest

from builder.library import LAYOUTS

COLOUR = re.compile(r"--([a-z-]+): (#[0-9a-f]{6});")
LIGHT = dict(COLOUR.findall((LAYOUTS / "styles" / "tokens.css").read_text(encoding="utf-8")))
DARK = dict(COLOUR.findall((LAYOUTS / "styles" / "screen.css").read_text(encoding="utf-8")))


def luminance(colour: str) -> float:
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("colours", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("ground", ["paper", "sheet"])
def test_contrast(colours: Mapping[str, str], ground: str) -> None:
    for ink in ("ink", "soft-ink", "accent", "leaf"):
        assert contrast(colours[ink], colours[ground]) >= 7
    assert contrast(colours["strong-line"], colours[ground]) >= 3


@pytest.mark.parametrize("colours", [LIGHT, DARK], ids=["light", "dark"])
def test_contrast_on_the_accent(colours: Mapping[str, str]) -> None:
    assert contrast(colours["on-accent"], colours["accent"]) >= 7


def test_the_formula_gives_the_ratio_of_black_and_white() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
