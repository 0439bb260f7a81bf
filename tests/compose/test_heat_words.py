"""Bounds of cooling in words: the lower end rounded down, the upper rounded up, and never one time alone."""

from fractions import Fraction
from types import SimpleNamespace
from typing import cast

from builder.compose.formula.heat_words import heat_lines
from builder.model.formula.warmth import Cooling, Cools, CoolsTo, Dissolving
from builder.model.recipe.worked_batch import WorkedBatch


def lines(dissolving: Dissolving | None = None, *cools: CoolsTo) -> list[str]:
    return [line.replace("\u00a0", " ") for line in heat_lines(cast(WorkedBatch, SimpleNamespace(dissolving=dissolving, cools=cools)))]


def freed(most: int, *, near_boiling: bool) -> Dissolving:
    return Dissolving(Fraction(33, 100), Fraction(60), Fraction(most), near_boiling)


def test_both_ends_are_said_and_the_thermometer_decides() -> None:
    in_air = Cooling(Fraction(75), Fraction(40), Fraction(57), Fraction(247))
    (line,) = lines(None, CoolsTo(Cools.BATCH, in_air, in_air))
    assert "from 55 min to 4 h 30 min" in line
    assert "go by the thermometer" in line


def test_strong_lye_is_said_to_come_near_boiling_without_a_figure() -> None:
    (line,) = lines(freed(109, near_boiling=True))
    assert "near boiling" in line
    assert "°C" not in line


def test_weak_lye_has_the_sum_as_the_most_it_can_be() -> None:
    (line,) = lines(freed(82, near_boiling=False))
    assert "85 °C (185 °F) at the most" in line
