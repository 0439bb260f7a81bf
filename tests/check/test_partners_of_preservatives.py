"""Which partners are named for a preservative that leaves something free to grow: those that work over the whole pH of the product.

Where nobody has measured it, that is the pH of the kind: of a lotion 4.5 to 6.5 (content/products.yaml, from memory).
"""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.keeping.preservative_fit import find_preservatives_that_do_not_fit
from builder.model.place import Name, Place
from builder.model.recipe.ingredient import Ingredient, Microbe
from builder.model.recipe.recipe import MeasuredPh
from tests.check.test_at_the_edge import BLEND, mixed
from tests.making import figures, phase, recipe, share, sure, told
from tests.reckon.test_guests import STUDIO

SORBATE = STUDIO.ingredients["potassium sorbate"]


def partner(name: str, low: str, high: str, covers: tuple[Microbe, ...] = (Microbe.BACTERIA,), *, alone: bool = False) -> Ingredient:
    known = STUDIO.ingredients[BLEND]
    preserves = replace(sure(known.preserves), covers=covers, alone=alone)
    return replace(known, name=name, preserves=preserves, figures={**known.figures, "pH window": figures(low, high)})


def remedy(measured: tuple[str, str] | None, *partners: Ingredient) -> str:
    """Return what is advised where sorbate alone is in a lotion, and these partners are on the shelf."""
    others = {key: one for key, one in STUDIO.ingredients.items() if one is SORBATE or one.kind is not SORBATE.kind}
    ph = MeasuredPh(Fraction(measured[0]), Fraction(measured[1]), "meter") if measured else None
    of = replace(mixed(water="50", potassium_sorbate="0.4"), product="lotion", ph=ph)
    here = replace(STUDIO, ingredients={**others, **{one.key: one for one in partners}}, recipes={"one": of})
    (found,) = [one for one in told(find_preservatives_that_do_not_fit(here)) if one.name == "preservation-in-part"]
    return found.remedy


@pytest.mark.parametrize(
    ("measured", "low", "high", "named"),
    [
        (("4", "5"), "4", "5", True),
        (("4", "5"), "4.1", "5", False),
        (("4", "5"), "4", "4.9", False),
        (("3.5", "4"), "3", "4.4", True),
        (None, "4.5", "6.5", True),
        (None, "4.6", "6.5", False),
        (None, "4.5", "6.4", False),
    ],
)
def test_a_partner_works_at_both_ends_of_the_ph(measured: tuple[str, str] | None, low: str, high: str, *, named: bool) -> None:
    ends = " to ".join(measured or ("4.5", "6.5"))
    said = f"; of those known here that work at pH {ends}: our partner. "
    assert (said in remedy(measured, partner("our partner", low, high))) is named


def test_what_covers_all_that_is_missing_is_named_and_parts_of_a_system_come_first() -> None:
    two = partner("a broad one", "3", "9", (Microbe.BACTERIA, Microbe.FUNGI), alone=True), partner("our partner", "3", "9")
    assert ": our partner, a broad one. " in remedy(None, *two, partner("no use", "3", "9", (Microbe.FUNGI,)))


# A part of a system covers all and is too weak alone: what helps is another preservative, neither itself nor what is no preservative.
def test_beside_a_part_of_a_system_another_preservative_is_named() -> None:
    part = partner("our part", "3", "9", (Microbe.BACTERIA, Microbe.FUNGI))
    other, oil = replace(part, name="our other"), replace(part, name="our oil", kind=STUDIO.ingredients["olive oil"].kind)
    shelf = {key: one for key, one in STUDIO.ingredients.items() if one.kind is not SORBATE.kind}
    of = replace(mixed(water="50", our_part="0.4"), product="lotion")
    here = replace(STUDIO, ingredients={**shelf, **{one.key: one for one in (part, other, oil)}}, recipes={"one": of})
    (found,) = [one for one in told(find_preservatives_that_do_not_fit(here)) if one.name == "preservation-in-part"]
    assert "is a part of a system and too weak alone" in found.wrong
    assert "at pH 4.5 to 6.5: our other. " in found.remedy


def test_in_what_holds_no_water_the_first_preservative_is_told_of() -> None:
    oily = recipe(phase("all", {"sunflower oil": share(98), BLEND: share(1), "potassium sorbate": share(1)}))
    lines = [replace(line, ingredient=Name(line.ingredient.text, Place("recipes/one.yaml", at))) for at, line in enumerate(oily.lines)]
    of = replace(oily, product="balm", phases=(replace(oily.phases[0], lines=tuple(lines)),))
    (found,) = told(find_preservatives_that_do_not_fit(replace(STUDIO, recipes={"one": of})))
    assert found.name == "preservative-without-water" and found.place.line == 1
