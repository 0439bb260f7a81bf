"""Ingredient lists on a take-home sheet: one in full, each other as what it adds to that; and what is said of weighing where it is true.

Each list put together again from the words is the one on the label of that bottle, in order of weight (21 CFR 701.3 and EU 1223/2009,
article 19, both from memory: above one per cent by weight, colours last).
"""

import re

import pytest
from bs4 import BeautifulSoup

from tests.composing import of_example
from tests.making import sure
from tests.page_text import tree_of

WORDS = re.compile(r"the same(?:, with (?P<one>.+?) before (?P<next>.+?))?(?:,? and (?P<last>.+) last)?")


def sheet(name: str) -> BeautifulSoup:
    return tree_of(next(one.html for one in of_example("take-home sheet") if name in one.path))


def lists(name: str) -> dict[str, str]:
    found = {}
    for one in sheet(name).select(".ingredients"):
        choice = sure(one.b).get_text()
        found[choice.rstrip(":")] = " ".join(one.get_text().removeprefix(choice).split())
    return found


def put_together(whole: str, words: str) -> str:
    said = sure(WORDS.fullmatch(words))
    if said["one"]:
        whole = whole.replace(f", {said['next']}", f", {said['one']}, {said['next']}")
    return f"{whole}, {said['last']}" if said["last"] else whole


def test_what_a_list_adds_to_the_one_in_full_is_said_and_no_more() -> None:
    found = lists("meadow-lotion--500-g")
    whole = found.pop("No scent, no colour")
    scented = "Lavender essential oil or cedarwood essential oil"
    assert list(found) == ["No scent, mica", f"{scented}, no colour", f"{scented}, mica"]
    before, after = whole.split(", Ethylhexylglycerin")
    plain, fragrant = whole, f"{before}, Fragrance, Ethylhexylglycerin{after}"
    assert [put_together(whole, words) for words in found.values()] == [f"{plain}, Mica", fragrant, f"{fragrant}, Mica"]


@pytest.mark.parametrize(
    ("name", "weighs_water"),
    [("meadow-lotion", True), ("kitchen-garden-bar", True), ("hedgerow-bath-tea", False), ("orchard-sugar", False)],
)
def test_water_is_to_be_weighed_where_there_is_any(name: str, weighs_water: bool) -> None:
    rule = sure(sheet(name).select_one(".rule")).get_text()
    assert rule.startswith("Weigh everything, water too." if weighs_water else "Weigh everything. Use")
