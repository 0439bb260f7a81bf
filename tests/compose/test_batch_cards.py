"""Batch cards: one for each pot, with its code, and the amounts of the table of weighings on the teacher's sheet."""

import re
from dataclasses import replace
from pathlib import Path

from bs4 import BeautifulSoup, Tag

from builder.compose.edition import Edition
from builder.library import LAYOUTS
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.composing import composed
from tests.making import sure


def plain(text: str) -> str:
    return " ".join(text.replace("\u00a0", " ").split())


def cards_of(edition: Edition, number: int = 0) -> list[Tag]:
    (made,) = composed("batch cards", edition, edition.plans[number])
    return list(BeautifulSoup(made.html, "html.parser").select("article.card"))


def weights(rows: list[Tag]) -> list[str]:
    return [plain(sure(row.find("td")).get_text()) for row in rows]


def test_each_pot_has_a_card_with_its_own_code(edition: Edition) -> None:
    plan = edition.plans[0]
    pots = [pot for made in plan.made for pot in made.pots]
    said = [plain(sure(card.select_one(".code")).get_text()) for card in cards_of(edition)]
    assert said == [pot.code for pot in pots] and len(set(said)) == len(said) > 1


def test_a_card_says_what_the_table_of_weighings_says(edition: Edition) -> None:
    """Read back from two documents, and against what each batch was worked out to weigh."""
    plan = edition.plans[0]
    (teacher,) = composed("teacher's sheet", edition, plan)
    table = BeautifulSoup(teacher.html, "html.parser").select("table.pot")
    told = {plain(cell.get_text()) for one in table for cell in one.select("td")}
    batches = [planned for made in plan.made for pot in made.pots for planned in made.batches if planned.purpose is pot.purpose]
    cards = cards_of(edition)
    assert len(cards) == len(batches)
    for card, planned in zip(cards, batches, strict=True):
        shown = weights(card.select("tbody tr:not(.in-all)"))
        assert set(shown) <= told
        grams = [float(re.sub(r"[^\d.]", "", text)) for text in shown]
        assert sorted(grams) == sorted(float(w.mass.grams) for w in planned.batch.grams.weighed)
        (in_all,) = weights(card.select("tr.in-all"))
        assert float(re.sub(r"[^\d.]", "", in_all)) == round(sum(grams), 3)


def test_lye_is_framed_and_has_its_temperature(edition: Edition) -> None:
    bar = [card for card in cards_of(edition) if "Plain bar" in card.get_text()]
    salts = [card for card in cards_of(edition) if "Plain salts" in card.get_text()]
    assert bar and salts
    for card in bar:
        assert [plain(row.get_text(" ")).split()[0] for row in card.select("tr.is-lye")] == ["LYE"]
        assert {"Lye: temperature", "Mixed at", "Trace at"} <= {item.get_text() for item in card.select(".blanks li")}
    for card in salts:
        assert not card.select("tr.is-lye") and "Trace at" not in card.get_text()


def rows_of(edition: Edition) -> tuple[str, list[int]]:
    """Return the most pages that the cards of the first date want, and how many cards lie side by side in each row."""
    (made,) = composed("batch cards", edition, edition.plans[0])
    html = BeautifulSoup(made.html, "html.parser")
    return str(sure(html.body)["data-most"]), [len(row.select("article.card")) for row in html.select(".row")]


def test_more_cards_than_a_page_holds_one_beneath_the_other_lie_side_by_side(edition: Edition, tmp_path: Path) -> None:
    assert rows_of(edition) == ("2", [2, 1])  # one pot of salts, and one of the bar for each of two groups
    of_class = FILES["classes/first/class.yaml"].replace("batch: one for each group, ", "")
    assert rows_of(read_edition(write_studio(tmp_path, classes__first__class_yaml=of_class))) == ("1", [1, 1])


def test_nobody_is_named_and_where_nobody_comes_the_teachers_pot_alone_has_a_card(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path))
    plan = edition.plans[0]
    alone = replace(plan, made=tuple(replace(made, pots=()) for made in plan.made))
    assert composed("batch cards", replace(edition, plans=(alone,)), alone) == []


def test_what_hangs_on_a_nail_or_lies_in_a_folder_leaves_20_mm_at_its_left() -> None:
    """Room for the holes of a folder, on every kind of sheet but labels, whose geometry is that of their stock."""
    seen = 0
    for name in ("bench-card", "batch-card", "checklist", "dose-card", "pack", "paper", "take-home", "teacher", "class-steps"):
        for margin in re.findall(r"@page [^{]*\{\s*margin: ([^;]+);", (LAYOUTS / "styles" / f"{name}.css").read_text(encoding="utf-8")):
            sides = margin.split()
            left = sides[3] if len(sides) == 4 else sides[1]
            assert float(left.removesuffix("mm")) >= 20, name
            seen += 1
    assert seen == 11
