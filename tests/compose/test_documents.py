"""The documents of a whole studio: text in, text out."""

import posixpath
import re
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from urllib.parse import unquote

import pytest
from bs4 import BeautifulSoup

from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.compose.templates import Templates
from builder.library import LAYOUTS
from builder.model.document import Publication
from builder.model.finding import Finding, Weight, caution
from builder.model.place import Place
from builder.model.supplies.shopping import Period
from builder.reckon import reckon_shopping
from tests.compose.conftest import FILES, TODAY, read_edition, write_studio
from tests.composing import made_at
from tests.making import sure
from tests.page_text import attributes_of, words_of

CLASS = "site/classes/first.html"
DATE = "print/first/2027-02-06"
# What visitors can choose by: one class makes two things, its dates fall in two months, and one has room.
FOUND = ["age-under-16.html"]
FOUND += [
    f"{value}.{ending}"
    for value in ("what-bath-salts", "what-soap", "age-16", "month-2027-02", "month-2027-03", "room-left")
    for ending in ("html", "ics")
]


def test_every_document_has_its_place(publication: Publication) -> None:
    assert sorted(f"{document.folder}/{document.path}" for document in publication.documents) == sorted(
        [
            "site/404.html",
            "site/classes/first.ics",
            "site/dates.ics",
            "site/dates.json",
            "site/index.html",
            *(f"site/{name}.html" for name in ("classes", "dates", "visit", "ways-of-teaching")),
            *(f"site/find/{name}" for name in FOUND),
            "site/styles/filter.css",
            "site/about.html",
            CLASS,
            *(f"print/first/take-home-{name}.{ending}" for name in ("salts--500-g", "bar--500-g-of-oils") for ending in ("html", "pdf")),
            *(f"print/first/take-home-{name}--large-print.pdf" for name in ("salts--500-g", "bar--500-g-of-oils")),
            *(
                f"print/first/{day}/{name}.pdf"
                for day in ("2027-02-06", "2027-03-06")
                for name in (
                    "batch-cards",
                    "bench-cards",
                    "bench-steps",
                    "dose-cards",
                    "teacher",
                    "assistants",
                    "why-this-format",
                    "workings",
                    "checklist",
                    "pack",
                    "labels-salts",
                    "labels-bar",
                )
            ),
            "print/first/workings-at-home.pdf",
            "print/label-test-page.pdf",
        ]
    )


def test_the_catalogue_answers_five_questions(document: Callable[[str], str]) -> None:
    page = words_of(document("site/classes.html"))
    for text in ("The first class", "Salts and a bar.", "How Watch and make , 1 hour", "Yours A jar and a bar.", "Price $48"):
        assert text in page
    assert "Who Ages 16 and up ; beginners" in page
    assert "Next Sat Feb 6 , 10:00 – 11:00 AM 2 seats left" in page


def test_the_dates_stand_under_their_months_with_what_to_do(document: Callable[[str], str]) -> None:
    page = words_of(document("site/dates.html"))
    assert "February 2027 Sat Feb 6 10:00 – 11:00 AM The first class Watch and make ages 16 and up $48 2 seats left Ask for a seat" in page
    assert "March 2027 Sat Mar 6 10:00 – 11:00 AM The first class Watch and make ages 16 and up $48 Full Join the waiting list" in page
    assert "2 dates, 1 with room." in page
    assert "Jan 10" not in page


def test_the_home_page_promises_and_leads_on(document: Callable[[str], str]) -> None:
    page = words_of(document("site/index.html"))
    for text in ("Small classes", "Come in", "Next dates with room Sat Feb 6", "Watch and make", "Seats as of January 15, 2027."):
        assert text in page
    assert "Mar 6" not in page


def test_the_class_page_says_how_it_is_taught_and_what_is_in_it(document: Callable[[str], str]) -> None:
    page = words_of(document(CLASS))
    for text in (
        "You make two things.",
        "You watch the teacher make the plain bar, with every step explained.",
        "You take home: A jar and a bar.",
        "2 jars, 113 g (3.98 oz) in each",
        "1 bar, poured at 100 g",
        "Scent: lavender essential oil or no scent",
        "Only the teacher handles lye and fresh soap Lye burns. Lye (sodium or potassium hydroxide), dry or dissolved, burns skin and can "
        "blind. Fresh soap still burns.",
    ):
        assert text in page
    assert "take-home" not in document(CLASS)


def test_the_take_home_sheet_speaks_of_the_home_batch_in_both_units(document: Callable[[str], str]) -> None:
    page = words_of(document("print/first/take-home-salts--500-g.html"))
    assert "Weigh 300 g (10.60 oz) of sea salt and 150 g (5.30 oz) of baking soda" in page
    assert "Check that the batch weighs 500 g (17.65 oz)" in page
    assert "Fills 4 jars (4 fl oz jar) with 113 g (4 oz) each. 48 g are left, too little to fill one more." in page
    assert "Printed January 15, 2027" in page
    assert "on the table" not in page
    assert "Watch the lye" not in page


