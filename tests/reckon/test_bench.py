"""What a part of a lesson brings by its words and by what earlier parts have left, part by part.

Lye and the soap made of it burn until the soap has cured (NIOSH 2007-107); what was hot is hot till it has cooled (common practice, no
source). What is only said, waited for or denied by a heading brings nothing.
"""

from collections.abc import Sequence
from pathlib import Path

import pytest

from builder.library import CONTENT
from builder.model.dates.studio_class import BatchFor
from builder.model.hazard import Hazard
from builder.model.recipe.size import TotalSize
from builder.read.studios import read_studio
from builder.reckon import reckon_recipe
from builder.reckon.teaching.met_at_home import met_at_home
from tests.findings_studio import write_class
from tests.making import grams

LYE, RAW, HOT, FAT, SCENT = Hazard.CAUSTIC, Hazard.RAW_SOAP, Hazard.HOT, Hazard.HOT_FAT, Hazard.NEAT_ESSENTIAL_OIL
BAR = """name: Plain bar
product: cold-process soap
amounts: percent of oils
phases:
  - name: oils
    heat to: 70 degC
    ingredients: {olive oil: 70 %, coconut oil: 30 %}
  - name: at trace
    ingredients: {lavender essential oil: 2 %}
lye: {alkali: sodium hydroxide, superfat: 8 %, water: {lye concentration: 33 %}}
fills: {container: bar mould cavity, weight: 100 g}
keeps: 6 months
"""
# A part by its heading, and what it brings; the steps below are those of the headings.
STEPS = {
    "Lye": "Pour {lye} of lye into {lye water} of water.",
    "Tip": "Tip the sodium hydroxide into the water.",
    "Melt": "Weigh {olive oil} of olive oil and {coconut oil} of coconut oil, and melt them.",
    "Mix": "Pour the lye into the oils.",
    "Wipe": "Wipe the table.",
    "Cups": "Weigh {lavender essential oil} of it into a cup.",
    "Scent": "Stir in the lavender oil.",
}
TALK = "Say what a soap is."
Brings = Sequence[tuple[str, set[Hazard]]]


def met(folder: Path, headings: Sequence[str]) -> list[set[str]]:
    lesson = "".join(f"\n## {one}\n\n{f'1. {STEPS[word]}' if (word := one.split()[0]) in STEPS else TALK}\n" for one in headings)
    write_class(folder / "studio", "bar", "plain-bar", BatchFor.GROUP, lesson)
    (folder / "studio/recipes/plain-bar.yaml").write_text(BAR, encoding="utf-8")
    studio, findings = read_studio(folder / "studio", CONTENT)
    assert findings == []
    batch = reckon_recipe(studio, studio.recipes["plain-bar"], TotalSize(grams(1000)))
    return [set(one.met) for one in met_at_home(studio, studio.classes["bar"].lesson.parts, batch)]


LYE_FIRST: Brings = [
    ("Lye (teacher, 20 min)", {LYE}),
    ("Melt (teacher, 20 min)", set()),  # the lye stands there yet, and the fat is called hot beside its amount
    ("Mix (teacher, 5 min)", {LYE, RAW, HOT}),  # of fat that has become soap nobody speaks
    ("Wipe (teacher, 5 min)", {RAW, HOT}),
    ("Talk (teacher, 5 min)", set()),
    ("Rest (waiting, 30 min)", set()),
    ("Wipe again (teacher, 5 min)", {RAW}),
    ("Wipe at last (students, 5 min, no raw soap)", set()),
]
# Who speaks of lye as it dissolves, without an amount, has not yet poured it into fat.
TIPPED: Brings = [
    ("Tip (teacher, 20 min)", {LYE}),
    ("Melt (teacher, 20 min)", set()),
]
OILS_FIRST: Brings = [
    ("Wipe first (teacher, 5 min)", set()),
    ("Melt (teacher, 20 min)", set()),
    ("Wipe (teacher, 5 min)", {FAT}),
    ("Lye (teacher, 20 min)", {LYE}),  # where lye is weighed, the pot stands elsewhere
    ("Mix (teacher, 5 min)", {LYE, RAW, HOT}),
    ("Wipe again (teacher, 5 min, cooled)", {RAW}),
    ("Wipe at last (teacher, 5 min)", {RAW}),
]
# Fat that is weighed once lye has met fat is weighed beside raw soap.
LATE: Brings = [
    ("Lye (teacher, 20 min)", {LYE}),
    ("Mix (teacher, 5 min)", {LYE, RAW}),
    ("Melt (teacher, 20 min)", {RAW}),
]
# What is done in a wait is done while it lasts, and what is done on another day is cold.
WAITS: Brings = [
    ("Melt (teacher, 20 min)", set()),
    ("Rest (waiting, 30 min)", set()),
    ("Wipe (teacher, 5 min, in the wait)", {FAT}),
    ("Wipe again (teacher, 5 min)", set()),
]
DAYS: Brings = [
    ("Melt (teacher, 20 min)", set()),
    ("Wipe (after, 5 min)", {FAT}),
    ("Wipe again (after, 5 min, 1 day later)", set()),
]
# From the day before to the day after it is two days.
NIGHTS: Brings = [("Melt (ahead, 20 min, 1 day before)", set()), ("Wipe (after, 5 min, 1 day later)", set())]
# A scent that stands weighed in a cup is neat until a step stirs it in by its name.
SCENTED: Brings = [
    ("Scent (teacher, 5 min)", set()),
    ("Cups (teacher, 5 min)", set()),
    ("Wipe (teacher, 5 min)", set()),
    ("Scent again (teacher, 5 min)", {SCENT}),
]


@pytest.mark.parametrize("brings", [LYE_FIRST, TIPPED, OILS_FIRST, LATE, WAITS, DAYS, NIGHTS, SCENTED])
def test_what_is_there_already_is_met_until_it_is_gone(tmp_path: Path, brings: Brings) -> None:
    assert list(zip([head for head, _ in brings], met(tmp_path, [head for head, _ in brings]), strict=True)) == list(brings)
