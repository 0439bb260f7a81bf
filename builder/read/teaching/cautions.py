"""A file of `cautions/` becomes a caution text. Its citations are looked up, and kept in the file.

Decided: a caution of the studio that bears the name of one of ours has of ours whatever it does not say itself. Why: who wants to name her
own eyewash should not have to copy, and keep up, all the first aid beside it.
"""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import PurePosixPath
from typing import cast

from builder.model.finding import Finding
from builder.model.teaching.caution import CautionText
from builder.read.shapes.library import CautionShape
from builder.read.yaml.fit import Known, fit
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.read.yaml.yaml_nodes import Data


def read_caution(placed: PlacedYaml, known: Known, findings: list[Finding], shipped: Mapping[str, CautionText]) -> CautionText | None:
    """Read one caution; `shipped` are those that it may be in place of, by the names of their files."""
    key = PurePosixPath(placed.file).stem
    ours = shipped.get(key)
    if ours is not None and isinstance(placed.data, dict):
        placed = replace(placed, data={**cast("dict[str, Data]", ours.written), **placed.data})
    shape = fit(CautionShape, placed, findings, known=known)
    if shape is None:
        return None
    return shape.make(CautionText, key=key, place=placed.place("name"), places=placed.places(), written=placed.data, in_place_of=ours)
