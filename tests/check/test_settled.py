"""What a studio has settled with a person about an allergy counts as a sentence, and nothing else is asked of the column."""

from collections.abc import Sequence
from pathlib import Path

import pytest

from builder.words.reason import is_reason
from tests.test_findings import CASES, check, lay_out

SETTLED = next(case for case in CASES if case.name == "settled-unclear")


@pytest.mark.parametrize("text", ["", "ok", "yes", "talked", "all fine", "- - - -", "1 2 3", "n/a n/a"])
def test_these_settle_nothing(text: str) -> None:
    assert not is_reason(text)


@pytest.mark.parametrize("text", ["Asked her doctor.", "wears her gloves", "We talked on 3 May: she stays with the salts."])
def test_these_settle(text: str) -> None:
    assert is_reason(text)


@pytest.mark.parametrize(("row", "names"), [
    ("Bo Fenn,41,preservatives,talked,no scent", ["allergy-in-recipe", "settled-unclear"]),
    ("Bo Fenn,41,preservatives,,no scent", ["allergy-in-recipe"]),
    ("Bo Fenn,41,none,-,no scent", []),
    ("Bo Fenn,41,walnut,no,no scent", []),
])  # fmt: skip
def test_the_column_is_judged_only_where_something_was_to_settle(tmp_path: Path, row: str, names: Sequence[str]) -> None:
    lay_out(SETTLED, tmp_path / "studio")
    (tmp_path / "studio/classes/one-lotion/roster.csv").write_text(f"name,age,allergies,settled,scent\n{row}\n", encoding="utf-8")
    _, _, err = check(tmp_path / "studio")
    assert [line.split(": ")[1].split(" ")[0] for line in err.splitlines() if "roster.csv:" in line] == names
