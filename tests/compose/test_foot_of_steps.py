"""What stands at the foot and at the head of each page of a class's steps: first aid of dangers, and what goes on with its cautions."""

from collections.abc import Callable

import pytest
from bs4 import BeautifulSoup

from builder.compose.edition import Edition
from builder.compose.formula.hazards import cautions_for
from builder.compose.teaching.lesson_flow import first_aid_of
from builder.model.hazard import Hazard
from tests.making import sure

DATE = "print/first/2027-02-06"


def plain(words: str) -> str:
    return " ".join(words.replace("\u00a0", " ").split())


@pytest.mark.parametrize("name", ["teacher", "bench-steps"])
def test_first_aid_of_every_danger_and_the_numbers_stand_at_the_foot(document: Callable[[str], str], name: str) -> None:
    sheet = BeautifulSoup(document(f"{DATE}/{name}.pdf"), "html.parser")
    foot = plain(sure(sheet.select_one("aside.at-foot")).get_text(" "))
    dangers = {plain(sure(one.select_one(".signal")).get_text(" ")).partition(" ")[2] for one in sheet.select(".caution.is-danger")}
    assert (dangers or name == "bench-steps") and all(f"{danger}." in foot for danger in dangers)
    assert "Emergency: 112" in foot


def test_a_part_names_its_cautions_for_the_page_onto_which_it_runs(document: Callable[[str], str]) -> None:
    parts = BeautifulSoup(document(f"{DATE}/teacher.pdf"), "html.parser").select(".part")
    warned = [part for part in parts if part.select(".caution")]
    assert warned
    for part in warned:
        said = str(sure(part.select_one("[data-goes-on]"))["data-goes-on"])
        for caution in part.select(".caution .signal"):
            word, _, danger = plain(caution.get_text(" ")).partition(" ")
            assert word in said and f"{danger}." in said


def test_every_caution_that_is_no_danger_says_its_first_aid_in_its_own_box(document: Callable[[str], str]) -> None:
    sheet = BeautifulSoup(document(f"{DATE}/teacher.pdf"), "html.parser")
    for caution in sheet.select(".caution.is-warning"):
        assert "If it happens." in caution.get_text(" ")


def test_what_lye_and_fresh_soap_share_of_first_aid_is_said_once(edition: Edition) -> None:
    texts = cautions_for(edition.studio, (Hazard.CAUSTIC, Hazard.RAW_SOAP))
    said = first_aid_of(texts)
    shared = [one for one in said if len(one.names) == 2]
    assert len(shared) == 1 and "In eyes:" in shared[0].what and "Swallowed:" in shared[0].what
    assert {name for one in said for name in one.names} == {text.name for text in texts}
