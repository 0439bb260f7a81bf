"""What `stillroom explain` shows of a finding is what the finding's own case prints."""

import pytest

from builder import cli
from builder.finding_kinds import finding_kinds
from builder.model.finding_kind import FindingKind
from builder.reference import explain
from builder.reference.explanations import EXAMPLES
from tests.findings_studio import SOUND
from tests.making import sure
from tests.reference_examples import examples
from tests.test_finding_names import MADE_IN_A_TEST

KINDS = tuple(finding_kinds().values())


def test_examples_are_those_of_the_cases() -> None:
    assert EXAMPLES.read_text(encoding="utf-8") == examples(), "python -m tests.reference_examples writes them anew"


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_finding_is_explained(kind: FindingKind) -> None:
    explanation = explain(kind.name)
    assert sure(explanation).kind == kind
    assert (f": {kind.name} (" in sure(explanation).shown) is (kind.name not in MADE_IN_A_TEST)
    assert ("stop" in sure(explanation).holds_back) is kind.stops
    assert ("caution" in sure(explanation).holds_back) is kind.cautions
    assert (sure(explanation).may_be_accepted == "It cannot be accepted.") is (not kind.acceptable)


def test_what_is_sound_stands_in_the_sound_studio() -> None:
    lines = {line for path in SOUND.rglob("*.*") for line in path.read_text(encoding="utf-8").splitlines()}
    sound = [sure(explain(kind.name)).sound for kind in KINDS if sure(explain(kind.name)).sound]
    assert len(sound) > 60
    assert [line for line in sound if line not in lines] == []


def test_the_command_shows_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["explain", "lye-too-strong"]) == 0
    shown = capsys.readouterr().out
    assert "solid lye would end up in the soap" in shown
    assert "cannot be accepted" in shown
    assert "        water: {lye concentration: 33 %}" not in shown.split("Sound is:")[0]
    assert "water: {lye concentration: 33 %}" in shown.split("Sound is:")[1]


def test_a_mistyped_name_gets_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["explain", "lye-to-strong"]) == 2
    assert '"lye-too-strong"' in capsys.readouterr().err
