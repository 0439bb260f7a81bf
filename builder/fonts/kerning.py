"""How much closer two letters stand than their widths say, as a font has it (the pair adjustments of its GPOS table, OpenType 1.9, read).

Decided: names are set with the kerning of their face, all other text without. Why: in a name of 30 points a gap is seen; at 8 points it is
not, and a paragraph is laid out faster without.
"""

from collections.abc import Iterator, Mapping
from itertools import chain
from typing import Any

# The letters of Latin names and what stands between them: Basic Latin, Latin-1, dashes and quotation marks.
LETTERS = (*range(0x20, 0x100), *range(0x2010, 0x2020))
PAIRS, EXTENDED = 2, 9


def kerning_of(font: Any) -> dict[tuple[int, int], float]:
    """Return what stands between two letters more than their widths, by their code points, in parts of the type size; usually below 0."""
    if "GPOS" not in font:
        return {}
    table, em = font["GPOS"].table, font["head"].unitsPerEm
    names = font.getBestCmap()
    letters = {code: names[code] for code in LETTERS if code in names}
    found: dict[tuple[int, int], float] = {}
    for subtables in _lookups(table):
        for first, one in letters.items():
            covering = [subtable for subtable in subtables if one in subtable.Coverage.glyphs]
            if not covering:
                continue
            of_one = [_adjustments(subtable, one) for subtable in covering]
            for second, other in letters.items():
                value = next((by[other] for by in of_one if other in by), 0)
                if value:
                    found[first, second] = found.get((first, second), 0.0) + value / em
    return found


def _lookups(table: Any) -> Iterator[list[Any]]:
    """Yield the subtables of each lookup of pairs that the kerning of Latin text asks for."""
    script = next((one.Script for one in table.ScriptList.ScriptRecord if one.ScriptTag == "latn"), None)
    if script is None or script.DefaultLangSys is None:
        return
    features = (table.FeatureList.FeatureRecord[number] for number in script.DefaultLangSys.FeatureIndex)
    numbers = sorted(set(chain.from_iterable(one.Feature.LookupListIndex for one in features if one.FeatureTag == "kern")))
    for number in numbers:
        lookup = table.LookupList.Lookup[number]
        subtables = [one.ExtSubTable if lookup.LookupType == EXTENDED else one for one in lookup.SubTable]
        if subtables and subtables[0].LookupType == PAIRS:
            yield subtables


class _Classes(Mapping[str, int]):
    """What a subtable by classes says of one first letter: of every second one, also nothing."""

    def __init__(self, values: list[int], classes: Mapping[str, int]) -> None:
        self._values, self._classes = values, classes

    def __getitem__(self, glyph: str) -> int:
        return self._values[self._classes.get(glyph, 0)]

    def __contains__(self, glyph: object) -> bool:
        return True

    def __iter__(self) -> Iterator[str]:
        return iter(self._classes)

    def __len__(self) -> int:
        return len(self._classes)


def _adjustments(subtable: Any, first: str) -> Mapping[str, int]:
    """Return by the second letter what a subtable adds after the first one."""
    if subtable.Format == 1:
        records = subtable.PairSet[subtable.Coverage.glyphs.index(first)].PairValueRecord
        return {record.SecondGlyph: _advance(record.Value1) for record in records}
    row = subtable.Class1Record[subtable.ClassDef1.classDefs.get(first, 0)].Class2Record
    return _Classes([_advance(one.Value1) for one in row], subtable.ClassDef2.classDefs)


def _advance(value: Any) -> int:
    return int(getattr(value, "XAdvance", 0) or 0) if value is not None else 0
