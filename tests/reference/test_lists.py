"""What can be listed and explained: complete, of the studio's own too, in lines that fit a terminal, and found by other words."""

import re
from pathlib import Path

import pytest

from builder import cli
from builder.finding_kinds import finding_kinds
from builder.list_names import ListName
from builder.reference.figures import figure_lines
from builder.reference.lists import LISTINGS
from builder.reference.terms import Term, find_term, terms
from builder.tasks.drafts import library_of

LIBRARY = library_of(None)
WIDEST = 80


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("lists") / "loft"
    assert cli.main(["start", str(folder), "--plain", "--product", "balm"]) == 0
    assert cli.main(["add", "container", "Weir tin", "--holds", "45 mL", "--shape", "round lid", "--studio", str(folder)]) == 0
    return folder


def listed(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert cli.main(["list", *words]) == 0
    return capsys.readouterr().out


def test_every_list_that_is_told_of_exists() -> None:
    assert set(ListName) == set(LISTINGS)


# By default each fourth list.
@pytest.mark.parametrize("what", [pytest.param(what, marks=pytest.mark.long if number % 4 else ()) for number, what in enumerate(ListName)])
def test_each_fits_eighty_columns_and_says_something(what: str, studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = listed(capsys, what, str(studio)).splitlines()
    assert len(lines) >= 2
    assert max(len(line) for line in lines) <= WIDEST


@pytest.mark.parametrize(
    ("what", "names"),
    [
        ("kinds", tuple(LIBRARY.products)),
        ("containers", tuple(one.name for one in LIBRARY.containers.values())),
        ("sheets", tuple(one.name for one in LIBRARY.label_sheets.values())),
        ("cautions", tuple(LIBRARY.cautions)),
        ("figures", tuple(LIBRARY.constants)),
        ("findings", tuple(finding_kinds())),
    ],
)
def test_each_is_complete(what: str, names: tuple[str, ...], capsys: pytest.CaptureFixture[str]) -> None:
    text = " ".join(listed(capsys, what).split())
    assert [name for name in names if name.split(" ")[0] not in text] == []
    assert len(listed(capsys, what).splitlines()) > len(set(names))


def test_the_studio_of_its_own_is_in_it(studio: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    assert "Weir tin" in listed(capsys, "containers", str(studio)) and "Weir tin" not in listed(capsys, "containers")
    monkeypatch.chdir(studio / "recipes")
    assert "Weir tin" in listed(capsys, "containers", "--like", "weir")
    assert "first-balm" in listed(capsys, "recipes") and "your-first-balm" in listed(capsys, "classes")


def test_words_choose_rows_and_other_words_are_understood(capsys: pytest.CaptureFixture[str]) -> None:
    clays = listed(capsys, "ingredients", "--like", "clay")
    assert "Kaolin clay" in clays and "Olive oil" not in clays
    assert listed(capsys, "label-sheets") == listed(capsys, "sheets")
    assert cli.main(["list", "contaners"]) == 2
    assert 'Did you mean "containers"?' in capsys.readouterr().err
    assert cli.main(["list", "ingredients", "--like", "moonseed"]) == 2
    capsys.readouterr()
    assert cli.main(["list", "colors"]) == 2
    assert "The lists are: kinds," in (told := capsys.readouterr().err) and "`stillroom list ingredients --like color`" in told
    assert "Iron oxide red" in listed(capsys, "ingredients", "--like", "color")
    assert cli.main(["list", "ingredients", "mica"]) == 2
    assert '`stillroom list ingredients --like "mica"`' in capsys.readouterr().err


def test_a_word_of_a_title_leads_to_its_page(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["reference", "roster"]) == 2
    assert 'Did you mean "choices"' in capsys.readouterr().err


@pytest.mark.parametrize("term", terms(), ids=lambda term: term.name)
def test_each_word_is_told_in_sentences(term: Term, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["explain", term.name]) == 0
    out = capsys.readouterr().out
    assert max(len(line) for line in out.splitlines()) <= WIDEST or term.name in finding_kinds()
    assert re.fullmatch(r"[A-Z].*\.", term.means, re.DOTALL) or term.means.startswith(("What ", "To "))
    assert all(find_term(word) == term for word in term.also_called)


def test_no_word_means_two_things() -> None:
    words = [word for term in terms() for word in (term.name, *term.also_called)]
    assert len(words) == len(set(words)) and [term.name for term in terms()] == sorted(term.name for term in terms())
    assert not set(words) & set(finding_kinds())


def test_a_figure_is_told_with_its_source() -> None:
    """The density of water at 20 degC and 101.325 kPa is 0.99821 g/mL by IAPWS-95, as it stands in handbook tables (CRC, 0.9982)."""
    value, source, known, *_ = figure_lines("water density at 20 degC", LIBRARY)
    assert value == "0.99821 g/mL"
    assert source.startswith("Source: Formulation 1995") and known == "How it is known: computed."


def test_every_figure_can_be_explained() -> None:
    assert [name for name in LIBRARY.constants if len(figure_lines(name, LIBRARY)) < 3] == []


def test_limits_of_an_ingredient_are_told_with_their_sources(capsys: pytest.CaptureFixture[str]) -> None:
    """Annex V entry 29 of Regulation (EC) No 1223/2009: phenoxyethanol, 1,0 %."""
    assert cli.main(["explain", "phenoxyethanol"]) == 0
    out = capsys.readouterr().out
    assert "at most 1 % of the product" in out and "Annex V" in out and "entry 29" in " ".join(out.split())


@pytest.mark.parametrize(("typed", "near"), [("suprfat", "superfat"), ("lye-to-much", "lye-too-much"), ("olve oil", "Olive oil")])
def test_what_is_not_known_brings_the_nearest(typed: str, near: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["explain", typed]) == 2
    assert f'"{near}"' in capsys.readouterr().err
