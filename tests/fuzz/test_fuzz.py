"""Some dozens of spoilt studios: no traceback, no hang, nothing written where it should not be, each finding at a place that exists.

Many more are tried by hand with `python -m tests.fuzz`. What was found so, once mended, has a test of its own beside what it is about.
"""

from pathlib import Path

import pytest

from tests.fuzz.trial import try_seed


@pytest.mark.parametrize("seed", [*range(6), *(pytest.param(seed, marks=pytest.mark.long) for seed in range(6, 45))])
def test_a_spoilt_studio_is_answered_in_words(seed: int, tmp_path: Path) -> None:
    trial = try_seed(seed, tmp_path, small=True)
    assert trial.faults == [], trial.done


def test_the_watch_sees_what_is_written_and_asked_of_others(tmp_path: Path) -> None:
    import socket
    import subprocess
    import sys

    from tests.fuzz.watching import TooSlowError, watched

    (tmp_path / "mine").mkdir()
    with watched([tmp_path / "mine"], 5) as watch:
        (tmp_path / "mine" / "a").write_text("a", encoding="utf-8")
        (tmp_path / "b").write_text("b", encoding="utf-8")
        (tmp_path / "b").unlink()
        (tmp_path / "c").mkdir()
        (tmp_path / "mine" / "a").read_text(encoding="utf-8")
        subprocess.run([sys.executable, "-c", ""], check=True)
        socket.socket().close()
    assert [breach.split()[0] for breach in watch.breaches] == ["open", "os.remove", "os.mkdir", "subprocess.Popen", "socket.__new__"]
    with pytest.raises(TooSlowError), watched([], 0.05):
        while True:
            pass
