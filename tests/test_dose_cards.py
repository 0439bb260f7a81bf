"""The card for the table, read back: the numbers of the JSON, large, two products with choices to a page."""

from decimal import Decimal
from typing import Any

import pdfplumber
import pytest
import yaml

from tests.published import EXAMPLE, composed_for, pdf_pages, pdfs, published, sheet_text, sheets, soup, squeeze, weighed
from tests.test_site_example import AT_BENCHES


def has_choices(recipe: str) -> bool:
    """Tell whether students choose something in a recipe, as its file says."""
    return "choices" in yaml.load((EXAMPLE / f"recipes/{recipe}.yaml").read_text(encoding="utf-8"), yaml.CBaseLoader)


WITH_CHOICES = [(key, recipe, date) for key, recipe, date in AT_BENCHES if has_choices(recipe)]


def plain(number: Any) -> str:
    return f"{Decimal(str(number['value'])).normalize():f}"


@pytest.mark.parametrize(("key", "recipe", "date"), WITH_CHOICES)
def test_the_card_and_the_bench_card_show_the_most_of_each_option(key: str, recipe: str, date: str) -> None:
    folder, _ = published()
    batch = weighed(key, recipe, date)["product"]["batches"][0]["batch"]
    composed = soup(composed_for(folder / "print" / key / date / "dose-cards.pdf"))
    (card,) = (text for one in composed.select("article") if batch["name"] in (text := squeeze(one.get_text(" "))))
    bench = sheet_text(folder / "print" / key / date / "bench-cards.pdf")
    for dose in batch["doses"]:
        for one in dose["each"]:
            about = "" if one["drops"] is None or one["drop"]["measured"] else "about "
            assert one["option"] in card
            assert f"{plain(one['grams'])} g" in card and f"{plain(one['grams'])} g" in bench
            if one["drops"]:
                assert f"{about}{one['drops']} drops" in card and f"{about}{one['drops']} drops" in bench
        if dose["mixed"]:
            assert f"{plain(dose['mixed']['grams'])} g in all" in card


@pytest.mark.long(sample=True)
def test_two_products_share_a_page_and_have_large_numbers() -> None:
    cards = [path for path in pdfs() if path.name == "dose-cards.pdf"]
    assert cards
    for path in cards:
        products = [recipe for key, recipe, day in WITH_CHOICES if path.match(f"print/{key}/{day}/*")]
        assert len(pdf_pages(path)) == -(-len(products) // 2)
        with pdfplumber.open(path) as pdf:
            sizes = [char["size"] for page in pdf.pages for char in page.chars if char["text"].strip()]
        # Numbers at 34 pt, most of the rest at 18 pt or more; the smallest, in the foot, at 12 pt.
        assert max(sizes) == pytest.approx(34, abs=0.5)
        assert min(sizes) >= 11.5
        assert sum(size >= 17.5 for size in sizes) > len(sizes) / 2


def test_the_box_on_neat_scent_has_its_signal_word() -> None:
    """ANSI Z535.6, from memory: a safety message begins with its signal word."""
    boxes = [box for path in sheets() if path.name == "dose-cards.pdf" for box in soup(composed_for(path)).select(".neat")]
    assert boxes
    assert {squeeze(box.get_text(" "))[:40] for box in boxes} == {"WARNING Neat scent oils burn and poison."}
