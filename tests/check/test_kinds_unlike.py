"""A kind of product of a studio's own is made as what it is like is made: with lye, or without."""

from dataclasses import replace

import pytest

from builder.check.recipe.kind_unlike import find_kinds_unlike
from builder.model.place import Place
from builder.model.subject import UnusedCard, WholeRecipe
from tests.check.test_at_the_edge import levels, mixed
from tests.making import told
from tests.reckon.test_guests import STUDIO

FILE = Place("shelf/products.yaml", 3)


@pytest.mark.parametrize(
    ("like", "with_lye", "said"),
    [
        (("balm",), False, ""),
        (("balm",), True, "is made with lye, and balm, which it is like, is not"),
        (("cold-process soap",), True, ""),
        (("cold-process soap",), False, "is not made with lye, and cold-process soap, which it is like, is"),
        (("balm", "cold-process soap"), False, "is not made with lye, and cold-process soap, which it is like, is"),
        # What nobody knows is a finding of its own.
        (("a kind of no list",), True, ""),
        ((), True, ""),
    ],
)
def test_a_kind_is_made_as_what_it_is_like(like: tuple[str, ...], said: str, *, with_lye: bool) -> None:
    ours = replace(STUDIO.products["balm"], name="our own", like=like, made_with_lye=with_lye, place=FILE)
    here = replace(STUDIO, products={**STUDIO.products, "our own": ours}, recipes={})
    found = told(find_kinds_unlike(here))
    assert levels(found) == ["kind-unlike stop"] * bool(said)
    assert all(said in one.wrong and one.place == FILE and one.about == {UnusedCard(FILE.file)} for one in found)
    made = replace(here, recipes={"one": replace(mixed(), product="our own"), "other": replace(mixed(), product="balm")})
    assert all(one.about == {WholeRecipe("one")} for one in told(find_kinds_unlike(made)))
