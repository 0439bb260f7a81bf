"""A front to colour in has something to colour in, or it is said. How small a label is too small: measured on the printed sheets."""

from datetime import date
from pathlib import Path

import pytest

from builder import pipeline
from tests.findings_studio import SOUND


@pytest.mark.parametrize(
    ("labels", "is_said"),
    [
        ("{sheet: letter 3 x 6, to colour: yes, design: posy}", True),
        ("{sheet: letter 3 x 6, design: posy}", False),
        ("{sheet: letter 2 x 4, to colour: yes, design: posy}", False),
        ("{sheet: letter 2 x 4, to colour: yes, design: linen}", False),
    ],
)
def test_a_front_without_a_field_is_told(tmp_path: Path, labels: str, is_said: bool) -> None:
    for file in (one for one in SOUND.rglob("*") if one.is_file()):
        (tmp_path / file.relative_to(SOUND)).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / file.relative_to(SOUND)).write_bytes(file.read_bytes())
    with (tmp_path / "studio.yaml").open("a", encoding="utf-8") as profile:
        profile.write(f"labels: {labels}\n")
    found = [finding.name for finding in pipeline.check(tmp_path, on=date(2027, 1, 2)).findings]
    assert ("label-nothing-to-colour" in found) is is_said
