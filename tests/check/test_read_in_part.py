"""A file of which something cannot be read: what else is wrong in it is told at once, and nothing is told that only follows.

What the studio is judged by stands in the request for it, "all its problems at once"; nothing here is a figure.
"""

import copy
import re
import tempfile
import unicodedata
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml

from builder import pipeline
from builder.cache.constants import dumps, loads
from builder.check import in_part
from builder.model.finding import Finding, Weight
from builder.model.recipe.unread import UNREAD, as_far_as_read
from builder.model.studio import NOTHING_IN_PART, InPart
from builder.read.findings import FINDS
from builder.tasks.drafts import studio_in
from tests.published import EXAMPLE
from tests.test_findings import FINDINGS, lay_out

SOUND = FINDINGS / "_sound" / "recipes"
TODAY = date(2027, 1, 1)
# Garbage in place of a text; a list and a mapping stand where no shape has them, and every key may be misspelt or gone.
GARBAGE: tuple[Any, ...] = ("lots of 7 !", ["x"], {"no such key": "x"})


def paths_in(data: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    for step, inside in data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ():
        yield (*path, step)
        yield from paths_in(inside, (*path, step))


def damaged(data: Any, path: tuple[Any, ...], garbage: Any) -> Any:
    """Return data with garbage at a path; None takes the value away, with its key."""
    data = copy.deepcopy(data)
    around = data
    for step in path[:-1]:
        around = around[step]
    if garbage is None:
        del around[path[-1]]
    else:
        around[path[-1]] = garbage
    return data


def found_in(recipe: str, data: Any) -> list[Finding]:
    return found_beside(f"recipes/{recipe}", data, only_in_part=True)


def found_beside(file: str, data: Any, others: Mapping[str, str] | None = None, *, only_in_part: bool = False) -> list[Finding]:
    """Return what stands in a file, or in the folder of a class, of the sound studio with this file and others; or nothing where all of
    it can be read.
    """
    text = data if isinstance(data, str) else yaml.safe_dump(data, sort_keys=False)
    with tempfile.TemporaryDirectory() as folder:
        studio = Path(folder) / "studio"
        lay_out(None, studio)
        for name, written in {file: text, **(others or {})}.items():
            (studio / name).parent.mkdir(parents=True, exist_ok=True)
            (studio / name).write_text(written, encoding="utf-8")
        outcome = pipeline.check(studio, on=TODAY)
        assert outcome.studio
        beside = file.rpartition("/")[0] + "/" if file.startswith("classes/") else file
        told = [one for one in outcome.findings if one.place.file.startswith(beside)]
        return [] if only_in_part and outcome.studio.in_part == NOTHING_IN_PART else told


def names_of_ingredients(data: Any) -> set[str]:
    return {name for phase in data["phases"] for name in phase["ingredients"]}


# What reading itself finds; a name that stands where an ingredient may is one that no card answers to.
READING = {kind.name for kind in FINDS} - {"name-taken-twice"}


@pytest.mark.parametrize("recipe", ["plain-bar.yaml", "plain-lotion.yaml"])
def test_nothing_is_told_that_only_follows_from_what_cannot_be_read(recipe: str) -> None:
    data = yaml.load((SOUND / recipe).read_text(encoding="utf-8"), yaml.BaseLoader)
    for path in paths_in(data):
        for garbage in (*GARBAGE, None):
            nothing_follows(f"recipes/{recipe}", damaged(data, path, garbage))


def nothing_follows(file: str, data: Any) -> None:
    follows = [one for one in found_beside(file, data, only_in_part=True) if one.name not in READING and "no such key" not in one.wrong]
    assert not follows, follows


@pytest.mark.parametrize(
    "path",
    [
        *(("name",), ("product",), ("amounts",), ("keeps",), ("fills",), ("fills", "weight"), ("lye", "superfat"), ("lye", "water")),
        *(("phases", 0, "name"), ("phases", 0, "ingredients", "coconut oil")),
    ],
)
@pytest.mark.parametrize("garbage", [*GARBAGE, None])
def test_a_misspelt_ingredient_is_told_beside_what_cannot_be_read(path: tuple[Any, ...], garbage: Any) -> None:
    data = yaml.load((SOUND / "plain-bar.yaml").read_text(encoding="utf-8"), yaml.BaseLoader)
    oils = data["phases"][0]["ingredients"]
    data["phases"][0]["ingredients"] = {"olve oil": oils.pop("olive oil"), **oils}
    told = found_in("plain-bar.yaml", damaged(data, path, garbage))
    assert not told or [one for one in told if one.name == "unknown-ingredient" and '"olve oil"' in one.wrong]


def test_what_is_accepted_stays_accepted_beside_what_cannot_be_read() -> None:
    data = yaml.load((SOUND / "plain-lotion.yaml").read_text(encoding="utf-8"), yaml.BaseLoader)
    data["choices"]["scent"]["at most"] = "20 %"
    data["fills"]["weight"] = "lots"
    assert {one.name for one in found_in("plain-lotion.yaml", data)} == {"amount-unreadable", "dose-very-high"}
    data["accepts"] = {"dose-very-high": "It is rinsed off, and the supplier allows it."}
    assert [bool(one.accepted) for one in found_in("plain-lotion.yaml", data) if one.name == "dose-very-high"] == [True]
    data["accepts"] = ["x"]
    assert {one.name for one in found_in("plain-lotion.yaml", data)} == {"amount-unreadable", "wrong-kind-of-value"}


def test_what_cannot_be_read_is_the_same_value_in_another_process() -> None:
    assert loads(dumps((UNREAD,), never=(Path,)))[0] is UNREAD  # type: ignore[index]


ASKS = (
    lambda: len(UNREAD), lambda: UNREAD.card.name == "lye", lambda: ", ".join(["x", UNREAD]), lambda: re.search("x", UNREAD),
    lambda: "x".startswith(UNREAD), lambda: UNREAD in "abc", lambda: Fraction(1) + UNREAD, lambda: Fraction(UNREAD), lambda: TODAY < UNREAD,
    lambda: round(1.5, UNREAD), lambda: max(1, UNREAD), lambda: f"{UNREAD}", lambda: unicodedata.normalize("NFC", UNREAD),
    lambda: Path("x") / UNREAD, lambda: {UNREAD}, lambda: "x".replace("x", UNREAD), lambda: Decimal(UNREAD), lambda: [*UNREAD],
    lambda: replace(UNREAD, name="lye"),
)  # fmt: skip


@pytest.mark.parametrize("ask", ASKS)
def test_whoever_asks_for_what_cannot_be_read_falls_silent(ask: Callable[[], object]) -> None:
    with as_far_as_read():
        pytest.fail(f"it is {ask()}")


@pytest.mark.parametrize("wrong", [lambda: len(3), lambda: "x" + 3, lambda: max(1, "x"), lambda: ", ".join([1])])  # type: ignore[arg-type, operator, list-item]
def test_a_mistake_in_a_rule_is_none_of_reading(wrong: Callable[[], object]) -> None:
    with pytest.raises(TypeError), as_far_as_read():
        wrong()


def test_a_finding_in_whose_words_stands_what_cannot_be_read_is_not_told(monkeypatch: pytest.MonkeyPatch) -> None:
    studio = studio_in(EXAMPLE)
    recipe = next(iter(studio.recipes.values()))
    whole = Finding("keeps-unreadable", Weight.STOP, recipe.place, "It keeps for lots.", "6 months")
    for words, told in ((whole.wrong, 1), (UNREAD, 0)):
        monkeypatch.setattr(in_part, "run_apart", lambda *_, words=words: [replace(whole, wrong=words)])
        assert len(in_part.check_in_part(replace(studio, in_part=InPart(recipes=(recipe,))), TODAY, ())) == told


CLASS = """
title: One lotion
format: hands-on
summary: A lotion from scratch.
for: adults
goal: learn to make at home
youngest: 14
length: 1 h
seats: 8
price: 40.00
staff: {teachers: 1, assistants: 1}
group size: 2
makes:
  plain-lotion: {batch: one for each group, each student: 1 container, spare: 1 container, demo: 20 g, at home: [250 g]}
wear: [an apron]
labels: {panels: 2, spare: 1}
booking: {until: 2 days, includes: All that you use.}
dates:
  - {on: 2027-03-06 10:00, enrolled: 6, staff: {teachers: 1, assistants: 2}, first label: 2}
  - {on: 2027-04-03 10:00, moved from: 2027-03-13 10:00, revision: 1, announced: [2026-12-01, 2026-12-20]}
  - {on: 2027-05-08 10:00, cancelled: yes, revision: 1}
"""
CARD = """
name: Our olive oil
also called: [oil of the mill]
label name: {inci: Olea Europaea Fruit Oil, plain: olive oil, known: memory}
kind: oil
counts as: fat
mixes with: oil
allergens: [tree nut]
about: From the mill.
figures:
  saponification: [{low: 185, high: 195, unit: mg/g, source: common-practice, at: its certificate, known: practice}]
  density: [{value: 0.91, unit: relative density, source: common-practice, at: its certificate, known: practice}]
drop mass: {drops: 50, weigh: 1.5 g, measured: "weighed in May"}
"""
SUPPLIES = """
- {ingredient: sunflower oil, pack: 1 gal, price: 21.50, weighs: 3.48 kg, measured: "full jug less the empty one"}
- {ingredient: glycerin, pack: 500 g, price: 9.00, pump: {stroke: 8 mL, measured: "ten strokes, May"}}
- {container: 4 fl oz bottle, pack: 24, price: 21.60}
- {item: nitrile gloves, pack: 100, price: 12.50, each student: 2, classes: [one-lotion]}
"""
INVENTORY = """
- {ingredient: sunflower oil, have: 2.3 kg, counted: 2026-12-20}
- {container: 4 fl oz bottle, have: 18, counted: 2026-12-20}
"""
LESSON = "classes/one-lotion/lesson.md"
SOUND_FILES = {
    "classes/one-lotion/class.yaml": CLASS,
    "shelf/ingredients/our-olive-oil.yaml": CARD,
    "shelf/supplies.yaml": SUPPLIES,
    "inventory.yaml": INVENTORY,
}
# Every value of these is spoilt in every way in the long run, and one in so many in each run.
ONE_IN = 23


@pytest.mark.parametrize("file", SOUND_FILES)
def test_what_is_spoilt_here_is_sound_before(file: str) -> None:
    assert found_beside(file, SOUND_FILES[file]) == []


@pytest.mark.parametrize("file", SOUND_FILES)
@pytest.mark.parametrize("first", [0, *(pytest.param(number, marks=pytest.mark.long) for number in range(1, ONE_IN))])
def test_nothing_follows_from_what_cannot_be_read_in_other_files(file: str, first: int) -> None:
    data = yaml.load(SOUND_FILES[file], yaml.BaseLoader)
    for path, garbage in [(path, garbage) for path in paths_in(data) for garbage in (*GARBAGE, None)][first::ONE_IN]:
        nothing_follows(file, damaged(data, path, garbage))


@pytest.mark.parametrize(
    ("file", "wrong", "found"),
    [
        (
            "classes/one-lotion/class.yaml",
            {"price: 40.00": "price: lots", "goal: learn to make at home": "goal: rest", "enrolled: 6": "enrolled: 9"},
            ["enrolled-over-seats", "number-unreadable", "word-unknown"],
        ),
        (
            "classes/one-lotion/class.yaml",
            {"length: 1 h": "length: long", "makes:": "picture: {file: lotion.svg, alt: a lotion}\nmakes:", "revision: 1}": "revision: 0}"},
            ["amount-unreadable", "picture-missing", "revision-too-low"],
        ),
        (
            "shelf/ingredients/our-olive-oil.yaml",
            {"kind: oil": "kind: thing", "about:": "charge: much\nabout:", "oil of the mill": "coconut oil"},
            ["name-taken-twice", "word-unknown", "word-unknown"],
        ),
        (
            "shelf/ingredients/our-olive-oil.yaml",
            {
                "name: Our olive oil": "name: Olive oil",
                "kind: oil": "kind: thing",
                "low: 185, high: 195": "low: 130, high: 135",
                "drops: 50": "drops: many",
            },
            ["number-unreadable", "saponification-far-off", "word-unknown"],
        ),
        (
            "shelf/ingredients/our-olive-oil.yaml",
            {
                "kind: oil": "kind: thing",
                "  density": '  purity: [{value: 95, unit: "%", source: common-practice, at: a, known: practice}]\n'
                '  water content: [{value: 20, unit: "%", source: common-practice, at: a, known: practice}]\n  density',
            },
            ["assay-and-water-over-whole", "word-unknown"],
        ),
        (
            "shelf/supplies.yaml",
            {"21.50": "lots", "12.50": "much", "sunflower": "sunflwer", "[one-lotion]": "[no-lotion]"},
            ["number-unreadable", "number-unreadable", "supply-unknown", "supply-unknown"],
        ),
        (
            "shelf/supplies.yaml",
            {"each student: 2, ": "", "12.50": "much", "- {item": "- {container: 4 fl oz bottle, pack: 24, price: some}\n- {item"},
            ["item-use-unclear", "number-unreadable", "number-unreadable", "supply-twice"],
        ),
        (
            "shelf/supplies.yaml",
            {"pack: 1 gal": "pack: lots", "glycerin, pack: 500 g, price: 9.00": "aloe vera juice, pack: 500 mL, price: much"},
            ["amount-unreadable", "number-unreadable", "pack-weight-unknown", "stroke-weight-unknown"],
        ),
        (
            "inventory.yaml",
            {"2.3 kg": "lots", "sunflower": "sunflwer", "2026-12-20}": "2027-02-20}"},
            ["amount-unreadable", "inventory-counted-ahead", "inventory-unknown"],
        ),
    ],
)
def test_all_that_is_wrong_in_a_file_is_told_at_once(file: str, wrong: dict[str, str], found: list[str]) -> None:
    text = SOUND_FILES[file]
    for sound, spoilt in wrong.items():
        assert sound in text
        text = text.replace(sound, spoilt, 1)
    assert sorted(one.name for one in found_beside(file, text)) == found


def test_what_a_lesson_says_is_judged_beside_a_class_that_cannot_be_read() -> None:
    lesson = (SOUND.parent / "classes" / "one-lotion" / "lesson.md").read_text(encoding="utf-8").replace("{portion}", "{portions}")
    text = CLASS.replace("price: 40.00", "price: lots")
    told = found_beside("classes/one-lotion/class.yaml", text, {LESSON: lesson})
    assert [(one.name, one.place.file.rpartition("/")[2]) for one in told] == [
        ("number-unreadable", "class.yaml"),
        ("mention-unknown", "lesson.md"),
    ]


def test_a_class_is_judged_beside_a_lesson_that_cannot_be_read() -> None:
    text = CLASS.replace("enrolled: 6", "enrolled: 9")
    told = found_beside("classes/one-lotion/class.yaml", text, {LESSON: "No title.\n"})
    assert sorted(one.name for one in told) == ["enrolled-over-seats", "lesson-title-missing"]


def test_what_is_in_stock_of_a_pack_that_cannot_be_read_is_known() -> None:
    stock = "- {item: nitrile gloves, have: 60, counted: 2026-12-20}\n"
    assert found_beside("inventory.yaml", stock, {"shelf/supplies.yaml": SUPPLIES.replace("12.50", "much")}) == []
