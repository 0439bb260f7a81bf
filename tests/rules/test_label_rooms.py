"""How large a label a measured container has room for, by plain geometry: worked by hand in millimetres.

1 mm stays free around each label, bar faces and pouches 2 mm, a band 4 mm (decided in builder/rules/label/label_places.py). Each label
comes as large as there is room, and as 0.7 and 0.85 of that, cut to half millimetres.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import pi
from typing import Any

import pytest

from builder.model.label.label_sheet import LabelSheet, Paper
from builder.rules.label.label_places import bands_of, fronts_for, labels_for, lid_of
from builder.rules.label.label_surface import sits, surface_of
from builder.rules.label.panel import diameter
from tests.compose.test_label_rules import container
from tests.making import sure

Size = tuple[float, float, int]


def size(sheet: LabelSheet) -> tuple[float, float]:
    return float(sheet.width.millimetres), float(sheet.height.millimetres)


@pytest.mark.parametrize(
    ("shape", "outside", "sizes"),
    [
        # Half of 190 mm less 2 mm is 93 mm, and 70 mm less 2 mm is 68 mm; around there are 188 mm.
        (
            "cylinder",
            {"height": "70", "around": "190"},
            [(65, 47.5, 2), (79, 57.5, 2), (93, 68, 2), (188, 47.5, 1), (188, 57.5, 1), (188, 68, 1)],
        ),
        # 14 mm are the least that hold a word.
        ("tube", {"height": "16", "around": "100"}, [(48, 14, 2), (98, 14, 1)]),
        ("tube", {"height": "15.9", "around": "100"}, []),
        ("cylinder", {"height": "70"}, []),
        ("cylinder", {"lid": "61"}, []),
        ("round lid", {"lid": "61"}, [(59, 59, 2)]),
        ("round lid", {"lid": "130"}, [(110, 110, 2)]),
        ("round lid", {"lid": "15.9"}, []),
        ("round lid", {"lid": "61", "height": "16", "around": "100"}, [(48, 14, 2), (98, 14, 1), (59, 59, 2)]),
        # A band is as high as the bar is wide, less 4 mm at each edge, and no higher than 50 mm.
        ("cavity", {"width": "40", "around": "120"}, [(118, 22, 1), (118, 27, 1), (118, 32, 1)]),
        ("cavity", {"width": "65", "around": "120"}, [(118, 35, 1), (118, 42.5, 1), (118, 50, 1)]),
        ("cavity", {"width": "65", "height": "96"}, [(42.5, 64, 2), (51.5, 78, 2), (61, 92, 2)]),
        ("bag", {"width": "75", "height": "100", "around": "150"}, [(49.5, 67, 2), (60, 81.5, 2), (71, 96, 2)]),
        # No label is read as one face that is wider than 130 mm or higher than 110 mm.
        ("rectangle", {"width": "200", "height": "150"}, [(91, 77, 2), (110.5, 93.5, 2), (130, 110, 2)]),
    ],
)
def test_a_label_is_as_large_as_its_room(shape: str, outside: Mapping[str, Any], sizes: Sequence[Size]) -> None:
    assert [(*size(sheet), labels) for sheet, labels in labels_for(container(shape, **outside), Paper.A4)] == sizes


# A4 is 210 mm by 297 mm (ISO 216): with 6.5 mm of edge 197 mm hold two labels of 93 mm and 6 mm between them, and 284 mm three of 68 mm.
# What is over is halved: (210 - 2 x 93 - 6) / 2 and (297 - 3 x 68 - 2 x 6) / 2.
def test_a_page_holds_as_many_labels_as_fit_in_its_middle() -> None:
    whole = [sheet for sheet, _ in labels_for(container("cylinder", height="70", around="190"), Paper.A4) if size(sheet) == (93, 68)]
    (sheet,) = whole
    assert (sheet.columns, sheet.rows, float(sheet.left.millimetres), float(sheet.top.millimetres)) == (2, 3, 9, 40.5)
    assert (float(sheet.across.millimetres), float(sheet.down.millimetres), sheet.is_cut, sheet.is_round) == (6, 6, True, False)
    # A knife cuts no corner round.
    assert sheet.corner.millimetres == 0


# On 197 mm a label of 197 mm lies, and none that is longer; (197 + 6) / (95.5 + 6) is two, and no more.
@pytest.mark.parametrize(("around", "columns"), [("199", 1), ("199.5", 0), ("97.5", 2), ("98", 1)])
def test_a_label_around_lies_on_the_paper_or_is_left_out(around: str, columns: int) -> None:
    bands = list(bands_of(container("cylinder", height="70", around=around), Paper.A4))
    assert [sheet.columns for sheet in bands] == [columns] * 3 * bool(columns)


def test_fronts_come_round_and_large_first_and_bands_from_the_lowest() -> None:
    tin = container("round lid", lid="61", height="40", around="200")
    assert [(sheet.is_round, *size(sheet)) for sheet in fronts_for(tin, Paper.A4)] == [
        (True, 59, 59),
        (False, 98, 38),
        (False, 83, 32),
        (False, 68.5, 26.5),
    ]
    assert [size(sheet)[1] for sheet in bands_of(container("cylinder", height="40", around="150"), Paper.A4)] == [26.5, 32, 38]
    assert size(sure(lid_of(tin, Paper.A4))) == (59, 59) and lid_of(container("cylinder", height="40", around="200"), Paper.A4) is None


def label_of_100_by_70() -> LabelSheet:
    return next(one for one, _ in labels_for(container("bag", width="104", height="74"), Paper.A4) if size(one) == (100, 70))


# A label of 100 mm by 70 mm sits where it just fits, and not where half a tenth is missing; upright but on a bar, which lies on any side.
@pytest.mark.parametrize(
    ("shape", "outside", "labels", "sat"),
    [
        ("cylinder", {"height": "70", "around": "100"}, 1, True),
        ("cylinder", {"height": "70", "around": "99.95"}, 1, False),
        ("cylinder", {"height": "69.95", "around": "100"}, 1, False),
        ("bag", {"width": "100", "height": "70"}, 2, True),
        ("bag", {"width": "100", "height": "70"}, 3, False),
        ("bag", {"width": "99.95", "height": "70"}, 1, False),
        ("bag", {"width": "100", "height": "69.95"}, 1, False),
        ("bag", {"width": "70", "height": "100"}, 1, False),
        ("rectangle", {"width": "70", "height": "100"}, 1, True),
        ("rectangle", {"width": "70", "height": "99.95"}, 1, False),
        ("cavity", {"width": "70", "around": "100"}, 1, True),
        ("cavity", {"width": "69.95", "around": "100", "height": "10"}, 1, False),
        # The diagonal: 122.07 mm (the square root of 14,900).
        ("round lid", {"lid": "122.07", "height": "20", "around": "50"}, 2, True),
        ("round lid", {"lid": "122.07", "height": "20", "around": "50"}, 3, False),
        ("round lid", {"lid": "122.06", "height": "20", "around": "50"}, 1, False),
    ],
)
def test_a_label_sits_where_it_just_fits(shape: str, outside: Mapping[str, Any], labels: int, *, sat: bool) -> None:
    assert sits(container(shape, **outside), label_of_100_by_70(), labels) is sat


# By hand: 2 x 75 x 100; 314.159 x 50 and both ends, which are 100 mm across, 2 x 7,853.98; with a lid of 120 mm 2 x 11,309.73 instead.
@pytest.mark.parametrize(
    ("shape", "outside", "surface"),
    [
        ("bag", {"width": "75", "height": "100"}, 15_000),
        ("bag", {"width": "75"}, None),
        ("bag", {"height": "100"}, None),
        ("cylinder", {"height": "50", "around": "314.15927"}, 15_707.96 + 15_707.96),
        ("round lid", {"height": "50", "around": "314.15927", "lid": "120"}, 15_707.96 + 22_619.47),
        ("round lid", {"height": "50", "lid": "120"}, None),
        ("round lid", {"around": "314.15927", "lid": "120"}, None),
        ("cavity", {"width": "75", "height": "100", "around": "200"}, None),
    ],
)
def test_the_surface_of_a_container_is_its_side_and_both_ends(shape: str, outside: Mapping[str, Any], surface: float | None) -> None:
    found = surface_of(container(shape, **outside))
    assert found == surface if surface is None else float(sure(found)) == pytest.approx(surface, abs=0.02)


# A cylinder 10 mm wide and 20 mm high holds pi / 4 x 10 x 10 x 20 cubic millimetres, and one 20 mm wide and 10 mm high twice as much.
@pytest.mark.parametrize(("wide", "high"), [(10, 20), (20, 10), (30, 30)])
def test_a_cylinder_is_as_wide_as_its_volume_and_its_slenderness_say(wide: int, high: int) -> None:
    volume = Fraction(pi / 4 * wide**2 * high)
    assert float(diameter(volume, Fraction(high, wide))) == pytest.approx(wide)
