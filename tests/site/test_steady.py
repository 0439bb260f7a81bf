"""Nothing on a page moves while it is loaded and read: cumulative layout shift 0 (WEB-20 of the project), as Chromium measures it.

What is measured, and how: Layout Instability API (W3C Community Group draft).
"""

import shutil
from pathlib import Path

import pytest

from tests.browser import Browser
from tests.site.kinds import chosen, site, some
from tests.site.serving import served

# Scroll through the page, so that pictures which wait are loaded, and add up what has shifted since it was opened.
SHIFTED = """(async () => {
  const drawn = () => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
  for (let top = 0; top < document.documentElement.scrollHeight; top += innerHeight) { scrollTo(0, top); await drawn(); }
  await Promise.all([...document.images].map(one => one.complete || new Promise(done => one.onload = one.onerror = done)));
  await drawn();
  return await new Promise(done => {
    let sum = 0;
    const add = list => list.getEntries().forEach(one => sum += one.value);
    new PerformanceObserver(add).observe({type: 'layout-shift', buffered: true});
    setTimeout(() => done(sum), 100);
  });
})()"""


@pytest.mark.long
@pytest.mark.parametrize("width", [390, 1280])
def test_no_page_shifts(chromium: Browser, width: int) -> None:
    """Loaded at once, which is the easier way."""
    chromium.size(width, 780)
    shifted = {}
    for page in chosen():
        chromium.open(page)
        shifted[page.relative_to(site()).as_posix()] = chromium.evaluate(SHIFTED)
    assert len(shifted) > 9
    assert {page: sum for page, sum in shifted.items() if sum} == {}


@pytest.mark.long
@pytest.mark.parametrize("width", [390, 1280])
def test_nothing_moves_while_a_page_comes_in_pieces(chromium: Browser, width: int) -> None:
    chromium.size(width, 780)
    with served(site(), in_pieces=True) as base:
        shifted = {}
        for page in some(1, of=6):
            name = page.relative_to(site()).as_posix()
            chromium.open(f"{base}{name}")
            shifted[name] = chromium.evaluate(SHIFTED)
            assert chromium.evaluate("getComputedStyle(document.body).visibility") == "visible", name
    assert len(shifted) > 1
    assert {page: sum for page, sum in shifted.items() if sum} == {}


@pytest.mark.long
def test_a_page_whose_end_does_not_come_is_shown(chromium: Browser, tmp_path: Path) -> None:
    shutil.copytree(site(), tmp_path / "site")
    page = tmp_path / "site/visit.html"
    html = page.read_text(encoding="utf-8")
    page.write_text(html[: html.index("<footer")], encoding="utf-8")
    chromium.open(page)
    seen = "getComputedStyle(document.querySelector('h1')).visibility"
    assert chromium.evaluate(seen) == "hidden"
    chromium.evaluate("new Promise(done => setTimeout(done, 1800))")
    assert chromium.evaluate(seen) == "visible"


def test_the_measure_measures(chromium: Browser, tmp_path: Path) -> None:
    page = tmp_path / "shifts.html"
    page.write_text('<!DOCTYPE html><body><div id="above"></div><p style="font-size: 3rem">Text that is pushed down', encoding="utf-8")
    chromium.open(page)
    chromium.evaluate("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))")
    chromium.evaluate("void (document.getElementById('above').style.height = '300px')")
    assert chromium.evaluate(SHIFTED) > 0.05
