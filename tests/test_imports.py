"""Imports run one way, and each outside library has one door."""

import ast
import sys
import tomllib
from collections.abc import Iterator
from functools import cache
from graphlib import TopologicalSorter
from importlib import metadata
from pathlib import Path

import pytest

BUILDER = Path(__file__).parent.parent / "builder"
# More modules than this in one folder, and it wants another topic.
MOST_IN_A_FOLDER = 16
STAGES = ("read", "check", "reckon", "compose", "press")
# What a module may import of our own, by its first folder or file, beside what lies beneath it: `words`, `model`, `rules`.
MAY_IMPORT = {
    "words": set(),
    "model": set(),
    "rules": set(),
    "library": set(),
    "sums": set(),
    "cache": {"sums"},
    "units": {"cache"},
    "pictures": set(),
    "joined": set(),
    "fonts": {"cache"},
    "read": {"cache", "pictures", "sums", "units"},
    "check": set(),
    "reckon": set(),
    "compose": {"sums", "units"},
    "press": {"cache", "fonts", "joined", "pictures"},
    "finding_kinds": {"read", "check"},
    "reference": {"read", "compose", "finding_kinds", "library", "list_names"},
    "guide": {"pipeline", "compose", "press", "library", "pictures", "reference"},
    "pipeline": {*STAGES, "cache", "finding_kinds", "fonts", "library", "reference"},
    "preview": {"pipeline", "compose", "fonts", "press", "read", "library", "pictures"},
    "terminal": {"compose", "read", "pipeline", "reference", "refusals"},
    "refusals": set(),
    "start": {"read", "library"},
    "tasks": {
        *("arguments", "cache", "start", "library", "read", "compose", "press", "pipeline"),
        *("list_names", "reference", "refusals", "preview", "guide", "terminal", "finding_kinds"),
    },
    "arguments": {"list_names", "refusals"},
    "list_names": set(),
    "commands": {"tasks"},
    "cli": {"commands", "arguments", "tasks", "refusals"},
    "__main__": {"cli"},
    "__init__": set(),
}
DOORS = {
    "yaml": ("read/",),
    "argcomplete": ("tasks/completion.py",),
    "pydantic": ("read/", "reference/value_words.py", "reference/keys.py", "reference/schemas.py"),
    "pydantic_core": ("read/",),
    "markdown_it": ("read/text/markdown.py", "read/teaching/"),
    "pint": ("units.py",),
    "PIL": ("pictures/",),
    "pypdfium2": ("pictures/sheet_page.py",),
    "jinja2": ("compose/templates.py", "compose/tried/sandbox.py"),
    "markupsafe": ("compose/",),
    "babel": ("compose/dates/dates.py", "read/label/languages.py", "read/label/po_files.py", "read/roster/roster_dates.py"),
    "weasyprint": ("press/",),
    "cssselect2": ("compose/tried/",),
    "tinycss2": ("compose/tried/",),
    "tinyhtml5": ("compose/tried/",),
    "pikepdf": ("joined.py",),
    "watchfiles": ("preview/watching.py",),
    "fontTools": ("fonts/",),
    "rich": ("terminal/",),
    "pyphen": ("words/hyphens.py",),
    "openpyxl": ("read/notebook/workbook.py",),
    "icalendar": ("compose/machines/calendar.py",),
}
MODULES = sorted(BUILDER.rglob("*.py"))


@cache
def imports_of(path: Path) -> tuple[tuple[int, str], ...]:
    return tuple(_imports(path))


def _imports(path: Path) -> Iterator[tuple[int, str]]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            names = [f"{node.module}.{alias.name}" for alias in node.names] if node.module == "builder" else [node.module]
            yield from ((node.lineno, name) for name in names)


def open_to(room: str) -> set[str]:
    beneath = {"words": set(), "model": {"words"}, "rules": {"words", "model"}}
    return {room} | beneath.get(room, {"words", "model", "rules"})


def test_imports_run_one_way() -> None:
    wrong = []
    for path in MODULES:
        here = path.relative_to(BUILDER)
        room = here.parts[0].removesuffix(".py")
        for line, name in imports_of(path):
            first, *rest = name.split(".")
            if first == "builder" and rest and rest[0] not in MAY_IMPORT[room] | open_to(room):
                wrong.append(f"{here}:{line} imports {name}")
            elif first != "builder" and room == "model" and first not in sys.stdlib_module_names:
                wrong.append(f"{here}:{line}: model imports {name}, which is no part of the standard library")
    assert wrong == []


def test_no_module_comes_back_to_itself() -> None:
    """Also not by what it imports for its types alone: two modules that name each other are one, or a third lies between them."""
    names = {path: ".".join(path.relative_to(BUILDER.parent).with_suffix("").parts).removesuffix(".__init__") for path in MODULES}
    known = set(names.values())
    TopologicalSorter({name: {one for _, one in imports_of(path)} & known - {name} for path, name in names.items()}).prepare()


def test_each_library_has_one_door() -> None:
    wrong = []
    for path in MODULES:
        here = path.relative_to(BUILDER).as_posix()
        for line, name in imports_of(path):
            doors = DOORS.get(name.split(".")[0])
            if doors is not None and not here.startswith(doors):
                wrong.append(f"{here}:{line} imports {name} outside its door")
    assert wrong == []


@pytest.mark.parametrize("name", ["babel", "pyphen", "tzdata"])
def test_data_that_printed_words_come_from_are_of_one_version(name: str) -> None:
    """How dates and money are written, where words part, hours of the zones: two machines print the same."""
    project = tomllib.loads((BUILDER.parent / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    (wanted,) = (one for one in project["dependencies"] if one.startswith(name))
    assert wanted == f"{name}=={metadata.version(name)}"


FOLDERS = sorted({path.parent for path in MODULES})


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.relative_to(BUILDER.parent).as_posix())
def test_a_folder_is_small_and_says_what_is_always_true_of_it(folder: Path) -> None:
    assert len([path for path in folder.glob("*.py") if path.name != "__init__.py"]) <= MOST_IN_A_FOLDER
    said = ast.get_docstring(ast.parse((folder / "__init__.py").read_text(encoding="utf-8")))
    assert said and said.split("\n")[0].endswith("."), f"{folder} does not say what is always true of it"


def test_stages_share_their_topics() -> None:
    """A topic is a folder of at least two rooms, or is named here with the reason why it stands in one alone."""
    alone = {
        "read": {"notebook", "shapes", "text", "values", "yaml"},  # what a file is made of, before it is about anything
        "compose": {
            "documents",
            "for_staff",
            "home",
            "label_front",
            "label_layout",
            "machines",
            "ornament",
            "site",
            "tried",
            "views",
        },  # what a document is made of, for people and for programs
        "press": {"engine"},  # what knows the PDF library
    }
    found = {stage: {path.name for path in (BUILDER / stage).iterdir() if path.is_dir()} - {"__pycache__"} for stage in (*STAGES, "model")}
    topics = set().union(*found.values())
    rooms = {stage: found[stage] for stage in STAGES}
    for stage, has in rooms.items():
        for topic in has - alone.get(stage, set()):
            others = [room for room in (*STAGES, "model") if room != stage and (BUILDER / room / topic).is_dir()]
            assert others, f"{stage}/{topic} is a topic of no other room"
    assert len(topics - set().union(*alone.values())) < 12
