"""Rows of the workings that are added have their sum beneath them, and the printed rows add up to the printed sum."""

from fractions import Fraction
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from tests.compose.conftest import FILES, read_edition, write_studio
from tests.composing import composed

# Four decimals are printed: each of n rows is off by half a unit of the last at most.
HALF = Fraction(1, 20000)


@pytest.mark.parametrize("name", ["workings", "workings of the home sizes"])
def test_the_printed_rows_of_equivalents_add_up_to_the_printed_sum_from_which_the_next_row_goes_on(tmp_path: Path, name: str) -> None:
    bar = FILES["recipes/bar.yaml"].replace("olive oil: 100 %", "olive oil: 65 %, coconut oil: 25 %, castor oil: 10 %")
    page = BeautifulSoup(composed(name, read_edition(write_studio(tmp_path, recipes__bar_yaml=bar)))[0].html, "html.parser")
    rows = [[" ".join(cell.get_text(" ").split()) for cell in row.find_all(["th", "td"])] for row in page.select("table.workings tbody tr")]
    sums = [(place, row) for place, row in enumerate(rows) if row[1] == "The sum of the rows above"]
    assert len(sums) >= 2
    for place, (of, _, given, result) in sums:
        each = given.split(" + ")
        assert [row[3].removesuffix(" mol") for row in rows[place - len(each) : place]] == each, of
        added = sum((Fraction(one) for one in each), Fraction(0))
        assert abs(added - Fraction(result.removesuffix(" mol"))) <= HALF * (len(each) + 1)
        assert any(f"fat {result}" in row[2] or f"acid {result}" in row[2] for row in rows[place + 1 :]), of
