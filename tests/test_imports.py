"""Imports run one way, and each outside library has one door."""

import ast
import sys
from pathlib import Path

import pytest

BUILDER = Path(__file__).parent.parent / "builder"
STAGES = ("read", "check", "reckon", "compose", "press")
# What a module may import of our own, by its first folder or file. `model` is open to all.
MAY_IMPORT = {
    "model": set(),
    "stock": set(),
    "units": set(),
    "pictures": set(),
    "read": {"pictures", "units"},
    "check": set(),
    "reckon": set(),
    "compose": {"units"},
    "press": {"pictures"},
    "pipeline": {*STAGES, "stock"},
    "terminal": {"compose", "read", "pipeline"},
    "cli": {"compose", "read", "press", "pipeline", "stock", "terminal"},
    "__main__": {"cli"},
    "__init__": set(),
}
DOORS = {
    "yaml": ("read/",),
    "pydantic": ("read/",),
    "pydantic_core": ("read/",),
    "markdown_it": ("read/markdown", "read/lesson"),
    "pint": ("units.py",),
    "PIL": ("pictures.py",),
    "jinja2": ("compose/templates.py",),
    "markupsafe": ("compose/",),
    "babel": ("compose/dates.py",),
    "weasyprint": ("press/",),
    "fontTools": ("press/",),
    "rich": ("terminal/",),
}
MODULES = sorted(BUILDER.rglob("*.py"))


def imports_of(path):
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            names = [f"{node.module}.{alias.name}" for alias in node.names] if node.module == "builder" else [node.module]
            yield from ((node.lineno, name) for name in names)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(BUILDER).as_posix())
def test_imports_run_one_way(path):
    here = path.relative_to(BUILDER)
    room = here.parts[0].removesuffix(".py")
    for line, name in imports_of(path):
        first, *rest = name.split(".")
        if first == "builder" and rest:
            assert rest[0] in (MAY_IMPORT[room] | {room, "model"}), f"{here}:{line} imports {name}"
        elif room == "model":
            assert first in sys.stdlib_module_names, f"{here}:{line}: model imports {name}, which is no part of the standard library"


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(BUILDER).as_posix())
def test_each_library_has_one_door(path):
    here = path.relative_to(BUILDER).as_posix()
    for line, name in imports_of(path):
        doors = DOORS.get(name.split(".")[0])
        assert doors is None or here.startswith(doors), f"{here}:{line} imports {name} outside its door"
