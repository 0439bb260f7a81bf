"""Every name that pages say to search engines is one of the vocabulary of schema.org, of a type that has it.

The table, `tests/authorities/schema_org.csv`, holds what pages use and no more, so that a name which is new to a page is looked up before
it is published.
"""

import csv
import json
from collections.abc import Iterator
from datetime import date, datetime
from functools import cache
from pathlib import Path
from typing import Any

from bs4 import BeautifulSoup

from tests.published import published, soup, squeeze
from tests.site.kinds import every_page

TABLE = Path(__file__).parent.parent / "authorities" / "schema_org.csv"
SCHEMA = "https://schema.org/"


@cache
def vocabulary() -> frozenset[tuple[str, str]]:
    lines = [line for line in TABLE.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    return frozenset((row["of"], row["name"]) for row in csv.DictReader(lines))


def graph_of(page: BeautifulSoup) -> list[dict[str, Any]]:
    script = page.find("script", type="application/ld+json")
    graph: list[dict[str, Any]] = json.loads(script.get_text())["@graph"] if script else []
    return graph


def nodes(value: Any) -> Iterator[dict[str, Any]]:
    """Yield every node that has a type, however deep it lies."""
    if isinstance(value, list):
        for one in value:
            yield from nodes(one)
    elif isinstance(value, dict):
        if "@type" in value:
            yield value
        for one in value.values():
            yield from nodes(one)


def said(node: dict[str, Any]) -> Iterator[tuple[set[tuple[str, str]], str]]:
    """Yield what must stand in the table for a node, each as the rows of which one has to be there, and how to name it."""
    types = node["@type"] if isinstance(node["@type"], list) else [node["@type"]]
    for name, value in node.items():
        if not name.startswith("@"):
            yield {(one, name) for one in types}, f"{'/'.join(types)}.{name}"
            if isinstance(value, str) and value.startswith(SCHEMA):
                yield {(name, value.removeprefix(SCHEMA))}, f"{name}: {value}"


def test_every_name_is_one_of_the_vocabulary() -> None:
    wrong, used = set(), set()
    for page in every_page():
        for node in nodes(graph_of(soup(page))):
            for rows, name in said(node):
                used |= rows & vocabulary()
                if not rows & vocabulary():
                    wrong.add(name)
    assert wrong == set()
    properties = {row for row in vocabulary() if not row[0][0].islower()}
    assert properties - used == set(), "no page uses these rows of the table"


def test_a_name_of_no_type_is_found() -> None:
    node = {"@type": "Offer", "startDate": "2027-01-01", "availability": f"{SCHEMA}Sold"}
    assert [name for rows, name in said(node) if not rows & vocabulary()] == ["Offer.startDate", f"availability: {SCHEMA}Sold"]


def test_the_last_day_to_book_and_the_picture_are_those_of_the_page() -> None:
    seen = 0
    for path in sorted((published()[0] / "site/classes").glob("*.html")):
        page = soup(path)
        for course in (one for one in graph_of(page) if one["@type"] == "Course"):
            assert [course["image"]] == [one["content"] for one in page.select("[property='og:image']")]
            for one in course["hasCourseInstance"]:
                row = page.find(id=one["@id"].partition("#")[2])
                until = one.get("offers", {}).get("validThrough")
                text = squeeze(row.get_text(" ") if row else "")
                assert ("Book until" in text) is (until is not None), text
                if until:
                    last = date.fromisoformat(until)
                    assert f"Book until {last:%A}, {last:%B} {last.day}, {last.year}" in text
                    assert last < datetime.fromisoformat(one["startDate"]).date()
                    seen += 1
    assert seen > 5
