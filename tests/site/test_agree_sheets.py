"""One class said in every way in which the studio says it: amounts, step numbers, cautions and labels. All must agree.

Read back are the pages (HTML), what they say for search engines (JSON-LD), the sheets and the labels (PDF). What is expected of dates and
ages is what `class.yaml` says; the weights of a batch are those of `weigh --json`.
"""

import json
import re
from datetime import date, datetime
from pathlib import Path
from typing import Any

import pytest
from bs4 import Tag

from tests.published import published, sheet_text, soup, squeeze, weighed
from tests.site.test_agree import CLASSES, of_studio, page_of
from tests.test_site_example import AT_BENCHES, DATED, shown

# Sheets for everybody, which have a page on the site beside their PDF.
PUBLIC = [key for key in CLASSES if of_studio(key).get("take-home sheets") == "public"]


def public_sheets() -> list[Path]:
    found = sorted(path for key in PUBLIC for path in (published()[0] / "site/classes").glob(f"{key}--take-home-*.html"))
    assert len(found) >= 2 * len(PUBLIC) >= 6
    return found


def how_to(page: Path) -> dict[str, Any]:
    script = soup(page).find("script", type="application/ld+json")
    assert isinstance(script, Tag)
    (node,) = (node for node in json.loads(str(script.string))["@graph"] if node["@type"] == "HowTo")
    found: dict[str, Any] = node
    return found


def words(tag: Tag) -> str:
    """Return the words of a tag, without those of the drawing beside them."""
    return squeeze("".join(text for text in tag.find_all(string=True) if text.find_parent(["figure", "title"]) is None))


@pytest.mark.long(sample=True)
def test_the_amounts_of_a_home_batch_agree_on_page_sheet_and_for_machines() -> None:
    for page in public_sheets():
        rows = soup(page).select("table.home tr:has(td.weight):not(.together)")
        amounts = [(words(row.select("th")[0]), [words(cell) for cell in row.select("td.weight")]) for row in rows]
        assert amounts
        assert [(one["name"], squeeze(one["requiredQuantity"])) for one in how_to(page)["supply"]] == [
            (name, next(filter(None, cells))) for name, cells in amounts
        ]
        paper = sheet_text(page.with_suffix(".pdf"))
        for name, cells in amounts:
            row_read = rf"{re.escape(name)} (?:[\w ]+ )?{' '.join(re.escape(cell) for cell in cells if cell)}"
            assert re.search(row_read, paper), f"{page.name}: {name} {cells}"


@pytest.mark.long(sample=True)
def test_a_step_has_one_number_everywhere() -> None:
    for page in public_sheets():
        steps = []
        for item in soup(page).select("ol.steps > li"):
            name = words(item.select("b.step")[0])
            steps.append((name, words(item).removeprefix(name).strip()))
        assert [(one["name"], squeeze(one["text"])) for one in how_to(page)["step"]] == steps
        assert [one["position"] for one in how_to(page)["step"]] == list(range(1, len(steps) + 1))
        paper, at = sheet_text(page.with_suffix(".pdf")), 0
        for name, text in steps:
            # On paper too the number stands before the step; a drawing may stand between.
            found = re.compile(rf"\b{name} (?:.{{0,200}}?){re.escape(text[:25])}").search(paper, at)
            assert found, f"{page.name}: {name} {text[:40]} after {paper[at : at + 60]}"
            at = found.start()


@pytest.mark.long(sample=True)
def test_a_caution_stands_before_its_step_everywhere() -> None:
    """PROC-05 of the project: before the step, in every output."""
    seen = 0
    for page in public_sheets():
        expected: dict[str, list[str]] = {}
        waiting: list[str] = []
        apart: set[str] = set()
        on_its_page: set[tuple[str, str]] = set()  # What stands on paper once for all parts of its page.
        for one in soup(page).select(".part .caution, ol.steps > li"):
            if one.name == "li":
                if waiting:
                    expected[words(one.select("b.step")[0])] = waiting
                    on_its_page |= {(words(one.select("b.step")[0]), text) for text in apart}
                waiting, apart = [], set[str]()
            else:
                waiting.append(words(one))
                apart |= {waiting[-1]} if "is-said" in one["class"] else set()
        said = {
            step["name"]: [squeeze(tip["text"]) for tip in step["itemListElement"] if tip["@type"] == "HowToTip"]
            for step in how_to(page)["step"]
            if "itemListElement" in step
        }
        assert said == expected, page.name
        paper, at = sheet_text(page.with_suffix(".pdf")), 0
        for step, cautions in expected.items():
            for caution in cautions:
                signal = caution.partition(".")[0]
                found = paper.rfind(signal.split(" ", 1)[1], 0, at) if (step, caution) in on_its_page else paper.find(signal, at)
                assert found >= 0, f"{page.name}: {signal} is not on paper after {paper[at : at + 60]}"
                at = found
                seen += 1
            assert re.search(rf"\b{step} ", paper[at:]), f"{page.name}: no {step} after its cautions on paper"
    assert seen > 20


