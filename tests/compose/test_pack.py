"""The pack of a date: its page of counts, against sums worked by hand."""

from dataclasses import replace
from pathlib import Path
from typing import cast

from bs4 import BeautifulSoup

from builder.compose.document_kind import Lies
from builder.compose.document_table import DOCUMENTS, documents_of, sheets_to_print
from builder.compose.documents.packs import compose_pack
from builder.compose.edition import Edition
from builder.compose.views.pack import PackView
from builder.model.document import Document, Folder, Joined, Publication
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.making import sure
from tests.page_text import words_of

(PACK,) = [kind for kind in DOCUMENTS if kind.name == "pack to print"]
# So many pages each sheet of the first date of the small studio is said to have, by the end of its path.
PAGES = {
    "checklist": 1, "teacher": 6, "assistants": 2, "bench-cards": 2, "bench-steps": 3, "batch-cards": 2, "dose-cards": 1, "salts--500-g": 4,
    "bar--500-g-of-oils": 6, "why-this-format": 2, "workings": 3, "labels-salts": 2, "labels-bar": 2,
}  # fmt: skip


def pack_of(edition: Edition, number: int = 0) -> tuple[Document, Joined]:
    made = sure(PACK.make(edition, edition.plans[number]))
    return made, sure(made.joined)


def rows(html: str) -> list[list[str]]:
    return [[" ".join(cell.get_text(" ").split()) for cell in row("td") + row("th")] for row in BeautifulSoup(html, "html.parser")("tr")]


def counted(joined: Joined, pages: dict[str, int], own: int = 1) -> str:
    found = [next(number for end, number in pages.items() if one.path.endswith(f"{end}.pdf")) for one in joined.sheets]
    return joined.cover(tuple(found), own)


def test_the_page_of_counts_says_how_often_each_page_is_printed(edition: Edition) -> None:
    _, joined = pack_of(edition)
    plan = edition.plans[0]
    assert (plan.students, plan.groups, plan.staff) == (3, 2, (1, 1))
    html = counted(joined, PAGES)
    said = {row[-1]: row[:-1] for row in rows(html)}
    assert said["Teacher's sheet"] == ["3 to 8", "1", "both sides", "3"]
    assert said["Assistants' sheet"] == ["9 to 10", "1", "both sides", "1"]
    # The cards of both groups lie on one page; here they were too long for that, and take a page each, with nothing on its back.
    assert said["Bench cards"] == ["11 to 13", "1", "one side", "2"]
    assert said["Steps at the bench"] == ["15 to 17", "2", "both sides", "4"]
    # Three pots, here with cards too long to lie on one page: each page on a front page.
    assert said["Batch cards"] == ["19 to 21", "1", "one side", "2"]
    assert said["Scent and colour, cards for the table"][0:2] == ["23", "1 for each table"]
    assert said["Take-home sheet, plain salts: 500 g"] == ["25 to 28", "3", "both sides", "6"]
    assert said["Take-home sheet, plain bar: 500 g of oils"] == ["29 to 34", "3", "both sides", "9"]
    assert said["Check list"] == ["2", "1", "the back of this page", ""]
    assert said["Labels, Plain salts"] == said["Labels, Plain bar"] == ["its own sheets, one side", "2"]
    told = words_of(html)
    assert "no need to print: Why this format, and the rules (why-this-format.pdf) and Workings (workings.pdf)." in told
    # Pages: 1 cover, 1 list, 6 of the teacher's and 2 of the assistant's, 2 of cards, 2 × 3 steps, 2 of batch cards, 1 of doses, 3 × 4 and
    # 3 × 6 at home.
    # Paper: 1 with the list on its back, 3 + 1, 2 of cards, 2 × 2, 2, 1, 3 × 2 and 3 × 3.
    assert "In all 51 printed pages on 29 sheets of paper." in told


def test_where_the_counts_take_two_pages_the_check_list_lies_behind_them(edition: Edition) -> None:
    html = counted(pack_of(edition)[1], PAGES, own=2)
    said = {row[-1]: row[:-1] for row in rows(html)}
    assert said["Check list"] == ["3", "1", "one side", "1"] and said["Teacher's sheet"][0] == "5 to 10"
    # One page of counts and one sheet for the check list more than where both lie on one.
    assert "In all 52 printed pages on 30 sheets of paper." in " ".join(html.split())


def test_every_sheet_of_the_pack_is_made_once_and_the_pack_lies_with_the_staff(edition: Edition, publication: Publication) -> None:
    there = {(document.folder, document.path) for document in publication.documents}
    for number in range(len(edition.plans)):
        made, joined = pack_of(edition, number)
        assert made.folder is Folder.PRINT
        places = [(one.folder, one.path) for one in joined.sheets]
        assert len(places) == len(set(places)) and set(places) <= there
        dated = {place for place in there if place[1].startswith(made.path.removesuffix("pack.pdf"))}
        assert dated - set(places) == {(made.folder, made.path)}