def test_screen_and_paper_say_the_same(document: Callable[[str], str]) -> None:
    for name in ("salts--500-g", "bar--500-g-of-oils"):
        page, paper = (BeautifulSoup(document(f"print/first/take-home-{name}.{ending}"), "html.parser") for ending in ("html", "pdf"))
        sure(page.find("p", class_="pdf")).decompose()
        assert words_of(str(page.find(class_="sheet"))) == words_of(str(paper.body))


def test_a_sheet_about_lye_has_first_aid_and_says_what_it_assumes(document: Callable[[str], str]) -> None:
    page = words_of(document("print/first/take-home-bar--500-g-of-oils.html"))
    # The recipe states 100 %, of the studio's own pack; at home another one is used.
    assert "counted as 97.5% pure, an assumption from" in page
    assert "On skin Brush off dry lye" in page and "In eyes Rinse, lids open" in page and "Breathed in Fresh air" in page
    assert "Poison centre: 113" in page
    assert page.index("Lye burns") < page.index("of sodium hydroxide. ")


def test_a_card_for_each_group_and_the_steps_once(document: Callable[[str], str]) -> None:
    cards = words_of(document(f"{DATE}/bench-cards.pdf"))
    assert "Group 1 of 2: 2 people" in cards
    assert "Group 2 of 2: 1 person" in cards
    assert "One batch is made for all." in cards
    assert "At most 1.1 g for each container (1%" in cards
    steps = words_of(document(f"{DATE}/bench-steps.pdf"))
    assert "print 2 copies" in steps
    assert "Weigh 406.8 g of sea salt" in steps
    assert "Watch the lye" not in steps


def test_what_the_batch_of_a_smaller_group_holds_too_much_is_said_to_it_and_to_the_teacher(document: Callable[[str], str]) -> None:
    cards = words_of(document(f"{DATE}/bench-cards.pdf")).replace("\u00a0", " ").split("Group 2 of 2")
    said = "The batch is that of a whole group: 1 bar of 100 g more than you take."
    assert [said in card for card in cards] == [False, True]
    sheet = words_of(document(f"{DATE}/teacher.pdf")).replace("\u00a0", " ")
    assert "Group 2 has 1 person and makes the batch of a whole group: 1 bar of 100 g more than it takes, without a label." in sheet


def test_the_teachers_sheet_has_clock_batches_and_sums(document: Callable[[str], str]) -> None:
    sheet = words_of(document(f"{DATE}/teacher.pdf"))
    for text in (
        "10:00 AM A Watch the lye teacher, 20 min",
        "Before the class: 15 minutes",
        "Put 406.8 g of sea salt on the table",
        "1 group of 2 and one of 1",
        "One batch for each group, made 2 times",
        "Emergency: 112",
    ):
        assert text in sheet, text
    workings = words_of(document(f"{DATE}/workings.pdf"))
    for text in ("Superfat, worst case both ways", "The sums"):
        assert text in workings


def label_pairs(html: str, name: str) -> list[str]:
    """Return the words of each front of a product with those of its back, which lie one after the other."""
    cells = [words_of(str(one)) for one in BeautifulSoup(html, "html.parser").find_all(class_="label")]
    return [" ".join(pair) for pair in zip(cells[::2], cells[1::2], strict=True) if name in pair[0]]


def test_labels_are_as_many_as_containers_and_share_the_variants_equally(document: Callable[[str], str]) -> None:
    labels = label_pairs(document(f"{DATE}/labels-salts.pdf"), "Plain salts")
    assert ["Lavender" in label for label in labels] == [True, False] * 3
    assert ["No scent" in label for label in labels] == [False, True] * 3
    for part in (
        "Plain salts",
        "Bath salts",
        "Net Wt 3.98 oz (113 g)",
        "Ingredients:",
        "Not to be eaten.",
        "Made at Test studio, 1 Test Row, Testham, teacher@test.example.",
        "Best used before the end of August 6, 2027 (keeps 6 months). Keep it dry.",
        "Made by hand in a class. Not tested for sale.",
        "Batch: SALT-270206",
        "Made February 6, 2027",
    ):
        assert part in labels[0], labels[0]


def test_a_jar_is_traced_to_its_batch(document: Callable[[str], str]) -> None:
    """Salts come from one pot, the bars from one pot for each group: each label bears a code that the teacher's sheet has."""
    sheet = words_of(document(f"{DATE}/teacher.pdf"))
    assert "Batch code: SALT-270206." in sheet
    assert "Batch code: BAR-270206-1 to BAR-270206-2 (2 pots)" in sheet
    bars = label_pairs(document(f"{DATE}/labels-bar.pdf"), "Plain bar")
    assert [f"BAR-270206-{pot}" in bar for pot, bar in zip((1, 1, 2), bars, strict=True)] == [True] * 3


