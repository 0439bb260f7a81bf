"""Whether a preservative works at the pH of a product: a window holds its ends, and so does what such a product usually has.

A lotion usually has pH 4.5 to 6.5 (teaching on formulation, from memory: content/usual_ph.yaml).
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.keeping.preservative_ph import find_preservatives_out_of_their_ph
from builder.model.recipe.recipe import MeasuredPh
from tests.check.test_at_the_edge import levels, mixed
from tests.making import figures, told
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


# Where no preservative works, what stays on the skin grows unseen; where one does, or nobody knows, it may be preserved all the same.
@pytest.mark.parametrize(
    ("windows", "product", "found"),
    [
        ([("5", "6")], "lotion", ["stop"]),
        ([("5", "6")], "scrub", ["caution"]),
        ([("5", "6"), ("4", "6")], "lotion", ["stop", "stop"]),
        ([("5", "6"), ("2", "3.5")], "lotion", ["caution"]),
        ([("5", "6"), None], "lotion", ["caution"]),
        ([("2", "3.5")], "lotion", []),
        ([None], "lotion", []),
    ],
)
def test_a_ph_at_which_no_preservative_works_stops_what_stays_on(
    windows: list[tuple[str, str] | None], product: str, found: list[str]
) -> None:
    names = ("potassium sorbate", "sodium benzoate")
    shelf = dict(STUDIO.ingredients)
    for name, window in zip(names, windows, strict=False):
        others = {key: one for key, one in shelf[name].figures.items() if key != "pH window"}
        shelf[name] = replace(shelf[name], figures=others | ({"pH window": figures(*window)} if window else {}))
    holds = {name.replace(" ", "_"): "0.4" for name, _ in zip(names, windows, strict=False)}
    of = replace(mixed(water="50", **holds), product=product, ph=MeasuredPh(Fraction(3), Fraction("3.5"), "meter"))
    said = levels(find_preservatives_out_of_their_ph(replace(STUDIO, ingredients=shelf, recipes={"one": of})))
    assert said == [f"ph-outside-preservative {weight}" for weight in found]


@pytest.mark.parametrize(("low", "high", "said"), [("3", "3.5", "measured at pH 3 to 3.5."), ("3", "3", "measured at pH 3.")])
def test_a_measured_ph_is_told_with_its_ends_or_as_one(low: str, high: str, said: str) -> None:
    ours = replace(SORBATE, figures={**SORBATE.figures, "pH window": figures("5", "6")})
    of = replace(mixed(water="50", potassium_sorbate="0.4"), product="lotion", ph=MeasuredPh(Fraction(low), Fraction(high), "meter"))
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, "potassium sorbate": ours}, recipes={"one": of})
    (found,) = told(find_preservatives_out_of_their_ph(here))
    assert said in found.wrong
