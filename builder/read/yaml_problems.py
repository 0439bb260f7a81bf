"""A place at which a text stops being YAML becomes a finding in the studio's words."""

import yaml
from yaml.reader import Reader

from builder.model.finding import Finding, stop
from builder.model.place import Place

# A piece of the parser's own message, what it means, and what to write.
_UNALIGNED = (
    "This does not fit the lines around it.",
    "Line it up with its neighbours, with spaces; where a value is in quotes, let nothing follow the closing one.",
)
_PROBLEMS = (
    (
        "mapping values are not allowed",
        "A colon stands where none is expected: a second one in the line, or one in a line that is set in too far.",
        "Put a text that holds a colon in quotes, or line the line up with its neighbours.",
    ),
    (
        "cannot start any token",
        "The line or the value begins with a tab or with a sign that has a meaning of its own, such as @ or %.",
        "Begin lines with spaces only, and put a value that begins with such a sign in quotes.",
    ),
    (
        "could not find expected ':'",
        "A line without a colon stands among lines with one.",
        'Write "name: value", or put a text that runs over several lines in quotes.',
    ),
    ("unexpected end of stream", "A quotation mark is opened and not closed.", "Close the quotation."),
    ("unknown escape", "A backslash in double quotes begins a special sign.", "Use single quotes, or write the backslash twice."),
    (
        "expected ',' or",
        "A list or mapping in brackets is not closed, or a comma is missing in it.",
        "Close the bracket, or write the comma.",
    ),
    ("undefined alias", "A value begins with *, which names another value.", "Put the value in quotes if it is meant as text."),
    ("scanning an a", "A value begins with & or *, which have a meaning of their own.", "Put the value in quotes if it is meant as text."),
    ("single document", "A second text begins here, after a line of three hyphens.", "Keep one text in each file."),
    ("another document", "A second text begins here, after a line of three hyphens.", "Keep one text in each file."),
    ("expected '-' indicator", "This line stands in a list and does not begin with a hyphen.", 'Begin it with "- ".'),
    ("expected key", *_UNALIGNED),
    ("expected <block end>", *_UNALIGNED),
)
_OTHERWISE = ("From here on the text cannot be read.", "Compare this line and the one before it with the example studio.")


def explain_problem(error: yaml.YAMLError, text: str, file: str, first_line: int) -> Finding:
    """Make the finding for an error of the parser."""
    if not isinstance(error, yaml.MarkedYAMLError):
        sign = Reader.NON_PRINTABLE.search(text)
        before = text[: sign.start()] if sign else ""
        place = Place(file, before.count("\n") + first_line, len(before) - before.rfind("\n"))
        return stop("yaml-broken", place, "A sign that cannot be printed stands here.", "Delete it, or type the line again.")
    message = f"{error.context or ''} {error.problem or ''}"
    wrong, remedy = next(((wrong, remedy) for piece, wrong, remedy in _PROBLEMS if piece in message), _OTHERWISE)
    mark = error.problem_mark or error.context_mark
    place = Place(file, mark.line + first_line, mark.column + 1) if mark else Place(file)
    return stop("yaml-broken", place, wrong, remedy)
