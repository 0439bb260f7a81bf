"""The shopping list in words: groups, sums, notes; as documents for the studio only, and as the command prints it."""

import shutil
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from builder import cli
from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.compose.supplies.shopping_words import GROUPS, shop_list
from builder.compose.views.shopping import ShopList, ShopRow
from builder.library import LAYOUTS
from builder.model.document import Folder
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.supplies.shopping import Period, Shopping
from builder.reckon import reckon_shopping
from tests.compose.conftest import TODAY, read_edition, write_studio

SUPPLIES = """
- {ingredient: sea salt, pack: 1 kg, price: 4321.09}
- {ingredient: olive oil, pack: 1 kg, price: 20.00, keeps: 1 week}
- {container: 4 fl oz jar, pack: 12, price: 8.00}
"""
STOCK = """
- {ingredient: sea salt, have: 777 g, counted: 2027-01-08}
- {ingredient: baking soda, have: 2 kg, counted: 2026-10-01}
"""


@pytest.fixture(scope="module")
def shopped(tmp_path_factory: pytest.TempPathFactory) -> tuple[Edition, Shopping, ShopList]:
    folder = write_studio(tmp_path_factory.mktemp("shop"), shelf__supplies_yaml=SUPPLIES, inventory_yaml=STOCK)
    edition = read_edition(folder)
    shopping = reckon_shopping(edition.studio, edition.plans, Period(TODAY), today=TODAY, held_back=("other",))
    return edition, shopping, plainly(shop_list(edition.studio, shopping))


def plainly(listed: ShopList) -> ShopList:
    """Return a list with ordinary spaces."""
    rows = [replace(group, rows=tuple(replace(row, **spaced(row)) for row in group.rows)) for group in listed.groups]
    return replace(listed, groups=tuple(rows), notes=tuple(note.replace("\u00a0", " ") for note in listed.notes))


def spaced(row: ShopRow) -> dict[str, Any]:
    return {name: text.replace("\u00a0", " ") for name, text in vars(row).items() if isinstance(text, str)}


def rows(listed: ShopList) -> dict[str, ShopRow]:
    return {row.name: row for group in listed.groups for row in group.rows}


def test_each_kind_of_card_has_its_group() -> None:
    assert sorted(kind for kinds in GROUPS.values() for kind in kinds) == sorted(IngredientKind)


# Two jars of 113 g for each of three and of five students, six tenths of them salt: 3 x 2 x 67.8 g and 5 x 2 x 67.8 g, 1084.8 g in all.
def test_a_row_says_what_is_needed_when_what_is_there_what_to_buy_and_what_is_left(shopped: tuple[Edition, Shopping, ShopList]) -> None:
    salt = rows(shopped[2])["Sea salt"]
    assert (salt.needed, salt.days, salt.stock) == ("1085 g", "Feb 6: 407 g; Mar 6: 678 g", "777 g")
    assert (salt.packs, salt.price, salt.left, salt.buys) == ("1 × 1 kg", "$4,321.09", "692 g", True)


def test_what_is_there_is_not_bought_and_what_has_no_price_is_named(shopped: tuple[Edition, Shopping, ShopList]) -> None:
    listed = shopped[2]
    soda, alkali = rows(listed)["Sodium bicarbonate"], rows(listed)["Sodium hydroxide"]
    assert (soda.packs, soda.price, soda.buys) == ("nothing", "", False)
    assert alkali.packs.endswith(" g short")
    assert alkali.price == "no price known"
    assert {group.title: group.price for group in listed.groups}["Alkali"] == "no price known"
    assert [note for note in listed.notes if note.startswith("No price known: ") and "sodium hydroxide" in note]


def test_where_no_price_is_known_at_all_the_list_says_so_once(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path))
    shopping = reckon_shopping(edition.studio, edition.plans, Period(TODAY), today=TODAY)
    listed = plainly(shop_list(edition.studio, shopping))
    assert {listed.total, *(group.price for group in listed.groups)} == {"no price known"}
    assert not [note for note in listed.notes if note.startswith("No price known: ")]
    assert [note for note in listed.notes if "shelf/supplies.yaml" in note]


def test_groups_add_up_to_the_till(shopped: tuple[Edition, Shopping, ShopList]) -> None:
    _, shopping, listed = shopped
    assert listed.total == f"at least ${float(shopping.total):,.2f}"
    assert shopping.total == sum(one.purchase.price for one in shopping.wanted if one.purchase)
    assert [group.title for group in listed.groups] == [
        "Oils, butters and fatty acids", "Alkali", "Water and other liquids", "Salts, sugars and starches", "Scents and flavours",
        "Containers",
    ]  # fmt: skip


