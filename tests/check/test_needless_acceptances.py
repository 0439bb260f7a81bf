"""Reasons under `accepts:` that nothing has asked for: where no run knows yet what would be found, none of them is called needless."""

from dataclasses import replace
from typing import Any

import pytest

from builder.check.acceptance import find_needless_acceptances
from builder.model.finding import Acceptance, Finding, Weight
from builder.model.place import Place
from builder.model.studio import Studio
from builder.model.subject import WholeClass, WholeRecipe
from tests.check.test_at_the_edge import levels
from tests.reckon.test_guests import LOTION, STUDIO

NAME, REASON = "a-finding", Acceptance("Nobody is harmed by it.")
RECIPE = STUDIO.recipes[LOTION.recipe_keys[0]]


def accepting(**accepts: Any) -> Studio:
    """Return the studio of one class with its recipe, of which the studio, the class or the recipe accepts a finding."""
    given = {name: {NAME: reason} for name, reason in accepts.items()}
    profile = replace(STUDIO.profile, accepts=given.get("studio", {}))
    one, recipe = replace(LOTION, accepts=given.get("one_class", {})), replace(RECIPE, accepts=given.get("recipe", {}))
    return replace(STUDIO, profile=profile, classes={one.key: one}, recipes={recipe.key: recipe})


def found(studio: Studio, *findings: Finding, not_worked_out: frozenset[Any] = frozenset()) -> list[str]:
    return levels(find_needless_acceptances(findings, studio, not_worked_out, [NAME, "another-finding"]))


NEEDLESS = ["accepted-without-need caution"]


@pytest.mark.parametrize("where", ["studio", "one_class", "recipe"])
def test_a_reason_for_what_was_not_found_is_needless(where: str) -> None:
    assert found(accepting(**{where: REASON})) == NEEDLESS
    # What is no sentence accepts nothing, and is a finding of its own.
    assert found(accepting(**{where: Acceptance("ok")})) == []


# Of what may be accepted a run has taken the reason; a stop that may not has its own word on that.
@pytest.mark.parametrize(
    ("changed", "needless"),
    [
        ({"accepted": REASON.reason}, []),
        ({"weight": Weight.STOP, "acceptable": False}, []),
        ({"accepted": REASON.reason, "name": "another-finding"}, NEEDLESS),
        ({"accepted": REASON.reason, "place": Place("recipes/another.yaml")}, NEEDLESS),
    ],
)
def test_a_reason_is_needed_by_what_was_found_where_it_speaks(changed: dict[str, Any], needless: list[str]) -> None:
    one = Finding(NAME, Weight.CAUTION, RECIPE.place, "", "")
    assert found(accepting(recipe=REASON), replace(one, **changed)) == needless


@pytest.mark.parametrize(
    ("left_out", "silent"),
    [
        (WholeClass(LOTION.key), {"studio", "one_class", "recipe"}),
        (WholeRecipe(RECIPE.key), {"studio", "one_class", "recipe"}),
        (WholeClass("another"), {"studio"}),
    ],
)
def test_of_what_is_not_worked_out_nobody_knows_what_would_be_found(left_out: Any, silent: set[str]) -> None:
    for where in ("studio", "one_class", "recipe"):
        said = found(accepting(**{where: REASON}), not_worked_out=frozenset({left_out}))
        assert said == ([] if where in silent else NEEDLESS), where


# A class that cannot be read may make any recipe, and is no other class.
def test_a_class_that_cannot_be_read_may_need_what_a_recipe_accepts() -> None:
    for where, needless in (("recipe", []), ("one_class", NEEDLESS)):
        studio = accepting(**{where: REASON})
        assert found(replace(studio, unread=replace(studio.unread, classes=frozenset({"unread"})))) == needless
