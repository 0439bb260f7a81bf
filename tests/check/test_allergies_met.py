"""Whose own allergy is met stops the class until it is settled with them, and of those who wait it cautions: guests made for it."""

from dataclasses import replace
from datetime import datetime

import pytest

from builder.check.roster.allergies import find_allergies_met
from builder.model.dates.studio_class import ClassDate
from builder.model.place import Place
from builder.model.roster.allergy import Allergy, AllergyFound, By
from builder.model.roster.roster import Guest
from builder.reckon.teaching.classes import reckon_class
from tests.check.test_at_the_edge import levels
from tests.making import told
from tests.reckon.test_guests import LOTION, STUDIO

ONE = reckon_class(STUDIO, LOTION, ClassDate(datetime(2027, 3, 6, 10), 6, (1, 0)))[0]
IN_ALL = AllergyFound("Meadow lotion", "sweet almond oil", "oils", "", By.FAMILY, "tree nuts")
OFFERED = AllergyFound("Meadow lotion", "lavender oil", "", "scent", By.NAME, "lavender")
CHOSEN = replace(OFFERED, taken=True)
BOTH = ("recipe", "choice")
SENTENCE = "Asked her doctor and wears gloves."


def guest(*found: AllergyFound, unclear: tuple[str, ...] = (), settled: str = "") -> Guest:
    compared = (Allergy("what was written", found, unclear),)
    line = Place("roster.csv", 4)
    return Guest("Bo", 30, "what was written", {}, compared, settled, place=line, settled_place=line)


@pytest.mark.parametrize(
    ("one", "comes", "waits"),
    [
        (guest(), [], []),
        (guest(IN_ALL), ["allergy-in-recipe stop"], ["allergy-in-recipe caution"]),
        (guest(CHOSEN), ["allergy-in-choice stop"], ["allergy-in-choice caution"]),
        # What is only offered nobody has taken.
        (guest(OFFERED), [], []),
        (
            guest(IN_ALL, CHOSEN),
            ["allergy-in-recipe stop", "allergy-in-choice stop"],
            ["allergy-in-recipe caution", "allergy-in-choice caution"],
        ),
        (guest(unclear=("x",)), ["allergy-unclear caution"], ["allergy-unclear caution"]),
        (guest(IN_ALL, settled="ok"), ["allergy-in-recipe stop", "settled-unclear caution"], ["allergy-in-recipe caution"]),
        (guest(settled="ok"), [], []),
    ],
)
def test_an_allergy_that_is_met_stops_the_class_of_those_who_come(one: Guest, comes: list[str], waits: list[str]) -> None:
    assert levels(find_allergies_met(replace(ONE, guests=(one,), waiting=()))) == comes
    assert levels(find_allergies_met(replace(ONE, guests=(), waiting=(one,)))) == waits


def test_what_was_settled_in_a_sentence_is_accepted_for_that_person_alone() -> None:
    one, other = guest(IN_ALL, settled=SENTENCE), replace(guest(IN_ALL), name="Cy", place=Place("roster.csv", 5))
    settled, open_one = told(find_allergies_met(replace(ONE, guests=(one, other), waiting=())))
    assert not settled.stops and open_one.stops
    # Of who waits nothing is settled yet that would hold anybody back.
    (waits,) = told(find_allergies_met(replace(ONE, guests=(), waiting=(one,))))
    assert waits.accepted is None


def test_nobody_is_named_and_the_line_and_the_date_are() -> None:
    one = guest(IN_ALL, CHOSEN, unclear=("x",), settled="ok")
    found = told(find_allergies_met(replace(ONE, guests=(one,), waiting=())))
    assert len(found) == 4
    for finding in found:
        said = f"{finding.wrong} {finding.remedy}"
        assert "Bo" not in said and "what was written" not in said and '"ok"' not in said
        assert "person of the roster for 2027-03-06 10:00 (line 4)" in finding.wrong
    (without,) = told(find_allergies_met(replace(ONE, guests=(guest(IN_ALL),), waiting=(), date=None)))
    assert without.wrong.startswith("A person of the roster (line 4) ")
