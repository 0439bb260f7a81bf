"""Whether children pour what is hot: the sound twins of a lesson in which they do are silent."""

from pathlib import Path

import pytest

from tests.test_findings import FINDINGS, check, lay_out

FILL = "2. Fill {portion} into each bottle."


def names(tmp_path: Path, old: str, new: str, file: str = "lesson.md") -> list[str]:
    lay_out(FINDINGS / "poured-by-children", tmp_path / "studio")
    path = tmp_path / "studio/classes/one-lotion" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")
    return [line.split(": ")[1] for line in check(tmp_path / "studio")[2].splitlines() if line.startswith("classes/one-lotion/")]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (FILL, "2. Have an adult fill {portion} into each bottle."),
        (FILL, "2. The teacher fills {portion} into each bottle. Pour the scent into your own cup."),
        (FILL, "2. Never pour it yourselves.\n3. Your teacher fills {portion} into each bottle."),
        ("(students, 30 min)", "(teacher, 30 min)"),
        ("(students, 30 min)", "(students, 30 min, cooled)"),
    ],
)
def test_what_an_adult_pours_and_what_has_cooled_is_silent(tmp_path: Path, old: str, new: str) -> None:
    assert names(tmp_path, old, new) == []


def test_from_ten_years_on_nothing_is_said(tmp_path: Path) -> None:
    assert names(tmp_path, "youngest: 9", "youngest: 10", "class.yaml") == []


@pytest.mark.parametrize(
    "step", ["2. Pour the lotion into your bottle.", "2. Ladle it into the bottles.", "2. We fill {portion} into each bottle."]
)
def test_it_is_found_without_an_amount_too(tmp_path: Path, step: str) -> None:
    assert names(tmp_path, FILL, step) == ["poured-by-children (caution)"]
