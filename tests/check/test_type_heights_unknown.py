"""A region of which no height of type is known: no label, and a stop that says so; with a single height of text there are labels."""

from dataclasses import replace
from pathlib import Path

import pytest

from builder.model.finding import Finding
from builder.model.label.type_height import HeightRule, LabelStatement
from builder.model.studio import Studio
from builder.read.studios import read_studio
from tests.test_findings import check, lay_out

Rows = tuple[HeightRule, ...]


def answered(folder: Path, monkeypatch: pytest.MonkeyPatch, kept: tuple[LabelStatement, ...]) -> tuple[int, str, str]:
    """Check the sound studio, whose region has only the heights of some statements."""
    lay_out(None, folder / "studio")
    read = read_studio

    def without_heights(studio_folder: Path, content: Path) -> tuple[Studio | None, tuple[Finding, ...]]:
        studio, findings = read(studio_folder, content)
        assert studio
        rows = tuple(row for row in studio.type_heights if row.region != studio.profile.region or row.statement in kept)
        return replace(studio, type_heights=rows), tuple(findings)

    monkeypatch.setattr("builder.pipeline.read_studio", without_heights)
    return check(folder / "studio")


@pytest.mark.parametrize("kept", [(), (LabelStatement.NET_CONTENTS,)])
def test_labels_of_which_no_height_is_known_are_stopped(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kept: tuple[LabelStatement, ...]
) -> None:
    status, _, said = answered(tmp_path, monkeypatch, kept)
    assert status == 1 and ": type-heights-unknown (stop)" in said
    assert "in this region (US), so no product gets a label" in " ".join(said.split())
    assert "Traceback" not in said and said.count("(stop)") == 1


def test_one_height_of_text_is_enough(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert answered(tmp_path, monkeypatch, (LabelStatement.TEXT,))[::2] == (0, "")
