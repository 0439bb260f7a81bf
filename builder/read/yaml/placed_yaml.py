"""YAML becomes nested lists and mappings of text, with the place of every key and value.

Every scalar stays the text that was written; what it means is for the field to judge. What YAML has beyond lists, mappings and
text (links between values, types, merged mappings) is refused, and so is a key that is given twice.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import yaml

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.read.text.text_files import TextFolder
from builder.read.yaml.yaml_links import find_links_and_types
from builder.read.yaml.yaml_nodes import Construction, Data, Mark, Path, Step, too_deep
from builder.read.yaml.yaml_problems import explain_problem

FINDS = (FindingKind("file-empty", STOP, "A file holds nothing."),)

_LOADER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
# Signs that end a line for YAML and for nobody else: no editor counts the lines that they would make.
_NO_ENDS = str.maketrans(dict.fromkeys("\u0085\u2028\u2029", " "))


@dataclass(frozen=True)
class PlacedYaml:
    """The data of one file, and a mark for each path in it. `in_part` says that some lines of the file could not be taken in."""

    file: str
    data: Data
    marks: Mapping[Path, Mark]
    in_part: bool = False

    def place(self, *path: Step) -> Place:
        """Return the place of the value at a path, or of the nearest value around it."""
        return self._mark(path).value

    def key_place(self, *path: Step) -> Place:
        """Return the place of the key at a path, or of the nearest one around it."""
        return self._mark(path).key

    def places(self, *path: Step) -> dict[str, Place]:
        """Return for each key of a mapping the place of the text under it, or of the key itself where there is more than a text."""
        data = self.at(*path)
        keys = data if isinstance(data, dict) else {}
        return {key: self.place(*path, key) if isinstance(value, str) else self.key_place(*path, key) for key, value in keys.items()}

    def at(self, *path: Step) -> Data:
        """Return the value at a path that is known to be there."""
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
    text = text.translate(_NO_ENDS)
    try:
        root = yaml.compose(text, Loader=_LOADER)
    except yaml.YAMLError as error:
        findings.append(explain_problem(error, text, file, first_line, _LOADER))
        return None
    except RecursionError:
        findings.append(too_deep(Place(file)))
        return None
    if root is None:
        findings.append(stop("file-empty", Place(file), "Nothing is written in this file.", "Fill it in, or delete it."))
        return None
    beyond = find_links_and_types(text, file, first_line, _LOADER)
    refused: list[Finding] = []
    construction = Construction(file, text.split("\n"), first_line, refused)
    data = construction.build(root, (), None)
    findings += (*beyond, *refused)
    if construction.overflow:
        # Values that name one another have no end, and have been found already.
        findings += [] if beyond else [construction.overflow]
        return None
    return PlacedYaml(file, data, construction.marks, in_part=bool(beyond or refused))
