"""How a seat is booked: by the studio's own link, or a mail that is filled in; on the terms of the class, and else on the studio's."""

import re
from pathlib import Path
from urllib.parse import unquote

import pytest
from bs4 import BeautifulSoup

from tests.compose.conftest import FILES, read_edition, write_studio
from tests.composing import composed
from tests.published import squeeze

TERMS = """booking: {until: 2 days, includes: All that you use., children: Under 18 with an adult., refunds: In full until 7 days before.}
where: {street: 1 Test Row, town: Testham, country: US, map: "https://test.example/map", access: Two steps.}
region: US
"""
DATES = """dates:
  - {on: 2027-02-06 10:00, enrolled: 3}
  - {on: 2027-03-06 10:00, enrolled: 5}
  - {on: 2027-03-20 10:00, enrolled: 1, link: "https://test.example/book/march"}
  - {on: 2027-04-03 10:00, cancelled: yes}
"""


def page(tmp_path: Path, of_class: str = "") -> str:
    first = re.sub(r"dates:\n(?:  - .*\n)*", of_class + DATES, FILES["classes/first/class.yaml"])
    changed = {"studio_yaml": FILES["studio.yaml"].replace("region: US\n", TERMS), "classes__first__class_yaml": first}
    (document,) = composed("class page", read_edition(write_studio(tmp_path, **changed)))
    return document.html.replace("\u00a0", " ").replace("&amp;", "&")


def test_each_date_says_what_to_do_about_it(tmp_path: Path) -> None:
    rows = re.findall(r"<li class=\"(?:free|full|cancelled)\".*?</li>", page(tmp_path), flags=re.DOTALL)
    free, full, own, cancelled = rows
    assert "Book until Thursday, February 4, 2027" in free and ">Ask for a seat<" in free and "10:00 – 11:00 AM" in free
    (mail,) = re.findall(r'href="(mailto:[^"]*)"', free)
    assert unquote(mail) == "mailto:teacher@test.example?subject=Ask for a seat: The first class, Saturday, February 6, 2027, 10:00 AM"
    assert ">Join the waiting list<" in full and "Book until" not in full
    assert (
        '<a class="action" href="https://test.example/book/march">Book'
        '<span class="heard">: The first class, Saturday, March 20, 2027, 10:00 AM<' in own
    )
    assert "href" not in cancelled and "Book until" not in cancelled


def test_the_terms_of_the_class_come_before_those_of_the_studio(tmp_path: Path) -> None:
    html = page(tmp_path, "booking: {includes: Your jar and your bar.}\n")
    assert "Your jar and your bar." in html and "All that you use." not in html
    assert "In full until 7 days before." in html and "Under 18 with an adult." in html
    assert "Seats as of January 15, 2027." in html


def test_what_is_said_of_children_stands_where_children_may_come(tmp_path: Path) -> None:
    adults = re.sub("youngest: 16", "youngest: 18", FILES["classes/first/class.yaml"])
    changed = {"studio_yaml": FILES["studio.yaml"].replace("region: US\n", TERMS), "classes__first__class_yaml": adults}
    (document,) = composed("class page", read_edition(write_studio(tmp_path, **changed)))
    assert "Under 18 with an adult." not in document.html and "All that you use." in document.html


@pytest.mark.parametrize(
    ("age", "expected"), [("18", "Ages 16 and up, under 18 with an adult"), ("16", "Ages 16 and up"), ("12", "Ages 16 and up")]
)
def test_who_comes_with_an_adult_is_said_beside_the_least_age(age: str, expected: str, tmp_path: Path) -> None:
    terms = TERMS.replace("until: 2 days", f"until: 2 days, with an adult under: {age}")
    edition = read_edition(write_studio(tmp_path, studio_yaml=FILES["studio.yaml"].replace("region: US\n", terms)))
    for name, within in (("class page", ".quick"), ("catalogue", ".card")):
        (document,) = composed(name, edition)
        said = BeautifulSoup(document.html, "html.parser").select_one(within)
        assert said is not None
        lines = [squeeze(line) for line in said.get_text("|").split("|")]
        assert expected in lines, lines
    for name in ("home page", "visit"):
        (document,) = composed(name, edition)
        assert f"Under {age} with an adult. Under 18 with an adult." in squeeze(BeautifulSoup(document.html, "html.parser").get_text(" "))


@pytest.mark.parametrize("text", ["1 Test Row", "Two steps.", 'href="https://test.example/map"'])
def test_where_it_is_stands_on_the_page(tmp_path: Path, text: str) -> None:
    assert text in page(tmp_path)
