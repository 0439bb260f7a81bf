"""Amounts of a notebook: with a decimal point or comma, with or without a unit of their own, as fractions in one unit.

Decided: the decimal mark is told by the whole table, never by one cell: `1,234` is a thousand for some and little more than one for others.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.quantity import Mass
from builder.read.text.text_error import AmountError
from builder.read.values.amounts import parse_mass
from builder.read.values.numbers import parse_number, tidy
from builder.units import MASS_UNIT_OF

PERCENT = "%"
# As the heads of columns and the cells beside them have them. Common practice, no source.
UNITS = {**MASS_UNIT_OF, "gr": "g", **dict.fromkeys((PERCENT, "percent", "percentage", "pct"), PERCENT)}
_FIGURES = re.compile(r"\d[\d.,'’\u00a0\u202f ]*\d|\d")
_MARKED = re.compile(r"^(\d+)([.,])(\d+)$")


@dataclass(frozen=True)
class NotebookAmount:
    """An amount as a recipe file may write it, its unit (`%`, or `g` for any weight), and how much that is in percent or grams."""

    text: str
    unit: str
    value: Fraction
    step: Fraction = Fraction(0)


def decimal_mark(cells: Iterable[str]) -> str:
    """Return `.` or `,` by all amounts of a table. Raises ValueError where they contradict each other, or can mean two things."""
    told, open_ones = set(), []
    for cell in cells:
        for figures in _FIGURES.findall(cell):
            mark = _mark_of(figures.replace(" ", "").replace("\u00a0", "").replace("\u202f", "").replace("'", "").replace("’", ""))
            told |= {mark} if mark in (".", ",") else set()
            open_ones += [cell] if mark == "?" else []
    if len(told) > 1:
        raise ValueError("some amounts have a decimal point and some a decimal comma: write all of them with one of the two")
    if open_ones and not told:
        shown = ", ".join(f'"{cell}"' for cell in dict.fromkeys(open_ones))
        raise ValueError(f"{shown} can mean thousands or three decimals: write them without the mark, or with one decimal more")
    return next(iter(told), ".")


def _mark_of(figures: str) -> str:
    """Return the decimal mark that figures prove; `?` where it is open, nothing where they have no mark."""
    points, commas = figures.count("."), figures.count(",")
    if points and commas:
        return "." if figures.rfind(".") > figures.rfind(",") else ","
    if points > 1 or commas > 1:
        return "," if points > 1 else "."
    marked = _MARKED.match(figures)
    if marked is None:
        return ""
    is_thousands = len(marked[3]) == 3 and len(marked[1]) <= 3 and not marked[1].startswith("0")
    return "?" if is_thousands else marked[2]


def read_amount(cell: str, unit: str, mark: str) -> NotebookAmount:
    """Read an amount in a column of a unit (empty: each cell has its own). Raises ValueError with what is wrong."""
    plain = cell.replace("\u00a0", " ").replace("\u202f", " ").replace("'", "").replace("’", "")
    plain = plain.replace("." if mark == "," else ",", "").replace(mark, ".")
    number, own = re.fullmatch(r"(.*?)\s*([a-z]*|%)\.?", plain.strip(), re.IGNORECASE).groups()  # type: ignore[union-attr]
    own_unit = UNITS.get(own.casefold()) if own else unit
    try:
        if not own_unit:
            there = (
                "no unit of weight: weigh it, or clear this cell" if own else "no unit: write it, or put it over the column, as weight (g)"
            )
            raise ValueError(there)
        number = re.sub(r"(?<!\d)\.(?=\d)", "0.", number)
        number = re.sub(r"(?<=\d) (?=\d{3}\b(?!\s*/))", "", tidy(number))
        if own_unit == PERCENT:
            value = parse_number(number)
            text = f"{number} %"
        else:
            text = f"{number} {own_unit}"
            value = parse_number(number) if re.fullmatch(r"-?\s*0[0.]*", number) else parse_mass(text).grams
    except AmountError as error:
        raise ValueError(error.wrong) from None
    if value < 0:
        raise ValueError("below zero")
    decimals = len(number.partition(".")[2])
    one = Fraction(1, 10**decimals)
    return NotebookAmount(text, PERCENT if own_unit == PERCENT else "g", value, one if own_unit == PERCENT else one * _grams(own_unit))


def _grams(unit: str) -> Fraction:
    one: Mass = parse_mass(f"1 {unit}")
    return one.grams
