"""Each finding has its smallest failing studio, and the exact words with which the command answers.

A folder in `findings/` is laid over `findings/_sound`, a studio in which nothing is found; `gone.txt` names files to take away. Then
`stillroom check` must print exactly `expected.txt` to stderr and end with the status that its stops call for. `_sound` is the passing
twin of all of them. To write the expected texts anew after a change of wording: `python -m tests.test_findings`, then read the diff;
the examples of the reference are written with them.
"""

import contextlib
import io
import shutil
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from _pytest.mark.structures import ParameterSet

from builder import cli, pipeline
from builder.finding_kinds import finding_kinds
from builder.model.finding import Weight
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, STOP
from builder.rules.reach import what_is_held

FINDINGS = Path(__file__).parent / "findings"
CASES = sorted(folder for folder in FINDINGS.iterdir() if folder.is_dir() and not folder.name.startswith("_"))


def lay_out(case: Path | None, target: Path) -> None:
    shutil.copytree(FINDINGS / "_sound", target, copy_function=shutil.copyfile)
    if case is not None:
        beside = shutil.ignore_patterns("expected.txt", "gone.txt")
        shutil.copytree(case, target, dirs_exist_ok=True, ignore=beside, copy_function=shutil.copyfile)
        gone = case / "gone.txt"
        for name in gone.read_text(encoding="utf-8").split() if gone.exists() else ():
            (target / name).unlink()


def check(studio: Path) -> tuple[int, str, str]:
    """Run the command on a studio folder; give its status and what it printed to stdout and to stderr."""
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        status = cli.main(["check", str(studio), "--today", "2027-01-01"])
    return status, out.getvalue(), err.getvalue()


def answer(case: Path | None) -> tuple[int, str, str]:
    with tempfile.TemporaryDirectory() as folder:
        studio = Path(folder) / "studio"
        lay_out(case, studio)
        before = sorted(path for path in Path(folder).rglob("*"))
        answered = check(studio)
        assert sorted(path for path in Path(folder).rglob("*")) == before, "check wrote something"
        return answered


def test_nothing_is_found_in_the_sound_studio() -> None:
    status, out, err = answer(None)
    assert (status, err) == (0, "")
    assert "Nothing found" in out


def first_of_each() -> Iterator[ParameterSet]:
    """Yield each case; what is not the first of its finding is for the long run."""
    seen: set[str] = set()
    for case in CASES:
        name = case.name.partition("--")[0]
        yield pytest.param(case, id=case.name, marks=pytest.mark.long if name in seen else ())
        seen.add(name)


@pytest.mark.parametrize("case", list(first_of_each()))
def test_finding(case: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    looked, look = [], pipeline.check

    def noting(*arguments: Any, **named: Any) -> pipeline.Outcome:
        looked.append(look(*arguments, **named))
        return looked[-1]

    monkeypatch.setattr(pipeline, "check", noting)
    status, _, err = answer(case)
    assert err == (case / "expected.txt").read_text(encoding="utf-8")
    assert status == (1 if "(stop)" in err else 0)
    # A folder is named after its finding; a second case of the same finding adds `--` and what is special about it.
    assert f": {case.name.split('--')[0]} (" in err
    assert "Traceback" not in err
    (outcome,) = looked
    for finding in outcome.findings:
        comes_as = CAUTION if finding.weight is Weight.CAUTION else ACCEPTABLE_STOP if finding.acceptable else STOP
        assert comes_as in finding_kinds()[finding.name].comes_as, f"{finding.name} is declared as something else"
        assert not finding.stops or outcome.studio is None or what_is_held([finding], outcome.studio).subjects, "a stop holds nothing back"


if __name__ == "__main__":
    for one in CASES:
        if len(sys.argv) < 2 or one.name in sys.argv[1:]:
            (one / "expected.txt").write_text(answer(one)[2], encoding="utf-8")
            print(one.name)
    from builder.reference.explanations import EXAMPLES
    from tests.reference_examples import examples

    EXAMPLES.write_text(examples(), encoding="utf-8")
