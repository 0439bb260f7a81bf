"""What the teacher's sheet says of each person's allergies: where an ingredient was met, what was looked through, what to ask."""

from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest

from builder.compose.edition import Edition
from builder.compose.roster.allergy_words import allergy_note, stands_with_the_people, view_allergies
from builder.model.finding import caution
from builder.model.roster.roster import Guest
from builder.reckon.roster.allergies import reckon_allergies
from builder.reckon.roster.allergy_terms import vocabulary_of


@pytest.fixture
def said(edition: Edition) -> Callable[..., list[tuple[str, list[str]]]]:
    sheet = edition.plans[0]

    def say(written: str, chosen: Mapping[tuple[str, str], str] | None = None, *, waiting: bool = False) -> list[tuple[str, list[str]]]:
        chosen = chosen or {}
        terms = vocabulary_of(edition.studio).terms(written)
        guest = Guest("Ada Loom", None, written, chosen, reckon_allergies(edition.studio, sheet.studio_class, terms, chosen))
        views = view_allergies(replace(sheet, guests=() if waiting else (guest,), waiting=(guest,) if waiting else ()))
        return [(view.who, [line.replace("\u00a0", " ") for line in view.lines]) for view in views]

    return say


def test_an_ingredient_is_named_with_its_recipe_and_phase(said: Callable[..., list[tuple[str, list[str]]]]) -> None:
    ((who, lines),) = said("glycerin")
    assert who == "Ada Loom: glycerin"
    assert lines == ["“glycerin”, in what the group makes: Glycerin (Plain salts, warm), by its name."]


def test_an_option_is_not_for_this_person_and_one_that_was_chosen_is_asked_about(said: Callable[..., list[tuple[str, list[str]]]]) -> None:
    met = "Lavender essential oil (Plain salts, choice of scent), it is one of the kind essential oil"
    assert said("perfume")[0][1] == [f"“perfume”, among the options, not for this person: {met}."]
    chosen = {("salts", "scent"): "Lavender essential oil"}
    assert said("perfume", chosen)[0][1] == [f"“perfume”, among the options, chosen by this person, so ask again: {met}."]


def test_what_was_looked_through_is_said_and_nothing_is_promised(said: Callable[..., list[tuple[str, list[str]]]]) -> None:
    ((_, (line,)),) = said("sesame")
    assert line.startswith("“sesame”: nothing named so in Plain salts (3 ingredients, 1 option) and Plain bar (")
    assert line.endswith("Traces and cross-contact are not known here.")


def test_what_is_not_understood_is_asked_about_and_never_called_absent(said: Callable[..., list[tuple[str, list[str]]]]) -> None:
    assert said("penicillin")[0][1] == [
        "“penicillin” is not understood here. Ask what is meant, and look through the lists of ingredients yourself."
    ]
    ((_, lines),) = said("sesame, but only raw")
    assert "“but only raw” is not understood here (“but”, “only”, “raw”)" in lines[1]


def test_who_waits_is_told_apart(said: Callable[..., list[tuple[str, list[str]]]]) -> None:
    assert said("glycerin", waiting=True)[0][0] == "Ada Loom, on the waiting list: glycerin"


def test_who_has_no_allergy_is_not_listed(said: Callable[..., list[tuple[str, list[str]]]]) -> None:
    assert said("none") == said("") == []


def test_the_note_names_what_only_suppliers_know(edition: Edition) -> None:
    assert "nothing else" in allergy_note(edition.studio, edition.plans[0])


def test_a_finding_about_a_person_stands_with_the_person_until_it_is_accepted() -> None:
    finding = caution("allergy-in-choice")
    assert stands_with_the_people(finding)
    assert not stands_with_the_people(replace(finding, accepted="We have talked."))
    assert not stands_with_the_people(caution("roster-over-enrolled"))