def test_of_several_home_sizes_it_says_that_nobody_knows_which(tmp_path: Path) -> None:
    two_sizes = FILES["classes/first/class.yaml"].replace("at home: [500 g]", "at home: [500 g, 1 kg]")
    edition = read_edition(write_studio(tmp_path, classes__first__class_yaml=two_sizes))
    every = sheets_to_print(edition, edition.plans[0])
    printed = [one.printed for one in every if "salts" in one.at.path and "take-home" in one.at.path]
    assert [(one.name, one.copies, one.said) for one in printed] == [
        ("Take-home sheet, plain salts: 500\u00a0g", (3,), "3 in all, by size as asked for"),
        ("Take-home sheet, plain salts: 1\u00a0kg", (0,), "of the same 3"),
    ]


def test_where_everybody_on_the_roster_has_chosen_a_home_size_each_is_counted(tmp_path: Path) -> None:
    two_sizes = FILES["classes/first/class.yaml"].replace("at home: [500 g]", "at home: [500 g, 1 kg]")
    rows = ("name,date,at home", "Ann,2027-02-06,1 kg", "Bo,2027-02-06,500 g", "Cy,2027-02-06,1 KG", "Di,2027-03-06,1 kg")
    roster = "\n".join((*rows, ""))
    studio = write_studio(tmp_path, classes__first__class_yaml=two_sizes)
    (studio / "classes/first/roster.csv").write_text(roster, encoding="utf-8")
    edition = read_edition(studio)
    first, second = ([one.printed for one in sheets_to_print(edition, sheet) if "salts--" in one.at.path] for sheet in edition.plans)
    assert [(one.name, one.copies, one.said, one.line) for one in first] == [
        ("Take-home sheet, plain salts: 500\u00a0g", (1,), "", "Take-home sheet, plain salts: 1 of 500\u00a0g and 2 of 1\u00a0kg"),
        ("Take-home sheet, plain salts: 1\u00a0kg", (2,), "", ""),
    ]
    students = edition.plans[1].students
    assert [one.said for one in second] == [f"{students} in all, by size as asked for", f"of the same {students}"]
    # The counts stay on a plan without names, from which everything but the roster is made.
    assert edition.plans[0].without_names().sizes_at_home == ("1 KG", "1 kg", "500 g")


def test_the_roster_is_counted_and_not_in_the_file(edition: Edition) -> None:
    plan = replace(edition.plans[0], was_listed=True)
    packed = [one for one in sheets_to_print(edition, plan) if one.at.path.endswith("roster.pdf")]
    assert [(one.printed.name, one.printed.lies) for one in packed] == [("Roster, for the teacher alone", Lies.WITH_NAMES)]
    joined = sure(sure(PACK.make(edition, plan)).joined)
    assert [one.in_own_file for one in joined.sheets if one.path.endswith("roster.pdf")] == [True]


def test_a_document_of_the_studios_own_is_in_the_pack_and_one_like_the_pack_is_its_page_alone(tmp_path: Path) -> None:
    own = """
documents:
  wall chart: {like: teacher's sheet, template: sheets/teacher.html, on: paper, seen by: staff, copies: 2 for the wall}
  counts: {like: pack to print, template: sheets/pack.html, on: paper, seen by: staff}
"""
    studio = write_studio(tmp_path)
    with (studio / "studio.yaml").open("a", encoding="utf-8") as file:
        file.write(own)
    edition = read_edition(studio)
    (chart,) = [one for one in sheets_to_print(edition, edition.plans[0]) if one.printed.name == "wall chart"]
    assert chart.printed.said == "2 for the wall" and chart.at.path.endswith("/wall-chart.pdf")
    (counts,) = [kind for kind in documents_of(edition.studio) if kind.name == "counts"]
    assert sure(counts.make(edition, edition.plans[0])).joined is None


def test_a_page_of_cards_that_ran_on_is_printed_as_often_as_that_page(edition: Edition) -> None:
    plan = edition.plans[0]
    (cards,) = [one for one in sheets_to_print(edition, plan) if one.at.path.endswith("bench-cards.pdf")]
    packed = replace(cards, printed=replace(cards.printed, copies=(3, 1)))

    def counts(pages: int) -> list[tuple[str, str, str]]:
        joins = sure(compose_pack(edition, plan, PACK.place(plan), [packed]).joins)
        return [(row.pages, row.copies, row.paper) for row in cast(PackView, joins.view((pages,), 1)).rows]

    # Pages of cards lie on front pages, 3, 5, 7 and 9. Of three pages nobody can tell which of the two ran on.
    assert counts(2) == [("3", "3", "3"), ("5", "1", "1")]
    assert counts(4) == [("3 to 5", "3", "6"), ("7 to 9", "1", "2")]
    assert counts(3) == [("3 to 7", "3", "9")]
