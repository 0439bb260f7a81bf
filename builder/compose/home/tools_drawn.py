"""The small drawing that stands before a tool in a list: found by what the tool is called, in the language that is spoken."""

import re
from collections.abc import Collection, Mapping
from functools import lru_cache
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
    called, by_name = _names(tuple((say(drawing.names), drawing) for drawing in drawings))
    found = called.search(fold(words))
    return by_name[found["name"]] if found else None


@lru_cache(4)
def _names(drawings: tuple[tuple[str, ToolDrawing], ...]) -> tuple[re.Pattern[str], Mapping[str, ToolDrawing]]:
    """Return what finds a name, one or several of it, the longer before the shorter; and the drawing of each."""
    by_name = {fold(name): drawing for names, drawing in drawings for name in names.split(", ")}
    names = "|".join(map(re.escape, sorted(by_name, key=len, reverse=True)))
    return re.compile(rf"\b(?P<name>{names})(?:e?s|x)?\b"), by_name


def _html(drawing: ToolDrawing) -> str:
    """Return the drawing as HTML. Beside the words of its tool it says nothing that they do not, so that it is not read out."""
    opened, _, rest = drawing.svg.partition(">")
    return f'{opened} aria-hidden="true"><title>{escape(say(drawing.names).split(", ")[0])}</title>{rest}'
