"""What of the layouts a studio can say otherwise: templates with their blocks, pieces and tokens; and each as it ships."""

import re
from collections.abc import Iterator

from builder.compose.document_table import DOCUMENTS
from builder.library import LAYOUTS
from builder.reference.page import Page

FOLDER = "layouts/"
_BLOCK = re.compile(r"{% block ([\w-]+) %}")
_TAKES = re.compile(r"{# Takes: (.*?) #}")
_TOKEN = re.compile(r"--([\w-]+): ([^;]+);")
_HOW = "A file of yours of the same name takes its place; `stillroom reference documents` says how to change a piece of it alone."
_NIGHT = "@media (prefers-color-scheme: dark) {"


def layout_rows() -> Iterator[tuple[str, ...]]:
    """Yield each template and style: its name, its blocks, and the documents that it lays out or what it shows."""
    of = {kind.template: kind.name for kind in reversed(DOCUMENTS) if kind.template}
    for path in sorted(path for path in LAYOUTS.rglob("*") if path.suffix in (".html", ".css", ".svg")):
        name = path.relative_to(LAYOUTS).as_posix()
        text = path.read_text(encoding="utf-8")
        takes = _TAKES.match(text)
        yield f"{FOLDER}{name}", ", ".join(_BLOCK.findall(text)), of.get(name) or (takes[1] if takes else "")


def token_rows() -> Iterator[tuple[str, ...]]:
    """Yield each token of the styles: its name, its value by day, and by night where that is another."""
    day = dict(_TOKEN.findall((LAYOUTS / "styles" / "tokens.css").read_text(encoding="utf-8")))
    night = dict(_TOKEN.findall((LAYOUTS / "styles" / "screen.css").read_text(encoding="utf-8").partition(_NIGHT)[2].partition("}")[0]))
    for name, value in day.items():
        yield f"--{name}", value, night.get(name, "")


def layout_page(name: str) -> Page | None:
    """Return a template or style as it ships, as a page; None where there is none of the name."""
    path = LAYOUTS / name.removeprefix(FOLDER)
    if not name.startswith(FOLDER) or ".." in name or not path.is_file():
        return None
    text = path.read_text(encoding="utf-8").rstrip("\n")
    return Page(name, name, f"# As it ships\n\n{_HOW}\n\n```\n{text}\n```")


def layout_names() -> list[str]:
    """Return the names of all templates and styles."""
    return [row[0] for row in layout_rows()]
