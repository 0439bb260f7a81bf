"""No amount on any document has a digit that no scale there shows: over every document of the example, in grams and written in ounces."""

import re
import shutil
from collections.abc import Mapping
from datetime import date
from fractions import Fraction
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from builder import pipeline
from builder.compose.publication import compose_documents, editions
from builder.library import LAYOUTS
from builder.model.supplies.shopping import Period
from builder.reckon import reckon_shopping
from tests.making import sure
from tests.page_text import text_of
from tests.published import EXAMPLE, composed_for, pages, sheets

TODAY = date(2027, 1, 2)
AMOUNT = re.compile(r"(?<![\w.,/])(\d[\d\u00a0]*(?:\.\d+)?)[\u00a0 ](g|oz)\b(?!/)")
WRITTEN = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?) (g|kg)\b")
IN_GRAMS = {"g": Fraction(1), "kg": Fraction(1000)}
OUNCE = Fraction("28.349523125")  # NIST Handbook 44, appendix C
# The finest that the scales of site_example/studio.yaml show in class and at home. Ounces beside grams in class are no weighing: they are
# cut to two decimals.
IN_CLASS = {"g": Fraction("0.01"), "oz": Fraction("0.01")}
AT_HOME = {"g": Fraction("0.1"), "oz": Fraction("0.005")}
# What is not weighed: the sums, which are exact so that they can be done again, and what a finding says is too small for a scale.
TOO_SMALL = re.compile(r"\([\d.]+ (g|oz) on a scale that reads to [\d.]+ (g|oz)\)")


def too_fine(html: str, finest: Mapping[str, Fraction]) -> list[str]:
    """Return the amounts of a page that are no whole number of the finest division."""
    text = TOO_SMALL.sub("", text_of(html, ("script", "style", "svg", "table.workings")))
    found = ((match[0], Fraction(match[1].replace("\u00a0", "")), match[2]) for match in AMOUNT.finditer(text))
    return [amount for amount, number, unit in found if (number / finest[unit]).denominator != 1]


def in_ounces(folder: Path) -> None:
    """Write the amounts of a studio's recipes and classes anew in ounces, to a hundredth, and the home sizes on its rosters."""
    for path in (*folder.glob("recipes/*.yaml"), *folder.glob("classes/*/class.yaml"), *folder.glob("classes/*/roster.csv")):
        lines = path.read_text().splitlines()
        for number, line in enumerate(lines):
            if path.suffix == ".csv" or (re.search(r"fills:|weight:|left in|at home:|to show", line) and "measured" not in line):
                lines[number] = WRITTEN.sub(lambda found: f"{float(Fraction(found[1]) * IN_GRAMS[found[2]] / OUNCE):.2f} oz", line)
        path.write_text("\n".join(lines))


@cache
def documents(unit: str) -> tuple[tuple[str, str], ...]:
    """Return every document of the example as it is, or in ounces."""
    if unit == "g":
        files = {page: page for page in pages()} | {sheet: composed_for(sheet) for sheet in sheets()}
        return tuple((path.as_posix(), file.read_text(encoding="utf-8")) for path, file in files.items())
    with TemporaryDirectory() as scratch:
        folder = Path(scratch, "studio")
        shutil.copytree(EXAMPLE, folder, ignore=shutil.ignore_patterns("output"))
        in_ounces(folder)
        outcome = pipeline.check(folder, on=TODAY)
        assert not outcome.stops
        studio = sure(outcome.studio)
        shopping = reckon_shopping(studio, outcome.plans, Period(TODAY), today=TODAY)
        layouts = (Path(folder, "layouts"), LAYOUTS)
        made = compose_documents(
            *editions(studio, outcome.plans, outcome.findings, layouts, today=TODAY, with_pdf=True, shopping=shopping, held=outcome.held)
        )
        return tuple((one.path, one.html) for one in made.documents if one.path.endswith((".html", ".pdf")))


@pytest.mark.parametrize("unit", ["g", pytest.param("oz", marks=pytest.mark.long)])
def test_no_amount_has_a_digit_that_no_scale_shows(unit: str) -> None:
    found = {
        path: fine for path, html in documents(unit) if (fine := too_fine(html, AT_HOME if "take-home" in path else IN_CLASS))
    }  # fmt: skip
    assert not found
    assert sum(len(AMOUNT.findall(html)) for _, html in documents(unit)) > 1000


def test_an_amount_with_too_many_digits_is_seen() -> None:
    page = "<p>Weigh 113.398&nbsp;g (3.99&nbsp;oz), then 0.07&nbsp;g; 1.261 g/mL; 12&nbsp;g</p>"
    assert too_fine(page + "<table class='workings'><td>1.2345 g</td></table>", AT_HOME) == ["113.398\u00a0g", "0.07\u00a0g"]
    assert too_fine("<p>3.986&nbsp;oz</p>", AT_HOME) == ["3.986\u00a0oz"]


@pytest.mark.long
def test_a_fill_of_four_ounces_reads_as_the_bench_scale_shows_it_and_never_less_than_four_ounces() -> None:
    cards = [html for path, html in documents("oz") if "lotion-from-scratch" in path and "bench-cards" in path]
    assert cards
    # 113 g are 3.99 oz in the copy, and 3.99 oz are 113.115 g.
    assert all("113.2\u00a0g" in html.replace("&nbsp;", "\u00a0") for html in cards)
