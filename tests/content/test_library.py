"""The library as a whole: every card loads, every source is used, figures for one fat agree with theory from its fatty acids."""

import csv
import re
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path

import pytest
import yaml

from builder.library import CONTENT
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.read.library import read_shelf
from tests.making import sure
from tests.studios import sound_studio

CARDS, FINDINGS = read_shelf(None, CONTENT)
UNIQUE = {card.key: card for card in CARDS.values()}.values()
BY_NAME = {card.name: card for card in UNIQUE}
AUTHORITIES = Path(__file__).parent.parent / "authorities"
STUDIO, _ = sound_studio()


def read_csv(name: str) -> list[dict[str, str]]:
    with (AUTHORITIES / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_every_card_loads() -> None:
    assert FINDINGS == []
    assert len(UNIQUE) == len(list((CONTENT / "ingredients").glob("*.yaml"))) >= 90


def test_every_source_is_cited_and_every_citation_has_a_source() -> None:
    titles = yaml.load((CONTENT / "sources.yaml").read_text(encoding="utf-8"), yaml.CSafeLoader)
    texts = [path.read_text(encoding="utf-8") for path in CONTENT.rglob("*") if path.is_file() and path.name != "sources.yaml"]
    cited = {key for key in titles if any(f"source: {key}" in text for text in texts)}
    assert set(titles) == cited


@pytest.mark.parametrize("card", [card for card in UNIQUE if card.counts_as.is_oil], ids=lambda card: card.name)
def test_every_fat_wax_and_fatty_acid_has_a_saponification_range(card: Ingredient) -> None:
    figure = card.figure("saponification")
    assert figure is not None
    assert figure.unit == "mg/g"
    assert figure.high is not None
    # An unmodified C16 to C18 fat lies between 160 and 215, a lauric one between 230 and 265, free acids and medium chains higher, waxes
    # lower (constants.md of the reference collection, section 10, and the wax monographs): anything else is a wrong unit or a typo.
    low, high = {CountsAs.WAX: (40, 125), CountsAs.FAT: (160, 365), CountsAs.FATTY_ACID: (160, 395)}[card.counts_as]
    assert low <= figure.low <= figure.high <= high


NAMES = {
    "Coconut oil (USP)": "Coconut oil",
    "Rapeseed oil, low erucic (canola)": "Canola oil",
    "Sunflower oil (regular)": "Sunflower oil",
    "Beef tallow": "Beef tallow",
    "Mango butter": "Mango butter",
    "Maize oil": "Corn oil",
}
# Theory and table are known to disagree for these by up to 2.5 units: the fatty acids of one sample against the range of others.
KNOWN_OFF = {"Babassu oil": Fraction("2.5"), "Hemp seed oil": Fraction("2.5"), "Mango butter": Fraction("2.5")}


@pytest.mark.parametrize("row", read_csv("theoretical_sv.csv"), ids=lambda row: row["oil"])
def test_the_range_in_use_holds_the_value_worked_out_from_the_fatty_acids(row: Mapping[str, str]) -> None:
    name = NAMES.get(row["oil"], row["oil"])
    card = CARDS[name.casefold()]
    figure, theory = sure(card.figure("saponification")), Fraction(row["sv_theory_corrected"])
    # One unit for rounding of midpoints and for the assumed unsaponifiable matter.
    slack = KNOWN_OFF.get(card.name, Fraction(1))
    assert figure.low - slack <= theory <= sure(figure.high) + slack


@pytest.mark.parametrize("row", [r for r in read_csv("saponification.csv") if "pure triglyceride" not in r["name"]], ids=str)
def test_every_published_row_stands_on_a_card(row: Mapping[str, str]) -> None:
    low = Fraction(row["sv_low_mgKOH_g"])
    high = Fraction(row["sv_high_mgKOH_g"]) if row["sv_high_mgKOH_g"] else None
    entries = [figure for card in UNIQUE if "saponification" in card.figures for figure in card.figures["saponification"].all]
    known = {"read": Known.READ, "memory": Known.MEMORY, "computed": Known.COMPUTED}[row["how_known"]]
    assert any((entry.low, entry.high, entry.known) == (low, high, known) for entry in entries)


def test_every_alkali_and_acid_can_be_reckoned_with() -> None:
    for card in UNIQUE:
        if card.counts_as is CountsAs.ALKALI:
            assert card.figure("molar mass") and card.figure("purity"), card.name
        if card.counts_as is CountsAs.ACID:
            assert card.figure("molar mass") and card.figure("protons") and card.figure("purity"), card.name


def test_a_base_has_no_label_name_of_ours() -> None:
    for card in UNIQUE:
        assert (card.label_name is None) == (card.counts_as is CountsAs.BASE), card.name


def test_every_hazard_of_a_card_has_its_caution() -> None:
    hazards = {caution.hazard for caution in STUDIO.cautions.values()}
    assert {hazard for card in UNIQUE for hazard in card.hazards} <= hazards
    assert {"hot", "hot fat", "raw soap"} <= hazards


def test_a_caution_is_short_enough_to_stand_before_a_step() -> None:
    for caution in STUDIO.cautions.values():
        words = " ".join((caution.what, *caution.avoid, *caution.if_it_happens)).split()
        assert len(words) <= 130, caution.key
        assert caution.signal in ("danger", "warning", "caution")


def test_no_caution_holds_a_step_of_the_work() -> None:
    """Neither an amount to weigh nor a time to wait stands in how to keep clear of a danger (principle of ANSI Z535.6, restated)."""
    work = re.compile(r"\d+ ?(?:g|kg|oz|mL|L|%|min|minutes?|hours?|days?)\b|\{")
    assert len(STUDIO.cautions) > 10
    assert {
        caution.key: line for caution in STUDIO.cautions.values() for line in (*caution.avoid, caution.again) if work.search(line)
    } == {}


def test_containers_have_a_volume_or_none() -> None:
    for container in STUDIO.containers.values():
        assert container.capacity is None or container.capacity.millilitres > 0, container.name
        assert "oz" not in container.name or "fl oz" in container.name, container.name
