"""How a command is written is said at once: nothing of what works out a class is loaded for it."""

import os
import re
import shlex
import subprocess
import sys
from argparse import ArgumentParser
from collections.abc import Sequence
from pathlib import Path

import pytest

from builder.arguments import SHELLS, parse, parser_of_all
from builder.cli import main
from tests.making import sure

LOOK = """
import sys
from builder.cli import main
try:
    main(sys.argv[1:])
except SystemExit as end:
    status = end.code
outside = {name.partition(".")[0] for name in sys.modules} - sys.stdlib_module_names - {"__main__", "builder"}
ours = sorted(name for name in sys.modules if name.startswith("builder.") and not name.startswith("builder.words"))
slow = {"pydantic", "pint", "yaml", "rich", "argcomplete", "weasyprint", "jinja2", "fontTools", "markdown_it", "PIL"}
print(status, ours, sorted(outside & slow))
"""


# What is written and what may stand there: nothing that works.
WORDS_ALONE = [
    *("builder.arguments", "builder.cli", "builder.list_names", "builder.model", "builder.model.recipe"),
    *("builder.model.recipe.container_form", "builder.refusals"),
]


@pytest.mark.parametrize(
    ("arguments", "status"), [(["--help"], 0), (["publish", "--help"], 0), ([], 2), (["check", ".", "--today", "x"], 2)]
)
def test_help_and_a_wrong_command_load_nothing(arguments: Sequence[str], status: int) -> None:
    done = subprocess.run([sys.executable, "-c", LOOK, *arguments], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == f"{status} {WORDS_ALONE} []"


def test_a_mistyped_command_gets_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["chek"]) == 2
    assert capsys.readouterr().err == 'stillroom: there is no command "chek". Did you mean "check"?\n'


def test_a_mistyped_thing_gets_the_nearest_too(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["add", "recpe"]) == 2
    assert capsys.readouterr().err == 'stillroom: there is no thing to add "recpe". Did you mean "recipe"?\n'


def choices_of(parser: ArgumentParser, name: str) -> dict[str, ArgumentParser]:
    """Return the parsers of what stands at a place of a command, by its names."""
    choices = next(action.choices for action in parser._actions if action.dest == name)
    assert isinstance(choices, dict)
    return choices


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["shop", "loft", "--to", "2027-03-31"], '`stillroom shop` has no option "--to". Did you mean "--today" or "--from"?'),
        (["shop", "--untl=2027-03-31"], '`stillroom shop` has no option "--untl". Did you mean "--until"?'),
        (["add", "recipe", "--prod", "lotion"], '`stillroom add recipe` has no option "--prod". Did you mean "--product" or "--from"?'),
    ],
)
def test_an_option_is_not_guessed_from_its_beginning(arguments: Sequence[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(arguments) == 2
    assert said in capsys.readouterr().err


def test_each_command_has_a_sentence_and_an_example_and_the_help_tells_the_exit_status() -> None:
    parser = parser_of_all()
    assert "exit status:" in parser.format_help()
    commands = choices_of(parser, "command")
    things = choices_of(commands["add"], "thing")
    for name, command in {**commands, **things}.items():
        assert re.fullmatch(r"[A-Z].+\.", sure(command.description)), name
        example = sure(re.search(r"^example:\n  (stillroom .+)$", command.format_help(), re.M))[1]
        assert parse(shlex.split(example.partition(" >>")[0])[1:]).command


def test_the_version_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as end:
        main(["--version"])
    assert end.value.code == 0
    assert capsys.readouterr().out.startswith("stillroom")


def test_a_shell_is_told_which_words_may_come_next(tmp_path: Path) -> None:
    (tmp_path / "recipes").mkdir()
    (tmp_path / "studio.yaml").write_text("name: x\n", encoding="utf-8")
    (tmp_path / "recipes" / "hedge-lotion.yaml").write_text("name: x\n", encoding="utf-8")
    assert completed("stillroom chec", tmp_path) == ["check"]
    assert completed("stillroom list cont", tmp_path) == ["containers"]
    assert completed("stillroom weigh . ", tmp_path) == ["hedge-lotion"]


def completed(line: str, folder: Path) -> list[str]:
    env = {
        "_ARGCOMPLETE": "1",
        "COMP_LINE": line,
        "COMP_POINT": str(len(line)),
        "_ARGCOMPLETE_SUPPRESS_SPACE": "1",
        "PYTHONPATH": str(Path.cwd()),
        "XDG_CACHE_HOME": os.environ["XDG_CACHE_HOME"],
    }
    ask = f"exec {sys.executable} -m builder 8>&1 9>/dev/null 1>/dev/null"
    done = subprocess.run(["bash", "-c", ask], capture_output=True, text=True, cwd=folder, env=env | {"PATH": os.environ["PATH"]})
    return [word.strip() for word in done.stdout.split("\x0b") if word.strip() and not word.startswith("-")]


@pytest.mark.parametrize("shell", SHELLS)
def test_what_a_shell_reads_names_the_command(shell: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["completion", shell]) == 0
    assert "stillroom" in capsys.readouterr().out


@pytest.mark.long
def test_a_command_is_still_run() -> None:
    done = subprocess.run([sys.executable, "-m", "builder", "card", "olive oil"], capture_output=True, text=True, check=True)
    assert "Olive oil" in done.stdout
