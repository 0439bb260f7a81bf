"""A recipe of which something cannot be read: what else is wrong in it is told at once, and nothing is told that only follows.

What the studio is judged by stands in the request for it, "all its problems at once"; nothing here is a figure.
"""

import copy
import re
import tempfile
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml

from builder import check, pipeline
from builder.cache.constants import dumps, loads
from builder.model.finding import Finding, Weight
from builder.model.recipe.unread import UNREAD, as_far_as_read
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
    with tempfile.TemporaryDirectory() as folder:
        studio = Path(folder) / "studio"
        lay_out(None, studio)
        (studio / "recipes" / recipe).write_text(yaml.safe_dump(data, sort_keys=False), encoding="utf-8")
        outcome = pipeline.check(studio, on=TODAY)
        assert outcome.studio
        return [one for one in outcome.findings if one.place.file == f"recipes/{recipe}"] if outcome.studio.in_part else []


def names_of_ingredients(data: Any) -> set[str]:
    return {name for phase in data["phases"] for name in phase["ingredients"]}


# What reading itself finds; a name that stands where an ingredient may is one that no card answers to.
READING = {
    *("amount-unreadable", "field-missing", "key-unknown", "wrong-kind-of-value", "word-unknown", "yes-or-no", "keeps-unreadable"),
    *("amount-of-another-kind", "lye-water-unclear", "list-empty", "amount-not-positive", "unit-wrong", "number-unreadable"),
}


@pytest.mark.parametrize("recipe", ["plain-bar.yaml", "plain-lotion.yaml"])
def test_nothing_is_told_that_only_follows_from_what_cannot_be_read(recipe: str) -> None:
    data = yaml.load((SOUND / recipe).read_text(encoding="utf-8"), yaml.BaseLoader)
    for path in paths_in(data):
        for garbage in (*GARBAGE, None):
            told = found_in(recipe, damaged(data, path, garbage))
            follows = [one for one in told if one.name not in READING and "no such key" not in one.wrong]
            assert not follows, f"{path}, {garbage!r}: {follows}"


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
        monkeypatch.setattr(check, "run_apart", lambda *_, words=words: [replace(whole, wrong=words)])
        assert len(check.check_in_part(replace(studio, in_part=(recipe,)), TODAY)) == told
