"""A melt-and-pour soap in the UK, its base without a declared list as it begins: what else its label would need is asked as it is known.

Mica (CI 77019) is no colourant of Annex IV to Regulation (EC) No 1223/2009 and is declared as an ordinary ingredient; ultramarines
(CI 77007) are entry 113 of that annex, for all products.
"""

from pathlib import Path

import pytest

from builder import cli

ACCEPTED = "label-name-missing"
STATEMENT = (
    "allergen statement: {covers: extended list, contains: {Linalool: 1 to 2 %}, source: our-supplier, at: lot 12, known: supplier}\n"
)


@pytest.fixture
def studio(tmp_path: Path) -> Path:
    folder = tmp_path / "loft"
    words = ["--plain", "--region", "UK", "--product", "melt-and-pour soap", "--called", "Fish"]
    assert cli.main(["start", str(folder), *words]) == 0
    for name, kind in (("strawberry", "fragrance"), ("blue mica", "colourant")):
        cli.main(["add", "card", name, "--kind", kind, "--studio", str(folder)])
    (folder / "shelf" / "sources.yaml").write_text("our-supplier: {title: Scents of Weir, kind: trade}\n", encoding="utf-8")
    with (folder / "shelf" / "ingredients" / "strawberry.yaml").open("a", encoding="utf-8") as card:
        card.write("label name: {inci: [Parfum], plain: [fragrance], known: supplier}\n" + STATEMENT)
    choices = (
        "choices:\n  scent: {from: [strawberry, no scent], at most: 0.5 %}\n  colour: {from: [blue mica, no colour], at most: 0.2 %}\n"
    )
    recipe = folder / "recipes" / "fish.yaml"
    recipe.write_text(recipe.read_text(encoding="utf-8").replace("fills:", f"{choices}fills:"), encoding="utf-8")
    return folder


def found(studio: Path, colours: str, capsys: pytest.CaptureFixture[str]) -> str:
    with (studio / "shelf" / "ingredients" / "blue-mica.yaml").open("a", encoding="utf-8") as card:
        card.write(f"label name: {{inci: [{colours}], plain: [{colours}], known: supplier}}\n")
    capsys.readouterr()
    cli.main(["check", str(studio)])
    return capsys.readouterr().err


def test_no_order_is_asked_of_a_list_that_lacks_a_name(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    told = found(studio, "Mica, CI 77007", capsys)
    assert f"{ACCEPTED} (accepted)" in told and "label-order-open" not in told


def test_mica_beneath_a_colour_is_an_ordinary_ingredient(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert "colour-not-listed" not in found(studio, "Mica, CI 77007", capsys)


def test_a_dye_that_is_not_listed_is_still_told_beside_mica(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """CI 75480 (henna, lawsone) is not in Annex IV."""
    assert "CI 75480 is no colourant" in found(studio, "Mica, CI 75480", capsys)
