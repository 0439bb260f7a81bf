"""Colours where no list of the region is known: the lists of others are the yardstick, and what one of them allows is met in silence."""

from pathlib import Path
from typing import cast

import pytest

from builder.check.batches import Batch
from builder.check.dose import colour_fields
from builder.model.dose.limit import Field
from builder.model.place import NOWHERE
from builder.model.recipe.product import Product
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
        self.sheet = _Sheet(product, used_on)

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
