"""What to buy and what it costs stands on the staff's sheets, on home sheets where the studio asks for it, and never on the web site."""

import ast
import json
import re
from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from builder.compose.dates.dates import money
from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.compose.supplies.supply_json import cost_json
from builder.compose.teaching.mentions import class_amount, home_amount
from builder.library import LAYOUTS
from builder.model.document import Folder
from builder.model.place import Name
from tests.compose.conftest import FILES, TODAY, read_edition, write_studio
from tests.making import sure

COMPOSE = Path(__file__).parents[2] / "builder" / "compose"

# Prices that no other number of the studio resembles.
SUPPLIES = """
- {ingredient: sea salt, pack: 1 kg, price: 7919.13, pump: {stroke: 20 g, measured: "a scoop on a lever, ten strokes"}}
- {ingredient: baking soda, pack: 16 oz, price: 6007.29}
- {ingredient: lavender essential oil, pack: 30 g, price: 5.41}
- {container: 4 fl oz jar, pack: 12, price: 4801.77}
- {item: labels, pack: 100, price: 3301.93, each container: 1}
"""
PRICES = ("7919", "7 919", "7,919", "6007", "6,007", "4801", "4,801", "3301", "3,301")
COST_WORDS = ("To buy", "What it costs", "Materials", "no price", "by the amounts that are used", "Paper towels")


def compose(folder: Path, **changed: Any) -> tuple[Edition, dict[str, str]]:
    edition = read_edition(write_studio(folder, shelf__supplies_yaml=SUPPLIES, **changed))
    made = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY))
    return edition, {f"{document.folder}/{document.path}": document.html.replace("\u00a0", " ") for document in made.documents}


@pytest.fixture(scope="module")
def supplied(tmp_path_factory: pytest.TempPathFactory) -> tuple[Edition, dict[str, str]]:
    return compose(tmp_path_factory.mktemp("supplied"))


def of_site(documents: Mapping[str, str]) -> dict[str, str]:
    return {path: text for path, text in documents.items() if path.startswith(f"{Folder.SITE}/")}


def homes(documents: Mapping[str, str]) -> dict[str, str]:
    return {path: text for path, text in documents.items() if "take-home" in path}


def test_the_web_site_shows_nothing_of_costs(supplied: tuple[Edition, Mapping[str, str]]) -> None:
    _, documents = supplied
    assert set(of_site(documents)) >= {"site/index.html", "site/classes/first.html"}
    for path, text in of_site(documents).items():
        assert [word for word in (*PRICES, *COST_WORDS) if word in text] == [], path


def test_the_web_site_shows_nothing_of_costs_where_home_sheets_are_public_and_costs_are_asked_for(tmp_path: Path) -> None:
    public = FILES["classes/first/class.yaml"] + "take-home sheets: public\n"
    _, documents = compose(
        tmp_path, classes__first__class_yaml=public, studio_yaml=FILES["studio.yaml"] + "costs on sheets: yes\n"
    )  # fmt: skip
    assert homes(of_site(documents))
    for path, text in of_site(documents).items():
        assert [word for word in (*PRICES, *COST_WORDS) if word in text] == [], path


def test_only_staff_sheets_home_sheets_and_the_terminal_know_the_words_of_costs() -> None:
    """Whatever is composed for the web site imports nothing that writes a cost."""
    knowing: dict[str, set[str]] = {"supply_words": set(), "shopping_words": set(), "pack_words": set()}
    for path in COMPOSE.rglob("*.py"):
        modules = [node.module for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(node, ast.ImportFrom)]
        for words, known in knowing.items():
            known |= {path.stem} if f"builder.compose.supplies.{words}" in modules else set()
    assert knowing == {
        "supply_words": {"documents", "take_home", "bench_cards", "mentions"},
        "shopping_words": {"shopping"},
        "pack_words": {"supply_words", "shopping_words"},
    }


