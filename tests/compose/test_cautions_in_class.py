"""On the sheets of a class each part has the caution of what an earlier part has left: raw soap until a heading says otherwise, and heat.

Which parts these are was told by hand from the lessons of the example: soap burns until it has cured (common practice, no source: goggles
and gloves until the last tool is clean), and what was melted stays hot until it is poured out and cold.
"""

from functools import cache

import pytest
from bs4 import BeautifulSoup

from tests.compose.test_take_home_cautions import FAT, HOT, LYE, RAW
from tests.composing import of_example
from tests.making import sure
from tests.page_text import tree_of

BENCHES: dict[str, dict[str, set[str]]] = {
    "soap-lab-in-pairs": {
        "Take your lye": {LYE, RAW}, "Blend to trace": {RAW}, "Stir in clay and scent": {RAW}, "Pour your mold": {RAW},
        "Clean up in gloves": {RAW}, "Weigh and melt the oils": {HOT}, "Wet the clay": set(),
    },
    "bath-tea-and-lip-balm": {
        "Melt the balm": {FAT}, "Flavor and pour": {FAT}, "Label and tidy": {FAT}, "Blend the tea": set(), "Fill and tie the bags": set(),
    },
    "melt-and-pour-soap": {"Tint and scent": set(), "Unmold, wrap, label": set()},
    "lotion-from-scratch": {"Clean hands, clean tools": set(), "Weigh the two phases": set(), "Your own scent": set()},
}  # fmt: skip
STAFF: dict[str, dict[str, set[str]]] = {
    "soap-lab-in-pairs": {
        "Mix the lye for the class": {LYE}, "Set the benches": set(), "Put away what was caustic": {LYE, RAW}, "Cut the bars": {RAW},
    },
    "first-cold-process-bar": {
        "Get ready": set(), "Set up": set(), "Make the lye": {LYE}, "Weigh and melt the oils": {HOT}, "Young bars and old bars": {RAW},
        "Blend, pour and cover": {LYE, RAW}, "Wrap a cured bar": set(), "Questions": set(),
        "Unmold, cut and cure": {RAW},
    },
    "liquid-soap-from-scratch": {
        "Cook the paste for the bottles": {LYE, RAW, HOT}, "Set up": set(), "Weigh and warm the oils": {FAT}, "Make the lye": {LYE},
        "Blend to paste": {LYE, RAW, HOT}, "Put the paste aside": {RAW, HOT}, "The clear test": {RAW, HOT},
        "Show how it is thinned": {RAW, HOT}, "Fill and label": set(), "Questions": set(),
    },
    "lotion-from-scratch": {
        "What holds a lotion together": set(), "Heat and hold": {FAT, HOT}, "Blend": {FAT}, "Preserve": set(), "Your own bottle": set(),
    },
    "melt-and-pour-soap": {"What a base is, and how we weigh": set(), "Pour your bars": {HOT}, "While the bars set": set()},
}  # fmt: skip


@cache
def pages(name: str) -> dict[str, BeautifulSoup]:
    return {document.path.split("/")[0]: tree_of(document.html) for document in of_example(name)}


def said_in(page: BeautifulSoup, title: str) -> set[str]:
    """Return what is said of lye, raw soap and heat between the heading of a part and the next."""
    (heading,) = [one for one in page.select("h2, h3") if title in one.get_text()]
    following = heading.find_all_next(["h2", "h3"])
    last = following[0] if following else None
    texts = []
    for one in heading.find_all_next(True):
        if one is last:
            break
        texts += [one.get_text(" ")] if "signal" in (one.get("class") or []) else []
    return {harm for harm in (LYE, RAW, HOT, FAT) if any(harm in text for text in texts)}


@pytest.mark.parametrize(
    ("name", "key", "title", "met"),
    [
        *(("steps at the bench", key, title, met) for key, parts in BENCHES.items() for title, met in parts.items()),
        *(("teacher's sheet", key, title, met) for key, parts in BENCHES.items() for title, met in parts.items()),
        *(("teacher's sheet", key, title, met) for key, parts in STAFF.items() for title, met in parts.items()),
    ],
)
def test_each_part_has_the_cautions_of_what_is_met_in_it(name: str, key: str, title: str, met: set[str]) -> None:
    assert said_in(pages(name)[key], title) == met


@pytest.mark.parametrize(("key", "in_no_hands_here"), [("lotion-from-scratch", {"Neat preservative irritates"})])
def test_of_what_only_staff_handle_the_benches_are_told_nothing(key: str, in_no_hands_here: set[str]) -> None:
    assert in_no_hands_here <= named(pages("teacher's sheet")[key])
    assert not in_no_hands_here & named(pages("steps at the bench")[key])


def named(page: BeautifulSoup) -> set[str]:
    """Return the names of the cautions on a page."""
    return {one.get_text(" ").strip().rstrip(".").rpartition("  ")[2] for one in page.select(".caution .signal")}


def test_the_run_by_the_clock_names_raw_soap_from_the_lye_to_the_last_tool() -> None:
    rows = pages("teacher's sheet")["soap-lab-in-pairs"].select("table.clock tbody tr:not(.kind)")
    raw = [" ".join(sure(row.select_one("th")).get_text(" ").split()) for row in rows if RAW in row.get_text(" ")]
    for title in ("Take your lye", "Blend to trace", "Stir in clay and scent", "Pour your mold", "Clean up in gloves", "Put away"):
        assert any(title in one for one in raw), title


@pytest.mark.parametrize("kind", ["teacher's sheet", "take-home sheet"])
def test_who_sprays_or_wipes_with_alcohol_is_told_in_that_part_that_its_vapour_catches_fire(kind: str) -> None:
    """Vapour of alcohols burns at room temperature (section 9 of suppliers' safety data sheets, from memory)."""
    parts = [part for made in of_example(kind) for part in tree_of(made.html).select("section.part")]
    with_alcohol = [part for part in parts if " alcohol" in " ".join(step.get_text(" ") for step in part.select(".steps li"))]
    assert len(with_alcohol) > 4
    silent = [part.get_text(" ", strip=True)[:60] for part in with_alcohol if "catches fire" not in part.get_text(" ")]
    assert silent == []
