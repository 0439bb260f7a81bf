"""A file of `cautions/` becomes a caution text. Its citations are looked up, and kept in the file.

Decided: a caution of the studio that bears the name of one of ours has of ours whatever it does not say itself. Why: who wants to name her
own eyewash should not have to copy, and keep up, all the first aid beside it.
"""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import PurePosixPath
from typing import cast

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.teaching.caution import CautionText
from builder.read.known import NamesKnown
from builder.read.shapes.library import CautionShape
from builder.read.text.placed_data import Data, PlacedData
from builder.read.yaml.in_part import made_in_part
from builder.words.listed import listed
from builder.words.nearest import did_you_mean

FINDS = (
    FindingKind(
        "caution-in-place-of-none", STOP, "A caution is in place of none of ours, and lacks what one of the studio's own has to say."
    ),
)


def read_caution(
    placed: PlacedData, known: NamesKnown, findings: list[Finding], shipped: Mapping[str, CautionText]
) -> tuple[CautionText | None, bool]:
    """Read one caution, and tell whether all of it can be; `shipped` are those that it may be in place of, by the names of their files."""
    key = PurePosixPath(placed.file).stem
    ours = shipped.get(key)
    if ours is not None and isinstance(placed.data, dict):
        placed = replace(placed, data={**cast("dict[str, Data]", ours.written), **placed.data})
    elif shipped and isinstance(placed.data, dict) and len(_left_out(placed.data)) > 1:
        findings.append(_unknown(key, placed, shipped))
        return None, False
    return made_in_part(CautionShape, placed, findings, known, key=key, written=placed.data, in_place_of=ours)


def _left_out(data: Mapping[str, Data]) -> list[str]:
    """Return the keys that a caution has to have, and this one has not."""
    fields = CautionShape.model_fields.values()
    return [str(field.alias) for field in fields if field.is_required() and field.alias not in data]


def _unknown(key: str, placed: PlacedData, shipped: Mapping[str, CautionText]) -> Finding:
    missing = listed([f"`{name}:`" for name in _left_out(cast("Mapping[str, Data]", placed.data))])
    wrong = f'No caution of ours is called "{key}", so that this file is in place of none, and for one of your own it lacks {missing}.'
    names = listed([f"{name}.yaml" for name in sorted(shipped)])
    remedy = f"Name the file as one of ours: {names}. Or write what is missing.{did_you_mean(key, shipped)}"
    return stop("caution-in-place-of-none", placed.place(), wrong, remedy)
