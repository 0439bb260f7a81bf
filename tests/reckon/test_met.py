"""What the staff of a class meet in each part beyond its amounts: ahead, in class and after it; the lessons are those of test_bench.py.

Lye that was made ahead stands marked and covered until something says that it met fat (common practice, no source).
"""

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

import pytest

from builder.library import CONTENT
from builder.model.dates.studio_class import BatchFor, ClassDate
from builder.read.studios import read_studio
from builder.reckon.teaching.classes import reckon_class
from tests.findings_studio import write_class
from tests.reckon.test_bench import BAR, FAT, HOT, LYE, RAW, STEPS, TALK, Brings


def met(folder: Path, headings: Sequence[str]) -> list[tuple[str, set[str]]]:
    lesson = "".join(f"\n## {one}\n\n{f'1. {STEPS[word]}' if (word := one.split()[0]) in STEPS else TALK}\n" for one in headings)
    write_class(folder / "studio", "bar", "plain-bar", BatchFor.GROUP, lesson)
    (folder / "studio/recipes/plain-bar.yaml").write_text(BAR, encoding="utf-8")
    studio, findings = read_studio(folder / "studio", CONTENT)
    assert findings == []
    (one,) = studio.classes.values()
    plan = reckon_class(studio, one, ClassDate(datetime(2027, 3, 6, 10), 2))[0]
    found = {part.part.title: set(part.met) for parts in (plan.ahead, plan.after) for part in parts}
    found |= {part.part.title: set(part.met) for part in plan.timeline}
    return [(one, found[one.split(" (")[0]]) for one in headings]


# Nobody has soap before the lye has met the fat; then staff have it in hand till the end.
LYE_AHEAD: Brings = [
    ("Lye (ahead, 30 min)", {LYE}),
    ("Wipe (ahead, 5 min)", set()),
    ("Melt (teacher, 20 min)", set()),
    ("Mix (teacher, 5 min)", {LYE, FAT}),  # into a pot of fat; from then on it is soap
    ("Wipe again (teacher, 5 min)", {RAW, HOT}),
    ("Talk (teacher, 5 min)", set()),
    ("Wipe at last (after, 5 min)", {RAW, HOT}),
    ("Wipe next day (after, 5 min, 1 day later)", {RAW}),
]
# Soap that is made ahead is raw from then on.
SOAP_AHEAD: Brings = [
    ("Lye (ahead, 30 min)", {LYE}),
    ("Mix (ahead, 5 min)", {LYE}),
    ("Wipe (ahead, 5 min)", {RAW}),
]
# What was melted on the day stays hot; what was melted the day before is cold.
MELTED_AHEAD: Brings = [("Melt (ahead, 30 min)", set()), ("Wipe (ahead, 5 min)", {FAT})]
MELTED_BEFORE: Brings = [("Melt (ahead, 30 min, 1 day before)", set()), ("Wipe (ahead, 5 min)", set())]


@pytest.mark.parametrize("brings", [LYE_AHEAD, SOAP_AHEAD, MELTED_AHEAD, MELTED_BEFORE])
def test_staff_meet_what_is_there_already(tmp_path: Path, brings: Brings) -> None:
    # A class has a part: what is only talked about brings nothing.
    headings = [head for head, _ in brings]
    more = [] if any("teacher" in head for head in headings) else ["Talk (teacher, 5 min)"]
    assert met(tmp_path, [*headings, *more])[: len(brings)] == list(brings)
