"""The regions that ship, for tests that need one by its name and no studio."""

from functools import cache

from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.label.region import Region
from builder.read.known import NamesKnown
from builder.read.shapes.library import RegionShape, SourceShape
from builder.read.text.text_files import TextFolder
from builder.read.yaml.fit import each_made
from builder.read.yaml.placed_yaml import read_yaml_file
from tests.making import sure


@cache
def regions() -> dict[str, Region]:
    """Read `content/regions.yaml` with the sources that it cites."""
    findings: list[Finding] = []
    content = TextFolder(CONTENT, findings, "content/")
    known = NamesKnown(each_made(SourceShape, sure(read_yaml_file(content, "sources.yaml")), findings))
    read = each_made(RegionShape, sure(read_yaml_file(content, "regions.yaml")), findings, known)
    assert not findings
    return read


def region(name: str) -> Region:
    """Return the region of a name."""
    return regions()[name]
