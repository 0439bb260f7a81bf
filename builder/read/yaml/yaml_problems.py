"""A place at which a text stops being YAML becomes a finding in the studio's words.

The parser says where it gave up (`problem_mark`), and for some mistakes where it began what it could not end (`context_mark`).
"""

from typing import Literal

import yaml
from yaml.reader import Reader

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.read.yaml.yaml_nodes import too_deep

FINDS = (FindingKind("yaml-broken", STOP, "A file is not in YAML."),)

_Where = Literal["end", "beginning", "beginning in another line"]
_Spot = tuple[int, int]

_UNALIGNED = (
    "This does not fit the lines around it.",
    "Line it up with its neighbours, with spaces; where a value is in quotes, let nothing follow the closing one.",
)
_SIGN = (
    "The line or the value begins with a sign that has a meaning of its own, such as @ or %.",
    "Put a value that begins with such a sign in quotes.",
)
_MEANT_AS_TEXT = "Put the value in quotes if it is meant as text."
# A piece of the parser's own message, whether to show where it gave up or where it began, what it means, and what to write.
_UNCLOSED = (
    "Brackets are opened and not closed, or a comma or a quotation mark is missing in them.",
    "Write the bracket, the comma or the quotation mark that is missing.",
)
_PROBLEMS: tuple[tuple[str, _Where, str, str], ...] = (
    (
        "mapping values are not allowed",
        "end",
        "A colon stands where none is expected: a second one in the line, or one in a line that is set in too far.",
        "Put a text that holds a colon in quotes, or line the line up with its neighbours.",
    ),
    (
        "could not find expected ':'",
        "beginning",
        "This line has no colon after a name, and no hyphen as in a list.",
        'Write "name: value" or "- value", or put a text that runs over several lines in quotes.',
    ),
    ("expected ',' or", "beginning in another line", *_UNCLOSED),
    ("unexpected end of stream", "beginning", "A quotation mark is opened here and never closed.", "Close the quotation."),
    ("expected '-' indicator", "end", "This line stands in a list and does not begin with a hyphen.", 'Begin it with "- ".'),
    ("node content", "end", "A name is missing before this colon, or a value between two commas.", "Write it, or take the sign out."),
    ("unknown escape", "end", "A backslash in double quotes begins a special sign.", "Use single quotes, or write the backslash twice."),
    ("undefined alias", "end", "A value begins with *, which names another value.", _MEANT_AS_TEXT),
    ("scanning an a", "end", "A value begins with & or *, which have a meaning of their own.", _MEANT_AS_TEXT),
    (" tag", "end", "A value begins with !, which names a type.", _MEANT_AS_TEXT),
    ("cannot start any token", "end", *_SIGN),
    ("directive", "end", *_SIGN),
    ("single document", "end", "A second text begins here, after a line of three hyphens.", "Keep one text in each file."),
    ("another document", "end", "A second text begins here, after a line of three hyphens.", "Keep one text in each file."),
    ("expected key", "end", *_UNALIGNED),
    ("expected <block end>", "end", *_UNALIGNED),
)
_TAB = ("A tab stands here, and lines are set in with spaces only.", "Put spaces in its place.")
_QUOTED_TOO_FAR = (
    "A quotation mark is opened here and not closed in its line, so that the next one in the file closes it, further on than is meant.",
    "Close the quotation.",
)
_UNPRINTABLE = ("A sign that cannot be printed stands here.", "Delete it, or type the line again.")
_OTHERWISE = ("From here on the text cannot be read.", "Compare this line and the one before it with the example studio.")


def explain_problem(error: yaml.YAMLError, text: str, file: str, first_line: int, loader: type) -> Finding:
    """Make the finding for an error of the parser."""
    if isinstance(error, yaml.MarkedYAMLError):
        (line, column), wrong, remedy = _explain(error, text, loader)
    else:
        (line, column), wrong, remedy = _unprintable(text), *_UNPRINTABLE
    place = Place(file, line + first_line, column + 1)
    return too_deep(place) if "nesting depth" in str(error) else stop("yaml-broken", place, wrong, remedy)


def _explain(error: yaml.MarkedYAMLError, text: str, loader: type) -> tuple[_Spot, str, str]:
    end = error.problem_mark or error.context_mark
    assert end is not None
    lines = text.split("\n")
    if end.line >= len(lines):
        return (len(lines) - 1, len(lines[-1])), *_UNCLOSED
    tab = _tab(text, end)
    if tab:
        return (tab, *_TAB)
    opened = _quotation_over_lines(text, end, loader)
    if opened:
        return (opened, *_QUOTED_TOO_FAR)
    message = f"{error.context or ''} {error.problem or ''}"
    for piece, where, wrong, remedy in _PROBLEMS:
        if piece in message:
            begin = error.context_mark or end
            mark = begin if where == "beginning" or (where != "end" and begin.line != end.line) else end
            return (mark.line, mark.column), wrong, remedy
    return ((end.line, end.column), *_OTHERWISE)


def _unprintable(text: str) -> _Spot:
    sign = Reader.NON_PRINTABLE.search(text)
    before = text[: sign.start()] if sign else ""
    return before.count("\n"), len(before) - before.rfind("\n") - 1


def _tab(text: str, end: yaml.Mark) -> _Spot | None:
    """Return the spot of a tab among the spaces that begin a line, or where the parser gave up."""
    line = text.split("\n")[end.line]
    if line[end.column : end.column + 1] == "\t":
        return end.line, end.column
    tab = line.find("\t", 0, len(line) - len(line.lstrip(" \t")))
    return (end.line, tab) if tab >= 0 else None


def _quotation_over_lines(text: str, end: yaml.Mark, loader: type) -> _Spot | None:
    """Return the beginning of a quotation that runs over several lines into the one where the parser gave up."""
    last = None
    try:
        for token in yaml.scan(text, Loader=loader):
            if token.start_mark.index > end.index:
                break
            if isinstance(token, yaml.ScalarToken) and token.style in ("'", '"') and token.start_mark.line < token.end_mark.line:
                last = token
    except yaml.YAMLError:
        pass
    return (last.start_mark.line, last.start_mark.column) if last and last.end_mark.line == end.line else None
