"""What README.md shows works: its studio publishes without a finding, its finding is the one that the command prints."""

import re
import shlex
from pathlib import Path

import pytest

from builder import cli
from builder.reference import find_page
from tests.making import sure
from tests.published import named, sheets_pressed

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
BY_HAND = (ROOT / "content" / "reference" / "by-hand.md").read_text(encoding="utf-8")
SHOWN = re.compile(r"^`([\w/.-]+)`\n\n```\w+\n(.*?)^```$", flags=re.DOTALL | re.MULTILINE)
FILES = dict(SHOWN.findall(BY_HAND))
# A page that is read in a quarter of an hour; what is longer stands in the reference.
MOST_BYTES = 12 * 1024


def lay_out(folder: Path, **changed: str) -> None:
    for name, text in (FILES | changed).items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


def test_papers_are_short() -> None:
    for name in ("README.md", "DEVELOPERS.md"):
        assert (ROOT / name).stat().st_size <= MOST_BYTES, name


def test_what_the_readme_shows_is_of_the_studio_by_hand() -> None:
    shown = dict(SHOWN.findall(README))
    assert set(shown) == {"recipes/orchard-bar.yaml"} and shown.items() <= FILES.items()
    lesson = sure(re.search(r"^```markdown\n(.*?)^```$", README, flags=re.DOTALL | re.MULTILINE))[1]
    assert lesson in FILES["classes/first-bar/lesson.md"]


def test_its_commands_run_in_their_order(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """The questions of the first are answered by options, and what is called otherwise there is called so here."""
    monkeypatch.chdir(tmp_path)
    assert cli.main(["start", "loft", "--plain", "--called", "Orchard bar"]) == 0
    monkeypatch.chdir(tmp_path / "loft")
    next_ones = README[README.index("What comes next") : README.index("A recipe from your notebook")]
    commands = [shlex.split(line.partition(" #")[0])[1:] for line in re.findall(r"^    (stillroom .*)$", next_ones, re.M)]
    assert len(commands) >= 9
    for words in commands:
        assert cli.main(words) == 0, (words, capsys.readouterr().err)


def test_the_studio_by_hand_is_whole() -> None:
    assert set(FILES) == {"studio.yaml", "recipes/orchard-bar.yaml", "classes/first-bar/class.yaml", "classes/first-bar/lesson.md"}


@pytest.mark.long
def test_its_studio_publishes_without_a_finding(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lay_out(tmp_path / "loft")
    with sheets_pressed(named("checklist.pdf")):
        status = cli.main(["publish", str(tmp_path / "loft"), "--to", str(tmp_path / "out"), "--today", "2027-01-02"])
    printed = capsys.readouterr()
    assert status == 0
    assert "Nothing found" in printed.out
    assert (tmp_path / "out" / "site" / "index.html").is_file()


def test_its_finding_is_what_the_command_prints(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    recipe = FILES["recipes/orchard-bar.yaml"].replace("olive oil: 65 %", "olve oil: 65 %")
    lay_out(tmp_path, **{"recipes/orchard-bar.yaml": recipe})
    status = cli.main(["check", str(tmp_path), "--today", "2027-01-02"])
    block = re.search(r"## Reading a finding\n\n((?:    .*\n)+)", README)
    shown = "".join(line[4:] for line in sure(block).group(1).splitlines(keepends=True))
    assert status == 1
    assert shown in capsys.readouterr().err


def test_the_pages_that_it_names_exist() -> None:
    named = re.findall(r"stillroom reference (\w[\w./-]*)", README)
    assert len(named) >= 2
    assert [name for name in named if find_page(name) is None] == []


def test_its_pictures_and_papers_exist() -> None:
    linked = re.findall(r"\]\(([^)]+)\)", README)
    assert linked
    assert [name for name in linked if not (ROOT / name).is_file()] == []


def test_the_folders_and_files_that_developers_are_sent_to_exist() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = {name for name in re.findall(r"`([\w./-]+)`", text) if re.search(r"/|\.(py|md|yaml)$", name)}
    folders = (ROOT, ROOT / "builder", ROOT / "content", ROOT / "content" / "tables", ROOT / "tests", *(ROOT / "builder").iterdir())
    assert len(named) > 40
    assert [name for name in sorted(named) if not any((folder / name).exists() for folder in folders)] == []
