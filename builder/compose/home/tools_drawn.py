"""The small drawing that stands before a tool in a list: found by what the tool is called, in the language that is spoken."""

import re
from collections.abc import Collection, Iterator
from html import escape

from builder.compose.views.take_home import ToolView
from builder.model.drawing import ToolDrawing
from builder.words.fold import fold
from builder.words.say import say


def view_tool(words: str, drawings: Collection[ToolDrawing]) -> ToolView:
    """Return a tool with its drawing; in its words alone where none fits."""
    drawing = drawing_of(words, drawings)
    return ToolView(words, _html(drawing) if drawing else "")


def drawing_of(words: str, drawings: Collection[ToolDrawing]) -> ToolDrawing | None:
    """Return the drawing whose name comes first in the words of a tool, the longest of those that begin at one place; None of none."""
    found = [(place, -len(name), drawing) for drawing in drawings for name, place in _names_in(fold(words), drawing)]
    return min(found, key=lambda one: one[:2])[2] if found else None


def _names_in(words: str, drawing: ToolDrawing) -> Iterator[tuple[str, int]]:
    """Yield each name of a drawing that stands in the words of a tool, one or several of it, and where."""
    for name in say(drawing.names).split(", "):
        found = re.search(rf"\b{re.escape(fold(name))}(?:e?s|x)?\b", words)
        if found:
            yield name, found.start()


def _html(drawing: ToolDrawing) -> str:
    """Return the drawing as HTML. Beside the words of its tool it says nothing that they do not, so that it is not read out."""
    opened, _, rest = drawing.svg.partition(">")
    return f'{opened} aria-hidden="true"><title>{escape(say(drawing.names).split(", ")[0])}</title>{rest}'