@pytest.mark.parametrize(("key", "recipe", "day"), DATED)
@pytest.mark.long(sample=True)
def test_the_weights_of_a_batch_stand_beside_their_names_on_every_sheet(key: str, recipe: str, day: str) -> None:
    product = weighed(key, recipe, day)["product"]
    folder = published()[0] / "print" / key / day
    teacher = sheet_text(folder / "teacher.pdf")
    for planned in product["batches"]:
        for name, weight in weights(planned["batch"]):
            # Water that dissolves lye is called that.
            assert re.search(rf"{re.escape(name)} (?:for the lye )?{re.escape(weight)}", teacher), f"{name} {weight}"
    if (key, recipe, day) in AT_BENCHES and product["batches"][0]["for"] != "class":
        bench = sheet_text(folder / "bench-cards.pdf")
        for name, weight in weights(product["batches"][0]["batch"]):
            assert f"{weight} {name}" in bench, f"{name} {weight}"


def weights(batch: dict[str, Any]) -> list[tuple[str, str]]:
    """Return each ingredient as the US spells it, with what its scale shows."""
    return [(one["ingredient"].replace("flavour", "flavor"), shown(one)) for one in batch["columns"][0]["weighed"]]


@pytest.mark.parametrize(("key", "recipe", "day"), DATED)
@pytest.mark.long(sample=True)
def test_labels_say_the_contents_of_the_page_and_the_day_of_the_class(key: str, recipe: str, day: str) -> None:
    folder = published()[0] / "print" / key / day
    label, teacher = sheet_text(folder / f"labels-{recipe}.pdf"), sheet_text(folder / "teacher.pdf")
    name = weighed(key, recipe, day)["product"]["batches"][0]["batch"]["name"]
    (product,) = (one for one in page_of(key).select(".product") if words(one.select("h3")[0]) == name)
    (yours,) = (words(one.select("dd")[0]) for one in product.select("dl.facts > div") if words(one.select("dt")[0]) == "Yours")
    # What a bar of soap weighs when it has cured is on its label, and not yet known to the page; liquids are declared by volume in the US
    # (21 CFR 701.13(a)).
    if "once cured" not in yours and "fl oz" not in label:
        contents = re.search(r"([\d.]+) g \(([\d.]+) oz\)", yours)
        assert contents, yours
        assert f"{contents[1]} g" in label and f"{contents[2]} oz" in label, f"{yours}: {label[:200]}"
    # What is taken home may be of an earlier batch; where its day is not known, it is written by hand.
    coded = set(re.findall(r"Made (\w+ \d+, \d{4}) Batch: ([A-Z]+-\d{6})", label))
    assert coded or "Made on Batch: By" in label
    for made, code in coded:
        on = datetime.strptime(made, "%B %d, %Y").date()
        assert code.endswith(f"-{on:%y%m%d}") and code in teacher, code
        assert of_studio(key)["format"] == "demo" or on.isoformat() == day


@pytest.mark.parametrize(("key", "day"), sorted({(key, day) for key, _, day in DATED}))
@pytest.mark.long(sample=True)
def test_a_date_says_its_day_age_and_dangers_alike_on_page_and_sheet(key: str, day: str) -> None:
    on = date.fromisoformat(day)
    teacher = sheet_text(published()[0] / "print" / key / day / "teacher.pdf")
    assert f"{on:%A}, {on:%B} {on.day}, {on.year}" in teacher
    assert f"Youngest: {of_studio(key)['youngest'].split()[0]} years" in teacher
    dangers = [words(one).rstrip(".") for one in page_of(key).select(".safety .risks b:first-child")]
    assert dangers
    for danger in dangers:
        assert danger.casefold() in teacher.casefold(), danger
