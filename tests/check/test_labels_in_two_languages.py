"""What a label in two languages lacks holds back the labels of those recipes alone that lack it, and of what no class makes nothing.

C.R.C. c. 869 s. 18, read: a label in Canada is in English and French. What has no label needs no French, by plain meaning.
"""

import shutil
from datetime import date
from pathlib import Path

from builder.model.subject import Labels
from builder.pipeline import check
from tests.test_findings import FINDINGS, lay_out

KIND = FINDINGS / "label-untranslated--kind-of-product"


def held(studio: Path) -> list[frozenset[object]]:
    found = check(studio, on=date(2027, 1, 1)).findings
    return [frozenset(one.about) for one in found if one.name == "label-untranslated"]


def test_a_kind_without_its_french_holds_back_the_labels_of_its_own_recipes(tmp_path: Path) -> None:
    lay_out(KIND, tmp_path / "studio")
    assert held(tmp_path / "studio") == [frozenset({Labels("plain-lotion")})]


def test_a_kind_of_which_no_class_makes_anything_needs_no_french(tmp_path: Path) -> None:
    lay_out(KIND, tmp_path / "studio")
    shutil.rmtree(tmp_path / "studio" / "classes" / "one-lotion")
    assert held(tmp_path / "studio") == []
