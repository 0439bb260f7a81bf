"""`stillroom add recipe --from`, as somebody types it: what is matched, asked and refused, and what is said of the lye."""

import io
import os
import pty
import re
import shutil
import subprocess
import sys
from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path

import pytest

from builder import cli
from builder.library import CONTENT
from builder.model.recipe.recipe import AmountsAs, Recipe
from builder.read.studios import read_studio
from tests.notebook.tables import parted, soap_sheet, workbook

SOAP = [("Ingredient", "Weight (g)"), ("Olive oil", "500.5"), ("Coconut oil", "299.5"), ("Shea butter", "200")]
LYE = [("Sodium hydroxide", "130"), ("Water", "300")]
FROM = ("--product", "cold-process soap", "--from")


@pytest.fixture(scope="module")
def begun(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("begun") / "loft"
    assert cli.main(["start", str(folder), "--plain", "--product", "bath salts"]) == 0
    return folder


@pytest.fixture
def studio(begun: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr("sys.stdin", io.StringIO())
    return shutil.copytree(begun, tmp_path / "loft")


def add(studio: Path, rows: Sequence[Sequence[str]] | bytes, *options: str, ending: str = "csv") -> int:
    table = studio.parent / f"notebook.{ending}"
    table.write_bytes(rows if isinstance(rows, bytes) else parted(";", ",", rows).encode("utf-8-sig"))
    return cli.main(["add", "recipe", "Weir bar", "--studio", str(studio), *FROM, str(table), *options])


def recipe_in(studio: Path) -> Recipe:
    read, findings = read_studio(studio, CONTENT)
    assert findings == []
    return read.recipes["weir-bar"]


def lye_for(told: str) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """Read back the lye as it stands, the superfat that it leaves, the superfat asked for, and the lye for that one."""
    stands = re.search(r"Lye as it stands: ([\d.]+) g", told)
    leaves = re.search(r"superfat of (-?[\d.]+) %", told)
    asked = re.search(r"\(([\d.]+) %\) it takes ([\d.]+) g", told)
    assert stands and leaves and asked
    return Fraction(stands[1]), Fraction(leaves[1]) / 100, Fraction(asked[1]) / 100, Fraction(asked[2])


@pytest.mark.parametrize("superfat", ["2", "5", "8"])
def test_the_lye_of_the_notebook_stands_beside_what_it_should_be(studio: Path, capsys: pytest.CaptureFixture[str], superfat: str) -> None:
    assert add(studio, [*SOAP, *LYE, ("Superfat", f"{superfat} %")]) == 0
    recipe = recipe_in(studio)
    assert recipe.amounts_as is AmountsAs.WEIGHTS and recipe.lye is not None and recipe.lye.superfat is None
    assert [alkali.weighs.grams for alkali in recipe.lye.alkalis if alkali.weighs] == [130]
    assert [line.ingredient.text for line in recipe.lines] == ["olive oil", "coconut oil", "shea butter"]
    lye, leaves, asked, takes = lye_for(capsys.readouterr().out)
    assert asked == Fraction(superfat) / 100
    # By the definition of superfat lye goes as one less the superfat, which is printed to 0.1 %; lye to the 0.1 g of its scale, and down.
    by_the_last_digit = lye * (1 - asked) / (1 - leaves) ** 2 * Fraction("0.0005")
    assert abs(takes - lye * (1 - asked) / (1 - leaves)) < Fraction("0.1") + by_the_last_digit


@pytest.mark.parametrize("lye", ["160", "300"])
def test_too_much_lye_stops_and_is_said_loudly(studio: Path, capsys: pytest.CaptureFixture[str], lye: str) -> None:
    assert add(studio, [*SOAP, ("Sodium hydroxide", lye), ("Water", "300")]) == 1
    told = capsys.readouterr()
    assert "lye-too-much (stop)" in told.err
    assert "TOO MUCH LYE" in told.out and "DO NOT MAKE THIS BATCH" in told.out
    assert lye_for(told.out)[1] < 0


def test_sound_lye_is_not_cried_about(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert add(studio, [*SOAP, *LYE]) == 0
    told = capsys.readouterr()
    assert "TOO MUCH" not in told.out and "worst case" not in told.out and told.err == ""


def test_a_workbook_does_as_well(studio: Path) -> None:
    assert add(studio, workbook(soap_sheet), ending="xlsx") == 0
    assert [line.ingredient.text for line in recipe_in(studio).lines] == ["olive oil", "coconut oil", "shea butter"]


def test_all_names_that_are_not_known_are_told_at_once_and_nothing_is_written(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = sorted(studio.rglob("*"))
    assert add(studio, [*SOAP, ("lye", "130"), ("olve oil", "20"), ("kaolin clay", ""), ("Water", "300")]) == 2
    told = capsys.readouterr()
    assert 'line 5: no ingredient is called "lye". Did you mean "Sodium hydroxide" or "Potassium hydroxide"?' in told.err
    assert 'line 6: no ingredient is called "olve oil". Did you mean "Olive oil"' in told.err
    assert "line 7: kaolin clay has no amount" in told.err
    assert '--means "lye=..."' in told.err
    assert sorted(studio.rglob("*")) == before


def test_what_a_name_means_can_be_said_beforehand(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rows = [*SOAP, ("lye", "130"), ("Distilled water", "300"), ("a lucky stone", "9")]
    means = ("--means", "lye=sodium hydroxide", "--means", "a lucky stone=nothing")
    assert add(studio, rows, *means) == 0
    told = capsys.readouterr().out
    assert '"lye" is taken for Sodium hydroxide.' in told and '"Distilled water" is taken for Water.' in told
    assert recipe_in(studio).lye is not None


@pytest.mark.parametrize("means", ["lye", "lye=sodium hydrox"])
def test_a_meaning_that_is_none_is_refused(studio: Path, capsys: pytest.CaptureFixture[str], means: str) -> None:
    assert add(studio, [*SOAP, *LYE], "--means", means) == 2
    assert "write the name in the table, =, and the name known here" in capsys.readouterr().err


def test_lye_without_water_and_an_ingredient_twice_are_told(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert add(studio, [*SOAP, ("Olive oil", "20"), LYE[0]]) == 2
    told = capsys.readouterr().err
    assert "lye without water" in told and "lines 2 and 5: Olive oil stands twice" in told


def test_percentages_with_lye_become_weights_and_without_stay(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    oils = [("Ingredient", "% of oils"), ("Olive oil", "72.5"), ("Coconut oil", "27.5")]
    assert add(studio, [*oils, ("Sodium hydroxide", "13.2"), ("Water", "30")]) == 0
    recipe = recipe_in(studio)
    assert recipe.lye is not None and [one.weighs.grams for one in recipe.lye.alkalis if one.weighs] == [132]
    assert "10 g for each percent" in capsys.readouterr().out
    (studio / "recipes/weir-bar.yaml").unlink()
    assert add(studio, [*oils, ("Superfat", "6")]) == 0
    recipe = recipe_in(studio)
    assert recipe.amounts_as is AmountsAs.PERCENT_OF_OILS and recipe.lye is not None and recipe.lye.superfat is not None
    assert recipe.lye.superfat.fraction == Fraction(6, 100)
    assert "how much the oils take is worked out here" in capsys.readouterr().out


@pytest.mark.long
def test_who_sits_at_a_terminal_is_asked(studio: Path) -> None:
    table = studio.parent / "notebook.csv"
    table.write_text(parted(",", ".", [*SOAP, ("lye", "130"), ("Water", "300"), ("a lucky stone", "9")]), encoding="utf-8")
    ours, theirs = pty.openpty()
    root = Path(__file__).parents[2]
    command = [sys.executable, "-m", "builder", "add", "recipe", "Weir bar", "--studio", str(studio), *FROM, str(table)]
    process = subprocess.Popen(command, stdin=theirs, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, cwd=root, text=True, env=os.environ)
    os.write(ours, b"the caustic\n1\nnothing\n")
    told, _ = process.communicate(timeout=120)
    os.close(ours)
    os.close(theirs)
    assert process.returncode == 0, told
    assert 'what is "lye"?' in told and 'No ingredient is called "the caustic".' in told and "Lye as it stands: 130 g" in told
    assert [alkali.name.text for alkali in (recipe_in(studio).lye or pytest.fail("no lye")).alkalis] == ["sodium hydroxide"]
