"""The card for the table, read back: the numbers of the JSON, large, a page for each product that has choices."""

from decimal import Decimal
from typing import Any

import pdfplumber
import pytest

from tests.published import pdf_pages, pdf_text, published, weighed
from tests.test_site_example import AT_BENCHES


def with_choices() -> list[tuple[str, str, str]]:
    return [(key, recipe, date) for key, recipe, date in AT_BENCHES if weighed(key, recipe, date)["product"]["choices in all"]]


def plain(number: Any) -> str:
    return f"{Decimal(str(number['value'])).normalize():f}"


@pytest.mark.parametrize(("key", "recipe", "date"), with_choices())
def test_the_card_and_the_bench_card_show_the_most_of_each_option(key: str, recipe: str, date: str) -> None:
    folder, _ = published()
    batch = weighed(key, recipe, date)["product"]["batches"][0]["batch"]
    (card,) = (text for _, text in pdf_pages(folder / "print" / key / date / "dose-cards.pdf") if batch["name"] in text)
    bench = pdf_text(folder / "print" / key / date / "bench-cards.pdf")
    for dose in batch["doses"]:
        for one in dose["each"]:
            about = "" if one["drops"] is None or one["drop"]["measured"] else "about "
            assert one["option"] in card
            assert f"{plain(one['grams'])} g" in card and f"{plain(one['grams'])} g" in bench
            if one["drops"]:
                assert f"{about}{one['drops']} drops" in card and f"{about}{one['drops']} drops" in bench
        if dose["mixed"]:
            assert f"{plain(dose['mixed']['grams'])} g in all" in card


@pytest.mark.parametrize(("key", "date"), sorted({(key, date) for key, _, date in with_choices()}))
def test_the_card_has_a_page_for_each_product_and_large_numbers(key: str, date: str) -> None:
    folder, _ = published()
    path = folder / "print" / key / date / "dose-cards.pdf"
    products = [recipe for one, recipe, day in with_choices() if (one, day) == (key, date)]
    assert len(pdf_pages(path)) == len(products)
    with pdfplumber.open(path) as pdf:
        sizes = [char["size"] for page in pdf.pages for char in page.chars if char["text"].strip()]
    # Numbers at 34 pt, most of the rest at 18 pt or more; the smallest, in the foot, at 12 pt.
    assert max(sizes) == pytest.approx(34, abs=0.5)
    assert min(sizes) >= 11.5
    assert sum(size >= 17.5 for size in sizes) > len(sizes) / 2
