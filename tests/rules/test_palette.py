"""Colours of pages that follow from those of a studio, worked by hand with hue, lightness and strength (HLS, as `colorsys` has them)."""

import pytest

from builder.model.own_document import Look
from builder.rules.look.colours import mixed, night, readable
from builder.rules.look.palette import ACCENT, palette

BLACK, WHITE, GREY, BLUE = "#000000", "#ffffff", "#808080", "#336699"


# A fifth of the way from 0 to 255 is 51, two fifths are 102.
@pytest.mark.parametrize(("share", "between"), [(0, BLACK), (0.2, "#333333"), (0.4, "#666666"), (1, WHITE)])
def test_a_mixture_lies_between_two_colours(share: float, between: str) -> None:
    assert mixed(BLACK, WHITE, share) == between


# Grey has no strength, so that its lightness alone stays: 0.12 of 255 is 31. The blue has half of it, of which 0.35 are kept: the most
# is 0.12 x 1.35 and the least 0.12 x 0.65 of 255, and green lies midway, for its hue is 210 degrees. Red of all its strength as well.
@pytest.mark.parametrize(("colour", "dark"), [(GREY, "#1f1f1f"), (BLUE, "#141f29"), ("#ff0000", "#291414")])
def test_a_ground_by_night_is_dark_and_quiet(colour: str, dark: str) -> None:
    assert night(colour, 0.12) == dark


# With 0.075, 0.115 and 0.155 of lightness: paper, sheet and what is pale, each lighter than the last; of the paper, where one is named.
@pytest.mark.parametrize("look", [Look(accent=BLUE), Look(accent="#ff0000", paper=BLUE)])
def test_grounds_by_night_grow_lighter(look: Look) -> None:
    by_night = palette(look).night
    assert [by_night[name] for name in ("paper", "sheet", "pale", "on-accent")] == ["#0c131a", "#131d28", "#1a2835", "#0c131a"]
    assert by_night["accent"] == by_night["leaf"]
    # Lines lie on the sheet: from its #131d28 a fifth of the way to the ink by night, #ecf3f2, and three fifths.
    assert (by_night["line"], by_night["strong-line"]) == ("#3e4850", "#959da1")


def test_what_a_studio_does_not_name_is_ours() -> None:
    by_day = palette(Look(paper=WHITE)).day
    assert (by_day["paper"], by_day["accent"], by_day["leaf"], by_day["on-accent"]) == (WHITE, ACCENT, ACCENT, WHITE)


# Of a paper of grey 230 and an accent of black 8 % lie in what is pale: 0.92 x 230 = 211.6; the lines have a fifth and 65 % of the ink.
def test_grounds_by_day_are_the_paper_and_the_paper_with_a_little_of_the_accent() -> None:
    by_day = palette(Look(accent=BLACK, paper="#e6e6e6")).day
    assert (by_day["paper"], by_day["pale"], by_day["accent"], by_day["leaf"]) == ("#e6e6e6", "#d4d4d4", BLACK, BLACK)
    assert by_day["line"] == mixed("#e6e6e6", "#12252b", 0.2) and by_day["strong-line"] == mixed("#e6e6e6", "#12252b", 0.65)


def test_a_studio_that_names_no_colour_has_none_of_its_own() -> None:
    assert palette(Look()).day == {} and palette(Look()).night == {}


# #767676 has 4.54 to 1 on white (from memory), and a step of lightness is less than one of its 118 of 255 shades.
def test_the_nearest_shade_that_can_be_read_is_taken() -> None:
    assert readable(GREY, (WHITE,), 4.5, darker=True) in ("#767676", "#757575")
    assert readable("#767676", (WHITE,), 4.5, darker=True) == "#767676"
    # None reaches 21 on grey: the end of the scale is all that is left.
    assert (readable(BLUE, (GREY,), 21, darker=True), readable(BLUE, (GREY,), 21, darker=False)) == (BLACK, WHITE)
