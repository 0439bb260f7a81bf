"""Whether a preservative works at the pH of a product: a window holds its ends, and so does what such a product usually has.

A lotion usually has pH 4.5 to 6.5 (teaching on formulation, from memory: content/usual_ph.yaml).
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.keeping.preservative_ph import find_preservatives_out_of_their_ph
from builder.model.recipe.recipe import MeasuredPh
from tests.check.test_at_the_edge import levels, mixed
from tests.making import figures
from tests.reckon.test_guests import STUDIO

OUTSIDE, UNKNOWN = ["ph-outside-preservative caution"], ["ph-not-measured caution"]
SORBATE = STUDIO.ingredients["potassium sorbate"]


def found(window: tuple[str, str], measured: tuple[str, str] | None = None) -> list[str]:
    """Return what is found of a lotion whose one preservative works in a window of pH."""
    ours = replace(SORBATE, figures={**SORBATE.figures, "pH window": figures(*window)})
    shelf = {key: ours if one is SORBATE else one for key, one in STUDIO.ingredients.items()}
    ph = MeasuredPh(Fraction(measured[0]), Fraction(measured[1]), "meter") if measured else None
    of = replace(mixed(water="50", potassium_sorbate="0.4"), product="lotion", ph=ph)
    return levels(find_preservatives_out_of_their_ph(replace(STUDIO, ingredients=shelf, recipes={"one": of})))


@pytest.mark.parametrize(
    ("window", "said"),
    [
        (("4.5", "6.5"), []),
        (("4.6", "6.5"), UNKNOWN),
        (("4.5", "6.4"), UNKNOWN),
        (("6.5", "8"), UNKNOWN),
        (("6.6", "8"), OUTSIDE),
        (("2", "4.5"), UNKNOWN),
        (("2", "4.4"), OUTSIDE),
    ],
)
def test_without_a_measured_ph_what_such_products_have_is_compared(window: tuple[str, str], said: list[str]) -> None:
    assert found(window) == said


@pytest.mark.parametrize(
    ("measured", "is_found"), [(("5", "6"), False), (("4.9", "6"), True), (("5", "6.1"), True), (("6", "6"), False), (("7", "7.5"), True)]
)
def test_a_measured_ph_is_within_the_window_with_both_its_ends(measured: tuple[str, str], *, is_found: bool) -> None:
    assert bool(found(("5", "6"), measured)) is is_found
