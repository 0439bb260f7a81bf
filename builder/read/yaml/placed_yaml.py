"""YAML becomes nested lists and mappings of text, with the place of every key and value.

Every scalar stays the text that was written; what it means is for the field to judge. What YAML has beyond lists, mappings and
text (links between values, types, merged mappings) is refused, and so is a key that is given twice.
"""

import yaml

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_files import TextFolder
from builder.read.yaml.yaml_links import find_links_and_types
from builder.read.yaml.yaml_nodes import Construction, too_deep
from builder.read.yaml.yaml_problems import explain_problem

FINDS = (FindingKind("file-empty", STOP, "A file holds nothing."),)

_LOADER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
# Signs that end a line for YAML and for nobody else: no editor counts the lines that they would make.
_NO_ENDS = str.maketrans(dict.fromkeys("\u0085\u2028\u2029", " "))


def read_yaml_file(folder: TextFolder, name: str) -> PlacedData | None:
    """Read one file of a folder; None where nothing can be made of it."""
    text = folder.text(name)
    return None if text is None else read_yaml(text, folder.shown_as + name, folder.findings)


def read_yaml(text: str, file: str, findings: list[Finding], first_line: int = 1) -> PlacedData | None:
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
    return PlacedData(file, data, construction.marks, in_part=bool(beyond or refused))