def test_home_sheets_show_the_cost_only_where_the_studio_asks_for_it(supplied: tuple[Edition, Mapping[str, str]], tmp_path: Path) -> None:
    _, plain = supplied
    _, asked = compose(tmp_path, studio_yaml=FILES["studio.yaml"] + "costs on sheets: yes\n")
    assert [path for path, text in homes(plain).items() if "Costs:" in text] == []
    # 300 g of salt at 7919.13 a kilogram, 150 g of soda at 6007.29 a pound, four jars at 4801.77 a dozen, scent of 1 g in each of four.
    soda = Fraction("6007.29") * 150 / Fraction("453.59237")
    salts = Fraction("2375.739") + soda + Fraction("1600.59") + Fraction("5.41") * 4 / 30
    assert home_costs(asked, "salts") == {f"at least ${float(salts):,.2f}"}
    assert "glycerin" in next(text for path, text in homes(asked).items() if "salts" in path)


def home_costs(documents: Mapping[str, str], recipe: str) -> set[str]:
    texts = [text for path, text in homes(documents).items() if recipe in path]
    return {sure(re.search(r">Costs:</b> (at least \$[\d,.]+)", text)).group(1) for text in texts}


def test_the_sheet_of_costs_says_what_to_buy(supplied: tuple[Edition, Mapping[str, str]]) -> None:
    edition, documents = supplied
    text = next(text for path, text in documents.items() if "2027-02-06" in path and path.endswith("costs.pdf"))
    assert "<h2>To buy</h2>" in text
    assert re.search(r"Sea salt</th><td>407 g</td><td>1 × 1 kg</td><td>\$7,919.13</td><td>593 g", text)
    assert re.search(r"4 fl oz jar</th><td>6</td><td>1 × pack of 12</td>", text)
    assert "No price known: glycerin, olive oil, sodium hydroxide" in text
    assert re.search(r"Materials in all</th><td>at least \$", text)
    cost = edition.plans[0].cost
    assert f"at least {money(sure(cost).total, 'USD', 'en_US')}" in text


# 406.8 g of sea salt at 20 g a stroke are 20.3 strokes; at home another pump stands, so that a weight is written.
def test_strokes_in_braces(supplied: tuple[Edition, Mapping[str, str]]) -> None:
    edition, documents = supplied
    made = edition.plans[0].made[0]
    assert class_amount(edition.studio, made.batch, Name("Sea salt strokes")).replace("\u00a0", " ") == "20 strokes (about 400 g)"
    at_home = [home_amount(edition.studio, made.home[0].batch, Name(name)) for name in ("sea salt strokes", "sea salt")]
    assert at_home[0] == at_home[1]
    with pytest.raises(KeyError):
        class_amount(edition.studio, made.batch, Name("glycerin strokes"))
    assert documents


# The cent of the dollar, the hundredth of the euro, no part of the yen (ISO 4217); the exact half goes to the even digit.
@pytest.mark.parametrize(
    ("value", "currency", "locale", "written"),
    [
        ("2.345", "USD", "en_US", "$2.34"),
        ("2.355", "USD", "en_US", "$2.36"),
        ("2.3450001", "USD", "en_US", "$2.35"),
        ("0", "USD", "en_US", "$0.00"),
        ("1234.5", "GBP", "en_GB", "£1,234.50"),
        ("17.5", "JPY", "en_GB", "JP¥18"),
        ("1e40", "USD", "en_US", f"$10{',000' * 13}.00"),
        ("99999999999999.995", "USD", "en_US", "$100,000,000,000,000.00"),
    ],
)
def test_money_is_rounded_once_half_to_even(value: str, currency: str, locale: str, written: str) -> None:
    assert money(Fraction(value), currency, locale) == written


def test_the_json_of_a_cost_loses_nothing(supplied: tuple[Edition, Mapping[str, str]]) -> None:
    edition, _ = supplied
    cost = edition.plans[0].cost
    told = json.loads(json.dumps(cost_json(sure(cost))))
    assert Fraction(told["total"]["exact"]) == sure(cost).total
    parts = ("ingredients", "choices at most", "containers", "used up")
    assert sum(Fraction(told[part]["exact"]) for part in parts) == sure(cost).total
    assert Fraction(told["each student"]["exact"]) * 3 == sure(cost).total
    salt = next(need for need in told["needs"] if need["name"] == "Sea salt")
    assert salt["packs"] == [{"pack": "1 kg", "number": 1}]
    assert Fraction(salt["used"]["exact"]) + Fraction(salt["left"]["exact"]) == 1000