def test_notes_tell_of_old_counts_classes_held_since_and_classes_held_back(shopped: tuple[Edition, Shopping, ShopList]) -> None:
    notes = " ".join(shopped[2].notes)
    assert "Counted more than 60 days ago: sodium bicarbonate (October 1, 2026). Count again" in notes
    assert "Held since the oldest of the counts: The first class (Jan 10)." in notes
    assert "Not counted, since a stop holds them back: other." in notes


def test_what_does_not_keep_is_bought_later(shopped: tuple[Edition, Shopping, ShopList]) -> None:
    assert rows(shopped[2])["Olive oil"].note == "Bought for Feb 6 it does not keep that long: buy what is for Mar 6 later."


def test_the_list_and_the_stock_stay_in_the_studio(shopped: tuple[Edition, Shopping, ShopList]) -> None:
    edition, shopping, _ = shopped
    made = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY, shopping=shopping)).documents
    assert {document.path for document in made if document.path.startswith("shopping")} == {"shopping.html", "shopping.pdf"}
    telling = [document for document in made if "4,321.09" in document.html or "777" in document.html or "In stock" in document.html]
    assert telling
    assert {document.folder for document in telling} == {Folder.PRINT}


def test_without_a_date_to_shop_for_there_is_no_document(shopped: tuple[Edition, Shopping, ShopList]) -> None:
    edition, _, _ = shopped
    never = reckon_shopping(edition.studio, edition.plans, Period(date(2028, 1, 1)), today=TODAY)
    made = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY, shopping=never)).documents
    assert not [document for document in made if "shopping" in document.path]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> str:
    """Return the sound studio of the findings with a pack of wax, some of it in stock, and a second and a past date."""
    here = tmp_path_factory.mktemp("shop") / "studio"
    shutil.copytree(Path(__file__).parent.parent / "findings" / "_sound", here)
    (here / "shelf").mkdir()
    (here / "shelf" / "supplies.yaml").write_text("- {ingredient: emulsifying wax, pack: 1 kg, price: 4321.09}\n", encoding="utf-8")
    (here / "inventory.yaml").write_text("- {ingredient: emulsifying wax, have: 7 g, counted: 2027-01-02}\n", encoding="utf-8")
    file = here / "classes" / "one-lotion" / "class.yaml"
    dates = "  - {on: 2027-01-03 10:00, enrolled: 2}\n  - {on: 2027-05-01 10:00, enrolled: 3}\n"
    file.write_text(file.read_text(encoding="utf-8") + dates, encoding="utf-8")
    return str(here)


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    status = cli.main([*arguments, "--today", TODAY.isoformat()])
    printed = capsys.readouterr()
    return status, printed.out.replace("\u00a0", " "), printed.err


# Seven bottles of 113 g and four of them, six per cent of it wax: 47.46 g and 27.12 g, by a scale of 0.1 g 47.5 g and 27.1 g.
def test_the_command_prints_the_list(folder: str, capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "shop", folder)
    assert status == 0
    assert out.startswith("For 2 dates, March 6, 2027 to May 1, 2027. Worked out on January 15, 2027.")
    lines = [line.split() for line in out.splitlines()]
    at = next(number for number, line in enumerate(lines) if line[:2] == ["Emulsifying", "wax"])
    assert lines[at][2:] == ["74.6", "g", "7", "g", "1", "×", "1", "kg", "$4,321.09", "932", "g"]
    assert lines[at + 1] == ["Mar", "6:", "47.5", "g;", "May", "1:", "27.1", "g"]
    assert max(len(line) for line in out.splitlines()) <= 110


def test_the_command_keeps_to_days_and_classes(folder: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert "For 1 date, March 6, 2027." in run(capsys, "shop", folder, "--until", "2027-03-06")[1]
    assert "For 1 date, May 1, 2027." in run(capsys, "shop", folder, "--from", "2027-03-07", "--class", "one-lotion")[1]
    assert run(capsys, "shop", folder, "--class", "one-bar")[1] == "There is no date to shop for.\n"
    # The class of January 3 is past, whatever is asked for.
    assert run(capsys, "shop", folder, "--from", "2027-01-01", "--until", "2027-02-01")[1] == "There is no date to shop for.\n"


def test_the_command_refuses_what_cannot_be(folder: str, capsys: pytest.CaptureFixture[str]) -> None:
    status, _, err = run(capsys, "shop", folder, "--class", "one-lotoin")
    assert (status, err) == (2, 'stillroom: there is no class "one-lotoin". Did you mean "one-lotion"?\n')
    status, _, err = run(capsys, "shop", folder, "--until", "2027-01-10")
    assert status == 2
    assert "before 2027-01-15" in err
