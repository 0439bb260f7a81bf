"""How a command is written is said at once: nothing of what works out a class is loaded for it."""

import subprocess
import sys

import pytest

LOOK = """
import sys
from builder.cli import main
try:
    main(sys.argv[1:])
except SystemExit as end:
    status = end.code
outside = {name.partition(".")[0] for name in sys.modules} - sys.stdlib_module_names - {"__main__", "builder"}
ours = sorted(name for name in sys.modules if name.startswith("builder.") and not name.startswith("builder.words"))
print(status, ours, sorted(outside & {"pydantic", "pint", "yaml", "rich", "weasyprint", "jinja2", "fontTools", "markdown_it", "PIL"}))
"""


@pytest.mark.parametrize(
    ("arguments", "status"), [(["--help"], 0), (["publish", "--help"], 0), ([], 2), (["weigh"], 2), (["check", ".", "--today", "x"], 2)]
)
def test_help_and_a_wrong_command_load_nothing(arguments, status):
    done = subprocess.run([sys.executable, "-c", LOOK, *arguments], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == f"{status} ['builder.cli', 'builder.refusals'] []"


def test_a_command_is_still_run():
    done = subprocess.run([sys.executable, "-m", "builder", "card", "olive oil"], capture_output=True, text=True, check=True)
    assert "Olive oil" in done.stdout
