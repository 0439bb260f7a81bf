"""The teacher's sheet and what lies beside it: page 1 is the run, page 2 all weighings with lye framed; nothing moved is out of reach."""

from collections.abc import Callable

import pytest
from bs4 import BeautifulSoup

from builder.compose.edition import Edition
from builder.compose.recipe.wording import grams, weighed
from tests.composing import composed
from tests.making import sure

DATE = "print/first/2027-02-06"


@pytest.fixture
def sheet(document: Callable[[str], str]) -> BeautifulSoup:
    return BeautifulSoup(document(f"{DATE}/teacher.pdf"), "html.parser")


def plain(words: str) -> str:
    return " ".join(words.replace("\u00a0", " ").split())


def test_page_1_ticks_every_part_in_the_order_of_the_clock(sheet: BeautifulSoup, edition: Edition) -> None:
    plan = edition.plans[0]
    rows = [
        row for row in sheet.select(".first.one-page table.clock tbody tr") if not {"kind", "weighed-in-it"} & set(row.get("class") or [])
    ]
    titles = [*(one.part.title for one in plan.ahead), *(one.part.title for one in plan.timeline), *(one.part.title for one in plan.after)]
    assert len(rows) == len(titles)
    for row, title in zip(rows, titles, strict=True):
        assert row.select_one(".tick") and title in row.get_text()


def test_page_1_has_what_each_part_weighs_and_its_signal_words(sheet: BeautifulSoup, edition: Edition) -> None:
    text = plain(sure(sheet.select_one(".first table.clock")).get_text(" "))
    for task in edition.plans[0].weighing.tasks:
        assert task.part is None or plain(grams(task.each)) in text
    for part in sheet.select(".third .part"):
        for caution in part.select(".caution .signal"):
            assert plain(caution.get_text(" ")).rstrip(".") in text


def test_every_weighing_stands_once_with_a_tick_and_a_field_and_lye_in_a_frame(sheet: BeautifulSoup, edition: Edition) -> None:
    batches = [planned.batch for made in edition.plans[0].made for planned in made.batches]
    rows = [row for row in sheet.select(".second table.pot tbody tr") if row.select_one(".tick")]
    assert len(rows) == sum(len(batch.rows) for batch in batches)
    assert all(row.select_one("td.blank") for row in rows)
    framed = [plain(row.get_text(" ")) for row in sheet.select("tbody.is-lye tr")]
    alkalis = [w for batch in batches for w in batch.grams.weighed if w.line.role == "alkali"]
    assert alkalis and all(any(plain(weighed(w, "g")) in row for row in framed) for w in alkalis)


def test_the_sheet_names_no_person_and_the_roster_is_one_copy(sheet: BeautifulSoup, edition: Edition) -> None:
    assert not sheet.select("table.guests") and not sheet.select(".allergies")
    assert not composed("roster", edition, edition.plans[0])


def test_every_amount_of_a_bench_card_has_a_box_to_tick(document: Callable[[str], str]) -> None:
    lines = BeautifulSoup(document(f"{DATE}/bench-cards.pdf"), "html.parser").select(".phase .amounts li")
    assert lines and all(sure(line.find()).get("class") == ["tick"] for line in lines)
