"""The site on a host, at its root and in a folder of it: every address leads somewhere, and what is not there has its page at any depth.

From disk the browser opens the same pages in every other test here.
"""

import re
import shutil
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from urllib.error import HTTPError
from urllib.parse import unquote, urldefrag, urljoin
from urllib.request import urlopen

import pytest
from bs4 import BeautifulSoup

from tests.browser import Browser
from tests.composing import composed
from tests.published import edition, sheets, soup
from tests.site.kinds import every_page, site, some
from tests.site.serving import served

OUTWARD = re.compile(r"(https?|mailto|tel|data):")


def addresses_in(page: BeautifulSoup) -> Iterator[str]:
    """Yield every address that a page follows or loads on its own host."""
    found = [str(tag[name]) for name in ("href", "src") for tag in page.find_all(True) if tag.has_attr(name)]
    found += [one.split()[0] for tag in page.select("[srcset]") for one in str(tag["srcset"]).split(", ")]
    yield from (one for one in found if not OUTWARD.match(one))


@cache
def status(address: str) -> int:
    try:
        with urlopen(address) as answer:
            return int(answer.status)
    except HTTPError as refused:
        return refused.code


@pytest.mark.parametrize("under", [
    pytest.param("", marks=pytest.mark.long), pytest.param("/a-folder/of-the-host", marks=pytest.mark.long(sample=True)),
])  # fmt: skip
def test_every_page_is_whole_wherever_it_is_served(chromium: Browser, under: str) -> None:
    found: dict[str, list[str]] = {}
    with served(site(), under) as base:
        # Not every sheet is pressed in every run of tests.
        pressed = {f"{base}{sheet.relative_to(site()).as_posix()}" for sheet in sheets() if site() in sheet.parents}
        for page in some(0, of=3):
            if page.name == "404.html":
                continue
            name = page.relative_to(site()).as_posix()
            chromium.open(f"{base}{name}")
            found[name] = [*chromium.complaints, *(one for one in chromium.asked_for if not one.startswith(base))]
        for page in every_page():
            here = f"{base}{page.relative_to(site()).as_posix()}"
            if page.name != "404.html":
                asked = {urljoin(here, urldefrag(one).url) for one in addresses_in(soup(page))}
                found[f"links of {here}"] = [one for one in sorted(asked - pressed) if not one.startswith(base) or status(one) != 200]
    assert sum(name.startswith("links of ") for name in found) > 50
    assert {name: wrong for name, wrong in found.items() if wrong} == {}


def test_every_fragment_is_there() -> None:
    named = {page.resolve(): {str(tag["id"]) for tag in soup(page).select("[id]")} for page in every_page()}
    lost, followed = set(), 0
    for page in every_page():
        for link in soup(page).select("a[href*='#']"):
            path, fragment = urldefrag(str(link["href"]))
            if not OUTWARD.match(path):
                followed += 1
                to = (page.parent / unquote(path)).resolve() if path else page.resolve()
                if fragment not in named[to]:
                    lost.add(f"{page.name}: {link['href']}")
    assert lost == set() and followed > 100


@pytest.mark.parametrize("folder", [pytest.param("", marks=pytest.mark.long), "/soap/studio"])
def test_the_page_for_what_is_not_there_serves_at_any_depth(chromium: Browser, folder: str, tmp_path: Path) -> None:
    """WEB-07: at every depth it has its look and its icon, asks for no file, and leads back."""
    here = edition()
    placed = replace(here.studio, profile=replace(here.studio.profile, public_address=f"https://wrenlow.example{folder}"))
    (document,) = composed("page not found", replace(here, studio=placed))
    shutil.copytree(site(), tmp_path / "site")
    (tmp_path / "site/404.html").write_text(document.html, encoding="utf-8")
    with served(tmp_path / "site", folder) as base:
        for lost in ("none.html", "classes/none.html", "a/b/c/none", "find/none/"):
            chromium.open(f"{base}{lost}")
            assert chromium.evaluate("document.querySelector('h1').textContent") == "Page not found"
            assert chromium.asked_for == [f"{base}{lost}"] or chromium.asked_for[1:] == [
                one for one in chromium.asked_for if "data:" in one
            ]
            assert all("404" in one for one in chromium.complaints)
            assert chromium.evaluate("getComputedStyle(document.querySelector('.menu a')).textDecorationLine") == "none"
            links = chromium.evaluate("[...document.querySelectorAll('main a, nav a')].map(one => one.href)")
            assert len(links) > 8 and {status(one) for one in links} == {200}
