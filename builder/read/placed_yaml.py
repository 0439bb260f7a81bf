"""YAML becomes nested lists and mappings of text, with the place of every key and value.

Every scalar stays the text that was written; what it means is for the field to judge. What YAML has beyond lists, mappings and
text (links between values, types, merged mappings) is refused, and so is a key that is given twice.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import yaml

from builder.model.finding import Finding, stop
from builder.model.place import Place
from builder.read.text_files import TextFolder
from builder.read.yaml_nodes import Construction, Data, Mark, Path, Step, too_deep
from builder.read.yaml_problems import explain_problem

_LOADER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@dataclass(frozen=True)
class PlacedYaml:
    """The data of one file, and a mark for each path in it."""

    file: str
    data: Data
    marks: Mapping[Path, Mark]

    def place(self, *path: Step) -> Place:
        """Give the place of the value at a path, or of the nearest value around it."""
        return self._mark(path).value

    def key_place(self, *path: Step) -> Place:
        """Give the place of the key at a path, or of the nearest one around it."""
        return self._mark(path).key

    def at(self, *path: Step) -> Data:
        """Give the value at a path that is known to be there."""
        data = self.data
        for step in path:
            data = data[step]  # type: ignore[index]
        return data

    def _mark(self, path: Path) -> Mark:
        while path not in self.marks:
            path = path[:-1]
        return self.marks[path]


def read_yaml_file(folder: TextFolder, name: str) -> PlacedYaml | None:
    """Read one file of a folder; None where nothing can be made of it."""
    text = folder.text(name)
    return None if text is None else read_yaml(text, folder.shown_as + name, folder.findings)


def read_yaml(text: str, file: str, findings: list[Finding], first_line: int = 1) -> PlacedYaml | None:
    """Read one file, or a piece of it that begins at a line; None where nothing can be made of it."""
    try:
        root = yaml.compose(text, Loader=_LOADER)
    except yaml.YAMLError as error:
        findings.append(explain_problem(error, text, file, first_line))
        return None
    except RecursionError:
        findings.append(too_deep(Place(file)))
        return None
    if root is None:
        findings.append(stop("file-empty", Place(file, first_line, 1), "Nothing is written in this file.", "Fill it in, or delete it."))
        return None
    construction = Construction(file, text.split("\n"), first_line, findings)
    data = construction.build(root, (), None)
    if construction.linked:
        findings.extend(_links(text, file, first_line))
    elif construction.overflow:
        findings.append(construction.overflow)
    return None if construction.overflow else PlacedYaml(file, data, construction.marks)


def _links(text: str, file: str, first_line: int) -> Iterator[Finding]:
    for event in yaml.parse(text, Loader=_LOADER):
        if isinstance(event, yaml.AliasEvent):
            start, end = event.start_mark, event.end_mark
            assert start is not None and end is not None
            place = Place(file, start.line + first_line, start.column + 1, end.column - start.column)
            wrong = "A value that stands elsewhere is named here by a sign, and each value must be written where it is used."
            yield stop("alias-used", place, wrong, 'Write the value out; if "*" is meant as text, put the value in quotes.')
