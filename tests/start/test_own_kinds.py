"""A kind of product of the studio's own begins as what it is like; a class begins from a recipe that is sound."""

from pathlib import Path

import pytest

from builder import cli
from builder.words.nearest import nearest

KIND = "shower steamer: {identity: Shower steamer, contact: bath, made with lye: no, declared by: weight, like: [bath bomb]}\n"


@pytest.fixture
def studio(tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Path:
    assert cli.main(["start", str(tmp_path / "loft"), "--plain", "--product", "balm"]) == 0
    monkeypatch.chdir(tmp_path / "loft")
    Path("shelf").mkdir()
    Path("shelf/products.yaml").write_text(KIND, encoding="utf-8")
    capsys.readouterr()
    return tmp_path / "loft"


def test_it_begins_as_what_it_is_like(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["add", "recipe", "Morning steamer", "--product", "shower steamer"]) == 0
    text = (studio / "recipes" / "morning-steamer.yaml").read_text(encoding="utf-8")
    assert "\nproduct: shower steamer\n" in text and "sodium bicarbonate: 52 %" in text
    assert cli.main(["add", "class", "Steamers", "--recipe", "morning-steamer"]) == 0
    lesson = (studio / "classes" / "steamers" / "lesson.md").read_text(encoding="utf-8")
    assert text.startswith("# yaml-language-server") and "# Begun as bath bomb, which shower steamer is like" in text
    # How a bath bomb is made is not how a kind is made that only shares its limits.
    assert "{sodium bicarbonate}" in lesson and "Say here" in lesson and "fizz" not in lesson and "mould" not in lesson
    assert "stop" not in capsys.readouterr().err


def test_a_class_begins_from_a_sound_recipe_alone(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    recipe = studio / "recipes" / "first-balm.yaml"
    recipe.write_text(recipe.read_text(encoding="utf-8").replace("olive oil", "olve oil"), encoding="utf-8")
    assert cli.main(["add", "class", "Another", "--recipe", "first-balm"]) == 2
    assert "mend first-balm first" in capsys.readouterr().err and not (studio / "classes" / "another").exists()


def test_whoever_asks_for_a_kind_that_is_not_there_is_told_how_it_becomes_one(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["start", str(tmp_path / "x"), "--plain", "--product", "shower steamer"]) == 2
    assert "`stillroom reference products.yaml`" in capsys.readouterr().err


def test_a_list_knows_either_spelling(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["list", "containers", "--like", "mold"]) == 0
    american = capsys.readouterr().out
    assert cli.main(["list", "containers", "--like", "mould"]) == 0
    assert capsys.readouterr().out == american


@pytest.mark.parametrize(
    ("typed", "names", "first"),
    [
        ("lavander oil", ("Avocado oil", "Lavender essential oil", "Olive oil"), "Lavender essential oil"),
        ("clear melt and pour base", ("Cream base", "Melt-and-pour soap base, clear", "Lotion base"), "Melt-and-pour soap base, clear"),
        ("2 oz mold", ("round mould cavity", "8 fl oz jar"), "round mould cavity"),
        ("olve oil", ("Olive oil", "Clove bud essential oil", "Canola oil"), "Olive oil"),
    ],
)
def test_what_is_meant_comes_first(typed: str, names: tuple[str, ...], first: str) -> None:
    assert nearest(typed, names)[0] == first


def test_what_is_like_nothing_gets_nothing() -> None:
    assert nearest("optiphen", ("Olive oil", "Shea butter")) == ()
