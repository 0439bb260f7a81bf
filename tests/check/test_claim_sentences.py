"""Claims in sentences as studios write them: each is found with its weight in each region, and what may be said stays silent."""

from collections.abc import Mapping
from collections.abc import Set as AbstractSet
from pathlib import Path

import pytest
import yaml

from builder.check.label.claims import claims_in
from builder.check.teaching.statements import Said, Statement
from builder.model.place import Place
from builder.model.recipe.product import Condition
from builder.model.teaching.claim import Claim
from builder.model.teaching.prose import sentences_of, value_as_text
from tests.studios import sound_studio

STUDIO, _ = sound_studio()
ROWS = yaml.load((Path(__file__).parent / "claim_sentences.yaml").read_text(encoding="utf-8"), yaml.CSafeLoader)
REGIONS = ("US", "EU", "UK", "Canada")


def claims_of(text: str, heading: str = "", holds: AbstractSet[str] = frozenset()) -> dict[str, Claim]:
    sentences = sentences_of(value_as_text(text, Place("recipes/a.yaml", 1)))
    said = [Statement(one, Said.TEXT, "", "", heading, frozenset(map(Condition, holds))) for one in sentences]
    return {claim.key: claim for statement in said for claim, _, _ in claims_in(statement, STUDIO.claims)}


@pytest.mark.parametrize("text", ROWS["fine"])
def test_what_may_be_said_stays_silent(text: str) -> None:
    assert claims_of(text) == {}


@pytest.mark.parametrize(("text", "wanted"), ROWS["found"].items())
def test_a_claim_is_found_with_its_weight_in_each_region(text: str, wanted: Mapping[str, Mapping[str, str]]) -> None:
    found = claims_of(text)
    for key, weights in wanted.items():
        assert key in found
        for region, weight in weights.items():
            assert found[key].weight_in(region) == weight


def test_without_a_region_the_strictest_row_speaks() -> None:
    by_key = {claim.key: claim for claim in STUDIO.claims.claims}
    assert by_key["sleep, stress and mood"].weight_in("") == "stop"
    assert by_key["ageing"].weight_in("") == "caution"
    assert by_key["ageing"].weight_in("UK") is None


def test_quoted_words_under_a_heading_about_claims_are_no_claims() -> None:
    assert claims_of('Leave out "heals eczema" and "kills germs".', "What a label may say") == {}
    assert claims_of('Leave out "heals eczema" and "kills germs".', "Our soaps") != {}


def test_what_the_recipe_holds_decides_on_vegan_and_on_no_preservative() -> None:
    assert "vegan with something of an animal" in claims_of("A vegan balm.", holds={"animal"})
    assert claims_of("A vegan balm.") == {}
    assert "preservative-free with water" in claims_of("Preservative-free.", holds={"unpreserved"})


def test_every_region_of_a_claim_is_one_of_the_label_rules() -> None:
    named = {region for claim in STUDIO.claims.claims for region in (*claim.stops_in, *claim.cautions_in)}
    assert named == set(REGIONS)
    assert all(claim.stops_in | claim.cautions_in for claim in STUDIO.claims.claims)
