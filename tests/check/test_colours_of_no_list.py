"""Colours where no list of the region is known: the lists of others are the yardstick, and what one of them allows is met in silence."""

from dataclasses import replace
from pathlib import Path
from typing import cast

import pytest

from builder.check.batches import Batch
from builder.check.dose import colour_fields
from builder.check.dose.colour_unknown_here import find_colours_unknown_here
from builder.model.dose.limit import Field
from builder.model.place import NOWHERE
from builder.model.recipe.ingredient import DeclaredAs
from builder.model.recipe.product import Product
from tests.check.test_at_the_edge import levels, mixed
from tests.check.test_seldom_met import seen_in
from tests.making import card
from tests.studios import sound_studio
from tests.test_findings import CASES, check, lay_out

CASE = next(case for case in CASES if case.name == "colour-unknown-here")
STUDIO, _ = sound_studio()


def found(tmp_path: Path, colour: str) -> list[str]:
    """Return the names of what is found on the bar of the case with another colour."""
    lay_out(CASE, tmp_path / "studio")
    bar = tmp_path / "studio/recipes/plain-bar.yaml"
    bar.write_text(bar.read_text(encoding="utf-8").replace("spirulina powder: 1 %", colour), encoding="utf-8")
    _, _, err = check(tmp_path / "studio")
    return [line.split(": ")[1].split(" ")[0] for line in err.splitlines() if line.startswith("recipes/plain-bar.yaml:")]


# Both lists have the first three; charcoal is on neither, and an ingredient like any other in the EU.
@pytest.mark.parametrize("colour", ["iron oxide yellow: 1 %", "ultramarine blue: 1 %", "mica: 1 %", "activated charcoal: 1 %"])
def test_what_one_list_allows_is_met_in_silence(tmp_path: Path, colour: str) -> None:
    assert found(tmp_path, colour) == []


def test_what_no_list_allows_is_said(tmp_path: Path) -> None:
    assert found(tmp_path, "spirulina powder: 1 %") == ["colour-unknown-here"]


class _Sheet:
    def __init__(self, product: Product, used_on: tuple[str, ...]) -> None:
        self.product, self.recipe = product, self
        self.used_on = used_on

    def goes_on(self, _: tuple[str, ...]) -> tuple[str, ...]:
        return self.used_on


class _Batch:
    region = STUDIO.region

    def __init__(self, product: Product, used_on: tuple[str, ...]) -> None:
        self.worked = _Sheet(product, used_on)

    def stop(self, *said: str | None) -> tuple[str | None, ...]:
        return said

    caution = stop


@pytest.mark.parametrize("used_on", [(), ("eye",)], ids=["elsewhere", "eye"])
@pytest.mark.parametrize("kind", ["lotion", "lip balm", "body wash", "bath salts"])
@pytest.mark.parametrize("field", [field for field in Field if field is not Field.ORDINARY])
def test_what_a_field_allows_is_what_is_not_stopped_where_the_list_is_law(field: Field, kind: str, used_on: tuple[str, ...]) -> None:
    rule = next(rule for rule in STUDIO.field_rules if rule.allowed_for is field)
    product = STUDIO.products[kind]
    card = STUDIO.ingredients["iron oxide red"]
    # As much of a batch as the rule looks at.
    as_much = cast(Batch, _Batch(product, used_on))
    stops = list(colour_fields._judge(as_much, card, NOWHERE, rule.names[0], rule))
    assert rule.allows(product, on_eyes=bool(used_on)) is not bool(stops)


# CI 15510 is not for eye products (Annex IV of the EU, entry 21, read), and D&C Orange No. 4 not for the area of the eye (21 CFR 74.2254,
# read). D&C Red No. 33 is not for it either (74.2333), but the EU has CI 17200 in all products (entry 37).
@pytest.mark.parametrize(
    ("name", "eu", "us", "says"),
    [
        ("Hand lotion", "CI 15510", "Orange 4", []),
        ("Eye lotion", "CI 15510", "Orange 4", ["colour-unknown-here caution"]),
        ("Eye lotion", "CI 17200", "Red 33", []),
        ("Hand lotion", "CI 15510", "no such colour", []),
        ("Hand lotion", "CI 99999", "Orange 4", []),
        ("Hand lotion", "CI 99999", "no such colour", ["colour-unknown-here caution"]),
    ],
)
def test_a_colour_for_the_eye_is_one_that_a_list_has_for_it(name: str, eu: str, us: str, says: list[str]) -> None:
    bright = replace(card("bright"), declared_as=DeclaredAs.COLOUR, colour_name={"eu": eu, "us": us})
    of = replace(mixed(bright="0.1"), name=name, product="lotion")
    assert levels(find_colours_unknown_here(seen_in("Canada", of, bright))) == says
