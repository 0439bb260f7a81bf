"""Regulation (EC) 1223/2009, Articles 4 and 19(1)(a), read: a responsible person within the Union, by name and address on the label."""

from datetime import date
from pathlib import Path

import pytest
from babel import Locale

from builder.compose.label_layout.label_plans import plan_labels
from builder.pipeline import check
from builder.tasks.drafts import library_of
from tests.making import sure
from tests.test_findings import FINDINGS, lay_out

WHO = "responsible person: {name: Mill Goods, address: [2 Mill Lane, Cork, Ireland]}"


def test_a_person_inside_answers_for_a_studio_outside_and_stands_on_the_label(tmp_path: Path) -> None:
    lay_out(FINDINGS / "responsible-person-outside", tmp_path / "studio")
    path = tmp_path / "studio" / "studio.yaml"
    path.write_text(f"{path.read_text(encoding='utf-8')}{WHO}\n", encoding="utf-8")
    outcome = check(tmp_path / "studio", on=date(2027, 1, 1))
    assert outcome.findings == ()
    texts = [text for sheet in outcome.plans for plan in plan_labels(sure(outcome.studio), sheet) for text in plan.texts]
    assert texts
    for text in texts:
        back = " ".join(run.text for paragraph in text.back for run in paragraph)
        assert "Responsible person: Mill Goods, 2 Mill Lane, Cork, Ireland." in back
        assert "Made at Test studio, 1 Test Row, Testham, United States" in back


@pytest.mark.parametrize(("region", "address", "found"), [
    ("EU", "Bergen, Norway", []), ("EU", "Cork, Ireland", []), ("EU", "Basel, Switzerland", ["responsible-person-outside"]),
    ("EU", "Auckland, New Zealand", ["responsible-person-outside"]), ("EU", "Leeds, England", ["responsible-person-outside"]),
    ("EU", "Port Louis, Mauritius", ["responsible-person-outside"]), ("EU", "Springfield", ["responsible-person-open"]),
    ("EU", "Fort-de-France, Martinique", ["responsible-person-open"]),
    ("UK", "Leeds, England", []), ("UK", "Springfield, U.S.A.", ["responsible-person-outside"]),
])  # fmt: skip
def test_the_country_at_the_end_of_an_address_decides(tmp_path: Path, region: str, address: str, found: list[str]) -> None:
    """Where each country lies is common knowledge; Norway has the regulation by the EEA Agreement, from memory."""
    lay_out(FINDINGS / "responsible-person-outside", tmp_path / "studio")
    path = tmp_path / "studio" / "studio.yaml"
    text = path.read_text(encoding="utf-8").replace("region: EU", f"region: {region}").replace("Testham, United States", address)
    path.write_text(text, encoding="utf-8")
    assert [one.name for one in check(tmp_path / "studio", on=date(2027, 1, 1)).findings] == found


def test_each_country_has_its_english_name_and_none_is_within_a_region_that_wants_somebody_within() -> None:
    """Unicode locale data, English names of territories."""
    library, names = library_of(None), Locale("en").territories
    assert len(set(library.countries.values())) == 200
    for code in set(library.countries.values()):
        assert names[code].casefold() in {name for name, of in library.countries.items() if of == code}
    assert not {name for region in library.regions.values() for name in region.person_within} & set(library.countries)