def test_findings_that_were_accepted_or_stand_are_on_the_teachers_sheet(edition: Edition) -> None:
    findings = (
        Finding("one", Weight.CAUTION, Place("recipes/salts.yaml"), "One thing.", "Mend it.", accepted="It is meant."),
        caution("two", Place("classes/first/class.yaml"), "Another thing.", "Mend that."),
        caution("three", Place("classes/second/class.yaml"), "Elsewhere.", ""),
    )
    sheet = words_of(*made_at(replace(edition, findings=findings), f"{DATE}/teacher.pdf").values())
    assert "One thing. Accepted: It is meant." in sheet
    assert "Another thing. Mend that." in sheet
    assert "Elsewhere" not in sheet


def test_the_same_text_on_the_same_day_makes_the_same_documents(edition: Edition, publication: Publication) -> None:
    assert compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY)) == publication


def test_every_link_and_picture_leads_to_something_that_is_written(publication: Publication) -> None:
    written = {f"{one.folder}/{one.path}" for one in publication.documents} | {f"{one.folder}/{one.path}" for one in publication.files}
    for document in publication.documents:
        if document.path.endswith(".html"):
            for tag in attributes_of(document.html):
                link = tag.get("href") or tag.get("src") or ""
                if link and not re.match(r"[a-z]+:|#", link):
                    here = document.folder if link.startswith("/") else posixpath.dirname(f"{document.folder}/{document.path}")
                    assert posixpath.normpath(posixpath.join(here, unquote(link.partition("#")[0]).lstrip("/"))) in written, (
                        document.path,
                        link,
                    )


@pytest.mark.parametrize("path", ["site/index.html", CLASS, "site/about.html", "print/first/take-home-salts--500-g.html"])
def test_pages_are_whole_without_scripts_and_without_requests(document: Callable[[str], str], path: str) -> None:
    html = document(path)
    soup = BeautifulSoup(html, "html.parser")
    assert sure(soup.html)["lang"] == "en-US"
    assert sure(soup.title).get_text().strip()
    assert sure(soup.find("meta", {"name": "description"}))["content"]
    assert len(soup.find_all("h1")) == 1
    assert sure(sure(soup.body).find("a"))["class"] == ["skip"]
    levels = [int(heading.name[1]) for heading in soup.find_all(re.compile("^h[1-6]$"))]
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert not soup.find("script")
    assert "style=" not in html
    assert not [tag for tag in soup.find_all(["img", "link"]) if str(tag.get("src") or tag.get("href", "")).startswith("http")]


def test_no_amount_can_part_from_its_unit(publication: Publication) -> None:
    for document in publication.documents:
        for cell in BeautifulSoup(document.html, "html.parser").find_all(["td", "b"]):
            assert not re.search(r"\d (g|oz|min|°C)\b", cell.get_text()), (document.path, cell)


def test_the_studios_own_words_are_escaped(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path, pages__welcome_md="# Come & see\n\nText.\n"))
    assert ">Come &amp; see</h2>" in made_at(edition, "site/index.html")["site/index.html"]


def test_public_sheets_lie_on_the_site_and_are_linked(tmp_path: Path) -> None:
    text = FILES["classes/first/class.yaml"] + "take-home sheets: public\n"
    edition = read_edition(write_studio(tmp_path, classes__first__class_yaml=text))
    made = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY))
    page = next(document.html for document in made.documents if document.path == "classes/first.html")
    assert 'href="first--take-home-salts--500-g.html"' in page
    assert not [one for one in made.files if one.folder == "print"]


def test_the_shopping_page_has_its_styles_beside_it_also_where_all_take_home_sheets_are_public(tmp_path: Path) -> None:
    text = FILES["classes/first/class.yaml"] + "take-home sheets: public\n"
    edition = read_edition(write_studio(tmp_path, classes__first__class_yaml=text))
    shopping = reckon_shopping(edition.studio, edition.plans, Period(TODAY), today=TODAY)
    made = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY, shopping=shopping))
    page = next(BeautifulSoup(one.html, "html.parser") for one in made.documents if one.path == "shopping.html")
    linked = {f"print/{link['href']}" for link in page.find_all("link")}
    assert linked <= {f"{one.folder}/{one.path}" for one in made.files} and len(linked) == 5


def test_a_studios_own_template_counts_before_ours(edition: Edition, tmp_path: Path) -> None:
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "text.html").write_text("{{ view.title }} in my own way", encoding="utf-8")
    made = made_at(replace(edition, templates=Templates((tmp_path, LAYOUTS))), "site/about.html")
    assert made["site/about.html"] == "About us in my own way"
