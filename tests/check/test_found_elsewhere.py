"""What is a finding of its own elsewhere is met in silence by the rules that come after it."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.keeping.preservative_fit import find_preservatives_that_do_not_fit
from builder.check.recipe.figures_missing import find_figures_missing
from builder.check.recipe.fill_and_container import find_fills_that_do_not_fit
from builder.model.place import Name
from builder.model.recipe.recipe import Fill, LyeLiquid
from tests.check.test_at_the_edge import BLEND, levels, mixed
from tests.making import grams, lye, soap
from tests.reckon.test_guests import STUDIO


@pytest.mark.parametrize(
    ("unread", "found"), [((), ["unknown-container stop"]), (("odd jar",), []), (("other jar",), ["unknown-container stop"])]
)
def test_a_container_whose_file_cannot_be_read_is_not_unknown(unread: tuple[str, ...], found: list[str]) -> None:
    of = replace(mixed(glycerin="3"), fill=Fill(Name("odd jar"), grams(100)))
    here = replace(STUDIO, recipes={"one": of}, classes={}, unread=replace(STUDIO.unread, containers=frozenset(unread)))
    assert levels(find_fills_that_do_not_fit(here)) == found


def test_of_a_liquid_that_nobody_knows_no_figure_is_missing() -> None:
    plan = lye(liquids=(LyeLiquid(Name("moon water"), Fraction(1)),))
    assert levels(find_figures_missing(replace(STUDIO, recipes={"one": soap({"olive oil": 100}, plan)}))) == []


# A lotion with nothing that is known to preserve is one without a preservative: that is said, and not of what.
@pytest.mark.parametrize(("beside_it", "found"), [({}, []), ({BLEND: "0.9"}, ["preservative-unknown caution"])])
def test_where_nothing_is_known_to_preserve_that_is_the_finding(beside_it: dict[str, str], found: list[str]) -> None:
    silent = replace(STUDIO.ingredients[BLEND], name="our blend", preserves=None)
    here = replace(STUDIO, ingredients={**STUDIO.ingredients, silent.key: silent})
    of = replace(mixed(water="50", our_blend="0.5", **beside_it), product="lotion")
    assert levels(find_preservatives_that_do_not_fit(replace(here, recipes={"one": of}))) == found
