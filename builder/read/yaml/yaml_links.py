"""What YAML has beyond text: values that name one another by signs, and types. Both are refused where they are written."""

import yaml

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place

FINDS = (
    FindingKind("alias-used", STOP, "A YAML alias stands for a value, and each value has to be written where it is used."),
    FindingKind("anchor-used", STOP, "A text begins like a YAML anchor, and is not read as text."),
    FindingKind("tag-used", STOP, "A YAML tag stands here, and every value is read as text."),
)

_SIGNS = "&*!"


def find_links_and_types(text: str, file: str, first_line: int, loader: type) -> list[Finding]:
    """Find every value that names another, every mark that none names, and every type. The text is known to be YAML."""
    if not any(sign in text for sign in _SIGNS):
        return []
    events = list(yaml.parse(text, Loader=loader))
    named = {event.anchor for event in events if isinstance(event, yaml.AliasEvent)}
    found = []
    for event in events:
        start, end = event.start_mark, event.end_mark
        assert start is not None and end is not None
        width = end.column - start.column if end.line == start.line else 1
        place = Place(file, start.line + first_line, start.column + 1, max(1, width))
        anchor = getattr(event, "anchor", None)
        if isinstance(event, yaml.AliasEvent):
            wrong = "A value that stands elsewhere is named here by a sign, and each value must be written where it is used."
            found.append(stop("alias-used", place, wrong, 'Write the value out; if "*" is meant as text, put the value in quotes.'))
        elif anchor is not None and anchor not in named:
            wrong = f'"&{anchor}" is read as a mark by which other values may name this one, and not as a part of the text.'
            found.append(stop("anchor-used", place, wrong, 'Take it out; if "&" is meant as text, put the value in quotes.'))
        if getattr(event, "tag", None) is not None:
            remedy = 'Take out the word that begins with "!"; quote the value if it is meant as text.'
            found.append(stop("tag-used", place, "A type is named here, and every value is read as text.", remedy))
    return found
