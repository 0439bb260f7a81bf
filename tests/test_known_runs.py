"""A run of which everything is as it was says the same without working anything out; whatever has changed is looked at anew."""

import shutil
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from builder import pipeline
from builder import sums as files_summed
from builder.cache import compiled, sums
from builder.tasks import known_runs
from tests.findings_studio import SOUND
from tests.published import Run, run
from tests.settled import known_runs_are_found

LESSON, OUTPUT = "classes/one-bar/lesson.md", "output/site/index.html"
ROSTER = Path(__file__).parent / "findings/allergy-in-choice--waiting/classes/one-lotion/roster.csv"


@pytest.fixture
def looks(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[Path]]:
    """Return the list of all studios that are really looked at; the code is taken for old."""
    looked: list[Path] = []
    check = pipeline.check

    def look(folder: Path, **options: object) -> pipeline.Outcome:
        looked.append(folder)
        return check(folder, **options)  # type: ignore[arg-type]

    monkeypatch.setattr(pipeline, "check", look)
    monkeypatch.setattr(files_summed, "_BEGUN", time.time() + 1000)
    sums._sum_of_code.cache_clear()
    sums._sum_of_what_ships.cache_clear()
    with known_runs_are_found():
        yield looked


@pytest.fixture
def studio(tmp_path: Path) -> Path:
    shutil.copytree(SOUND, tmp_path / "studio")
    return tmp_path / "studio"


def check(studio: Path, day: str = "2027-01-01") -> Run:
    return run("check", studio, "--today", day)


def publish(studio: Path) -> Run:
    return run("publish", studio, "--today", "2027-01-01")


def append(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    with file.open("a", encoding="utf-8") as end:
        end.write(text)


def test_what_was_found_is_said_again(studio: Path, looks: list[Path]) -> None:
    append(studio / LESSON, "\nPour the water onto the lye.\n")
    first = check(studio)
    assert "unsafe-step" in first.err
    assert check(studio) == first
    assert len(looks) == 1


CHANGES: dict[str, Callable[[Path], object]] = {
    "a word": lambda studio: append(studio / LESSON, "\nSay hello.\n"),
    "a card on the shelf": lambda studio: append(studio / "shelf/ingredients/new.yaml", "name: New\n"),
    "an empty class": lambda studio: (studio / "classes" / "empty").mkdir(),
    "a file gone": lambda studio: (studio / LESSON).unlink(),
    "a file moved": lambda studio: (studio / "pages").rename(studio / "sides"),
    "a link": lambda studio: (studio / "pages" / "more.md").symlink_to(studio / "studio.yaml"),
    "a template": lambda studio: append(studio / "layouts" / "page.html", "{{ wrong"),
    "dates shown": lambda studio: append(studio / "output/site/dates.json", "{}"),
}


@pytest.mark.parametrize("change", [
    pytest.param(change, id=name, marks=() if name in ("a word", "a file gone", "a link") else pytest.mark.long)
    for name, change in CHANGES.items()
])  # fmt: skip
def test_any_change_is_looked_at(change: Callable[[Path], object], studio: Path, looks: list[Path]) -> None:
    check(studio)
    change(studio)
    check(studio)
    assert len(looks) == 2


def test_another_day_or_another_version_is_looked_at(studio: Path, looks: list[Path], monkeypatch: pytest.MonkeyPatch) -> None:
    check(studio)
    check(studio, "2027-01-02")
    assert len(looks) == 2
    monkeypatch.setattr(sums, "_sum_of_python", lambda: b"another Python")
    check(studio)
    assert len(looks) == 3


def test_what_changes_while_a_run_looks_is_looked_at_again(studio: Path, looks: list[Path], monkeypatch: pytest.MonkeyPatch) -> None:
    look = pipeline.check

    def look_and_change(folder: Path, **options: object) -> pipeline.Outcome:
        outcome = look(folder, **options)  # type: ignore[arg-type]
        append(studio / LESSON, "\nSay hello.\n")
        return outcome

    before = (studio / LESSON).read_bytes()
    monkeypatch.setattr(pipeline, "check", look_and_change)
    check(studio)
    (studio / LESSON).write_bytes(before)
    check(studio)
    assert len(looks) == 2


def test_nothing_is_kept_of_people(studio: Path, looks: list[Path]) -> None:
    shutil.copy(ROSTER, studio / "classes/one-lotion/roster.csv")
    assert "roster.csv" in check(studio).err
    check(studio)
    assert len(looks) == 2


@pytest.mark.long
@pytest.mark.usefixtures("pages_alone")
def test_what_has_come_out_twice_alike_is_not_published_again(studio: Path, looks: list[Path]) -> None:
    publish(studio)
    assert "Wrote" in publish(studio).out
    assert len(looks) == 2
    before = {path: path.read_bytes() for path in (studio / "output").rglob("*") if path.is_file()}
    assert "Nothing has changed: the publication in" in publish(studio).out
    assert len(looks) == 2
    append(studio / OUTPUT, "changed by somebody")
    assert "Wrote" in publish(studio).out
    assert len(looks) == 3
    assert {path: path.read_bytes() for path in (studio / "output").rglob("*") if path.is_file()} == before
    shutil.rmtree(studio / "output")
    publish(studio)
    assert (studio / OUTPUT).exists()


@pytest.mark.usefixtures("looks")
def test_a_folder_that_is_no_output_is_not_read(studio: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    summed: list[str] = []
    bytes_of = files_summed._bytes_of

    def read(path: str, *, loaded: bool = False) -> bytes:
        summed.append(path)
        return bytes_of(path, loaded=loaded)

    monkeypatch.setattr(files_summed, "_bytes_of", read)
    append(tmp_path / "letters" / "private.txt", "not ours")
    done = run("publish", studio, "--to", tmp_path / "letters", "--today", "2027-01-01")
    assert (done.status, "letters" in done.err) == (3, True)
    assert summed and not [path for path in summed if path.endswith("private.txt")]
    done = run("publish", studio, "--to", "/", "--today", "2027-01-01")
    assert (done.status, "is a whole disk" in done.err) == (3, True)


def test_runs_do_not_push_out_what_took_long_to_make(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    compiled.keep("library", 1)
    for number in range(compiled.MOST[sums.OF_RUNS] + 5):
        compiled.keep(f"{sums.OF_RUNS}{number}", number)
    assert compiled.find("library") == 1
    assert len(list((tmp_path / "stillroom").iterdir())) == compiled.MOST[sums.OF_RUNS] + 1
    assert known_runs.Run(("check",), tmp_path, tmp_path, "library").find() is None


def test_what_ships_is_known_by_its_times_once_these_lie_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def sum_of_it() -> str | None:
        sums._sum_of_what_ships.cache_clear()
        return sums.sum_of_run(("check",), ships=(tmp_path,))

    (tmp_path / "oils.yaml").write_text("one", encoding="utf-8")
    monkeypatch.setattr(files_summed, "_BEGUN", time.time())
    assert sum_of_it() is None
    monkeypatch.setattr(files_summed, "_BEGUN", time.time() + 1000)
    before = sum_of_it()
    assert before and sum_of_it() == before
    (tmp_path / "oils.yaml").write_text("two", encoding="utf-8")
    assert sum_of_it() not in (None, before)
