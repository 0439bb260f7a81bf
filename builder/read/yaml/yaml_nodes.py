"""The nodes of a YAML text become nested lists and mappings of text, and a mark for each path.

A node that others name by a sign is met, and built, again and again; the limits on depth and number hold whatever the text does. In a
key a space is a space, also one that does not break the line: nobody sees the difference.
"""

import yaml

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.read.text.placed_data import Data, Mark, Path
from builder.words.fold import fold

FINDS = (
    FindingKind("key-not-text", STOP, "What stands before a colon is no name."),
    FindingKind("key-repeated", STOP, "A name stands twice in one place, so that it is not clear which one counts."),
    FindingKind("merge-used", STOP, "A YAML merge stands here, and each line has to be written where it is used."),
    FindingKind("yaml-too-deep", STOP, "Lists and mappings are nested too deeply."),
)

_MOST_NODES, _DEEPEST = 20_000, 40
_MERGE_TAG = "tag:yaml.org,2002:merge"


class Construction:
    """The walk over the nodes of one file. When it is done, `overflow` says whether there was too much of it."""

    def __init__(self, file: str, lines: list[str], first_line: int, findings: list[Finding]) -> None:
        """Begin a walk over a text whose first line is a line of a file."""
        self.file, self.lines, self.first_line, self.findings = file, lines, first_line, findings
        self.marks: dict[Path, Mark] = {}
        self.nodes = 0
        self.overflow: Finding | None = None

    def build(self, node: yaml.Node, path: Path, key: Place | None) -> Data:
        """Return the data of a node and mark its place."""
        place = self._place(node)
        self.marks.setdefault(path, Mark(key or place, place))
        self.nodes += 1
        if self.overflow or len(path) > _DEEPEST or self.nodes > _MOST_NODES:
            self.overflow = self.overflow or (too_deep(place) if len(path) > _DEEPEST else _too_many(place))
            return ""
        if isinstance(node, yaml.SequenceNode):
            return [self.build(item, (*path, index), None) for index, item in enumerate(node.value)]
        return self._mapping(node, path) if isinstance(node, yaml.MappingNode) else str(node.value)

    def _mapping(self, node: yaml.MappingNode, path: Path) -> dict[str, Data]:
        result: dict[str, Data] = {}
        met: dict[str, str] = {}
        for key_node, value_node in node.value:
            place = self._place(key_node)
            key = self._key(key_node, place)
            if key is None:
                continue
            already = met.setdefault(fold(key), key)
            if already in result:
                first = self.marks[(*path, already)].key.line
                wrong = f'"{key}" is already given on line {first}, so it is not clear which of the two is meant.'
                self.findings.append(stop("key-repeated", place, wrong, "Keep one of the two lines."))
                continue
            result[key] = self.build(value_node, (*path, key), place)
        return result

    def _key(self, node: yaml.Node, place: Place) -> str | None:
        if node.tag == _MERGE_TAG:
            wrong = "Merging one set of lines into another is not possible here."
            self.findings.append(stop("merge-used", place, wrong, "Write the lines out where they are wanted."))
            return None
        key = " ".join(node.value.split()) if isinstance(node, yaml.ScalarNode) else ""
        if not key:
            wrong = "What stands before the colon is not a name."
            self.findings.append(stop("key-not-text", place, wrong, 'Write a name before the colon, for example "name: Hand lotion".'))
            return None
        return key

    def _place(self, node: yaml.Node) -> Place:
        start, end = node.start_mark, node.end_mark
        line = self.lines[start.line] if start.line < len(self.lines) else ""
        end_column = end.column if end.line == start.line else len(line.rstrip())
        return Place(self.file, start.line + self.first_line, start.column + 1, max(1, end_column - start.column))


def too_deep(place: Place) -> Finding:
    """Return in words that a text is nested too deeply."""
    return stop("yaml-too-deep", place, "Lists and mappings are nested too deeply to be read.", "Write it as in the example studio.")


def _too_many(place: Place) -> Finding:
    return stop("file-too-large", place, "This file holds more values than can be meant.", "Divide it into several files.")
