"""A label that another language lacks words for may be accepted for a reason, whatever it is that is missing: nobody is hurt by it."""

from datetime import date
from pathlib import Path

import pytest

from builder import pipeline
from tests.test_findings import FINDINGS, lay_out

KINDS = ("", "--in-french-alone", "--kind-of-product", "--options-and-cautions")


@pytest.mark.parametrize("kind", KINDS)
def test_words_that_are_missing_on_a_label_may_be_accepted(tmp_path: Path, kind: str) -> None:
    lay_out(FINDINGS / f"label-untranslated{kind}", tmp_path / "studio")
    found = [one for one in pipeline.check(tmp_path / "studio", on=date(2027, 1, 1)).findings if one.name == "label-untranslated"]
    assert found and all(one.stops and one.acceptable for one in found)
