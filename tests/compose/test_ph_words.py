"""The pH of a product in words: what was measured, where the preservative works, and nothing where there is no pH to speak of."""

from collections.abc import Callable
from pathlib import Path

import pytest

from builder.compose.edition import Edition
from builder.compose.formula.ph_words import ph_words
from builder.model.recipe.worked_batch import WorkedBatch
from tests.compose.conftest import read_edition, write_studio

LOTION = """
name: Plain lotion
product: lotion
amounts: weights
phases:
  - name: all
    ingredients: {water: 80 g, olive oil: 10 g, emulsifying wax: 9 g, PRESERVATIVE: 1 g}
fills: {container: 4 fl oz jar, weight: 100 g}
"""
CLASS = """
title: The first class
format: hands-on
summary: A lotion.
for: beginners
goal: learn to make at home
youngest: 16
length: 1 h
seats: 5
price: 48.00
staff: {teachers: 1}
group size: 1
makes: {lotion: {each student: 1 container}}
dates: []
"""
LESSON = "# The first class\n\n## Mix (students, 60 min)\n\n1. Mix.\n"
BLEND = "phenoxyethanol and ethylhexylglycerin blend"
MEASURED = 'pH: {low: 5.6, high: 6.2, measured: "strips, November 2026"}\n'


@pytest.fixture
def sheet(tmp_path: Path) -> Callable[..., WorkedBatch]:
    def sheet(preservative: str, more: str = "", **changed: str) -> WorkedBatch:
        recipe = LOTION.replace("PRESERVATIVE", preservative) + more
        files = {"recipes__lotion_yaml": recipe, "classes__first__class_yaml": CLASS, "classes__first__lesson_md": LESSON, **changed}
        return read_edition(write_studio(tmp_path, **files)).plans[0].made[0].batch

    return sheet


def test_what_was_measured_and_where_the_preservative_works(sheet: Callable[..., WorkedBatch]) -> None:
    """The window, 3 to 10, is that of the ingredient's card (content/ingredients), which says that it is from memory."""
    lotion = sheet(BLEND, MEASURED)
    assert ph_words(lotion) == (
        f"5.6 to 6.2 (strips, November 2026). The {BLEND} works at pH 3 to 10 (from memory). "
        "Try a strip on a sample. Outside of that the product spoils unseen: do not use it."
    )
    at_home = "The studio's own batch had pH 5.6 to 6.2 (strips, November 2026). Its preservative works at pH 3 to 10 (from memory)."
    assert ph_words(lotion, at_home=True).startswith(at_home)


def test_a_preservative_asks_for_it_where_nothing_was_measured(sheet: Callable[..., WorkedBatch]) -> None:
    assert ph_words(sheet(BLEND)).startswith(f"Not measured yet. The {BLEND} works at pH 3 to 10")


def test_without_water_or_preservative_there_is_nothing_to_say(edition: Edition, sheet: Callable[..., WorkedBatch]) -> None:
    salts, bar = edition.plans[0].made
    assert ph_words(salts.batch) == ph_words(bar.batch) == ""
    assert ph_words(sheet("glycerin")) == ""
