"""The table of the terminal: what stands under ounces is what a scale in ounces weighs, and the same amount as the grams beside it."""

import re
from fractions import Fraction

from builder.compose.recipe.weigh_table import HEADINGS, batch_table
from tests.reckon.test_guests import LOTION, at

OUNCE = Fraction("28.349523125")  # NIST Handbook 44, appendix C


def number(cell: str, unit: str) -> Fraction:
    found = re.match(rf"([\d\u00a0]*\.?\d+)\u00a0{unit}", cell)
    assert found, cell
    return Fraction(found[1].replace("\u00a0", ""))


def test_ounces_are_those_of_the_scale_and_agree_with_the_grams() -> None:
    home = at(LOTION, 6).made[0].home[0].sheet
    grams_scale, ounce_scale = home.columns
    assert (grams_scale.unit, ounce_scale.unit) == ("g", "oz")
    rows = batch_table(home, "").rows
    assert len(rows) == len(home.rows) > 3
    for row, (in_grams, in_ounces) in zip(rows, home.rows, strict=True):
        said = dict(zip(HEADINGS, row, strict=True))
        weighed, ounces = number(said["weigh"], "g"), number(said["in ounces"], "oz")
        # What both scales weigh differs by half a division of each at most.
        off = (in_grams.scale.division.grams + in_ounces.scale.division.grams) / 2
        assert abs(weighed - ounces * OUNCE) <= off
        assert ounces % (in_ounces.scale.division.grams / OUNCE) == 0
