"""Regulation (EC) 1223/2009, Articles 4 and 19(1)(a), read: a responsible person within the Union, by name and address on the label."""

from datetime import date
from pathlib import Path

from builder.compose.label_layout.label_plans import plan_labels
from builder.pipeline import check
from tests.making import sure
from tests.test_findings import FINDINGS, lay_out

WHO = "responsible person: {name: Mill Goods, address: [2 Mill Lane, Cork, Ireland]}"


def test_a_person_inside_answers_for_a_studio_outside_and_stands_on_the_label(tmp_path: Path) -> None:
    lay_out(FINDINGS / "responsible-person-outside", tmp_path / "studio")
    path = tmp_path / "studio" / "studio.yaml"
    path.write_text(f"{path.read_text(encoding='utf-8')}{WHO}\n", encoding="utf-8")
    outcome = check(tmp_path / "studio", on=date(2027, 1, 1))
    assert outcome.findings == ()
    texts = [text for sheet in outcome.sheets for plan in plan_labels(sure(outcome.studio), sheet) for text in plan.texts]
    assert texts
    for text in texts:
        back = " ".join(run.text for paragraph in text.back for run in paragraph)
        assert "Responsible person: Mill Goods, 2 Mill Lane, Cork, Ireland." in back
        assert "Made at Test studio, 1 Test Row, Testham, United States" in back
