"""Every page in a real browser under the rules of axe-core (WCAG 2.2 A and AA) and ours: light, dark, narrow, on paper, in forced colours.

axe-core finds some part of what WCAG asks for, by its makers' own word about half; what it cannot know (whether words say what they
mean) was read by people. Forced colours and the medium of print are those that Chromium emulates.
"""

import re
from itertools import pairwise
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from tests.browser import Browser
from tests.published import soup
from tests.site.kinds import chosen, every_page, site, some
from tests.site.looks import FOCUSED, SMALL_TARGETS, SPACED, TOO_WIDE, WHOLE, add_style, axe, pale_texts


def told(found: dict[str, list[str]]) -> str:
    return "\n".join(f"{where}: {one}" for where, all_of_it in found.items() for one in all_of_it)


def name_of(page: Path) -> str:
    return page.relative_to(site()).as_posix()


# Each way to look at a page: width, height and zoom of the window, the medium, what the reader prefers, and a style of her own. 320 CSS
# pixels are also a window of 1280 at 400 % (SC 1.4.10, note).
WAYS: dict[str, tuple[tuple[int, int, float], str, dict[str, str], str]] = {
    "light": ((1280, 900, 1), "", {"prefers_color_scheme": "light"}, ""),
    "dark": ((1280, 900, 1), "", {"prefers_color_scheme": "dark"}, ""),
    "320": ((320, 700, 1), "", {"prefers_color_scheme": "light"}, ""),
    "400 %": ((320, 256, 4), "", {"prefers_color_scheme": "dark"}, ""),
    "print": ((800, 900, 1), "print", {}, ""),
    "forced colours": ((390, 800, 1), "", {"forced-colors": "active", "prefers_color_scheme": "dark"}, ""),
    "text spacing": ((390, 800, 1), "", {"prefers_color_scheme": "light"}, SPACED),
}


# The one in which most is moved, and little room left: what is named, ordered and pale is so in every way.
BY_DEFAULT = ("320",)


@pytest.mark.parametrize("way", [pytest.param(way, marks=pytest.mark.long(sample=way in BY_DEFAULT)) for way in WAYS])
def test_axe_finds_nothing(chromium: Browser, way: str) -> None:
    """All rules of WCAG 2.2 A and AA that axe-core has, and its best practice.

    Without `--long` each second kind of page in one way. In forced colours axe-core takes the author's ink for that of the reader: there
    the picture is measured.
    """
    size, medium, features, style = WAYS[way]
    chromium.size(*size)
    chromium.look(medium, **features)
    found = {}
    for page in some(1, of=2):
        chromium.open(page)
        if style:
            add_style(chromium, style)
        found[name_of(page)] = axe(chromium, WHOLE, but="color-contrast" if "forced-colors" in features else "")
    assert len(found) > 4
    assert not any(found.values()), told(found)


@pytest.mark.long
@pytest.mark.parametrize("scheme", ["dark", "light"])
def test_in_forced_colours_every_text_is_seen(chromium: Browser, scheme: str) -> None:
    """SC 1.4.3, of the page as Chromium draws it in the colours of the reader."""
    chromium.look(**{"forced-colors": "active", "prefers_color_scheme": scheme})
    found = {}
    for page in every_page():
        chromium.size(390, 800)
        chromium.open(page)
        found[name_of(page)] = pale_texts(chromium, 4.5)
    assert not any(found.values()), told(found)


def test_the_measure_of_contrast_measures(chromium: Browser, tmp_path: Path) -> None:
    """#777 on white is 4.48 to 1, #767676 is 4.54 to 1 (worked examples of WCAG 2.2, from memory)."""
    page = tmp_path / "pale.html"
    style = "font: 900 40px sans-serif; background: #fff; margin: 0"
    page.write_text(f'<body style="{style}"><p style="color: #777">HHH</p><p style="color: #767676">III</p>', encoding="utf-8")
    chromium.open(page)
    assert [one.partition(": ")[2] for one in pale_texts(chromium, 4.5)] == ["HHH"]


@pytest.mark.long(sample=True)
def test_nothing_is_wider_than_a_narrow_phone_or_cut_off(chromium: Browser) -> None:
    """SC 1.4.10; once more with the spacing that a reader may set (SC 1.4.12)."""
    found = {}
    chromium.size(320, 256, 4)
    for page in chosen():
        chromium.open(page)
        found[name_of(page)] = [*chromium.evaluate(TOO_WIDE), *chromium.complaints]
        add_style(chromium, SPACED)
        found[f"{name_of(page)}, spaced"] = chromium.evaluate(TOO_WIDE)
        outside = [address for address in chromium.asked_for if not address.startswith("file:")]
        assert not outside, outside
    assert len(found) > 20
    assert not any(found.values()), told(found)


@pytest.mark.parametrize("width", [pytest.param(width, marks=pytest.mark.long(sample=width == 320)) for width in (320, 1280)])
def test_what_can_be_pressed_is_large_enough(chromium: Browser, width: int) -> None:
    chromium.size(width)
    found = {}
    for page in some(0, of=3):
        chromium.open(page)
        found[name_of(page)] = chromium.evaluate(SMALL_TARGETS)
    assert not any(found.values()), told(found)


@pytest.mark.parametrize(
    "name", ["classes/lotion-from-scratch", *(pytest.param(one, marks=pytest.mark.long) for one in ("index", "dates"))]
)
def test_by_keyboard_alone_one_sees_where_one_is(chromium: Browser, name: str) -> None:
    """SC 2.4.1, 2.4.3, 2.4.7, 2.4.11: the first stop leads past the menu; every stop is seen."""
    chromium.size(390, 700)
    chromium.open(site() / f"{name}.html")
    chromium.press_key("Tab")
    first = chromium.evaluate(FOCUSED)
    assert (first["words"], first["seen"], first["outlined"]) == ("Skip to the text", True, True)
    chromium.press_key("Enter")
    assert chromium.evaluate(FOCUSED)["main"]
    chromium.press_key("Tab")
    assert chromium.evaluate(FOCUSED)["inMain"]
    for _ in range(25):
        now = chromium.evaluate(FOCUSED)
        assert now["name"] == "BODY." or (now["seen"] and (now["outlined"] or now["name"].startswith("INPUT"))), now
        chromium.press_key("Tab")


def test_nothing_moves_by_itself_and_nothing_is_kept(chromium: Browser) -> None:
    """SC 2.2.2 and 2.3.3; PRIV-11 of the project: no cookies, no storage."""
    chromium.open(site() / "classes.html")
    assert chromium.evaluate("[document.getAnimations().length, document.cookie, document.scripts.length]") == [0, "", 0]


def headings(page: BeautifulSoup) -> list[int]:
    return [int(one.name[1]) for one in page.find_all(re.compile(r"h[1-6]"))]


def test_structure_of_every_page() -> None:
    """SC 1.3.1, 2.4.2, 2.4.6, 3.1.1: one first heading, no level left out, landmarks named, tables with heads, pictures with words."""
    titles: dict[str, str] = {}
    for path in every_page():
        page, name = soup(path), name_of(path)
        levels = headings(page)
        assert levels.count(1) == 1 and levels[0] == 1, name
        assert all(after <= before + 1 for before, after in pairwise(levels)), f"{name}: {levels}"
        assert len(page.find_all("main")) == 1, name
        assert all(nav.get("aria-label") or nav.get("aria-labelledby") for nav in page.find_all("nav")), name
        assert all(image.has_attr("alt") for image in page.find_all("img")), name
        for table in page.find_all("table"):
            assert table.find("caption") or table.get("aria-labelledby") or table.get("aria-label"), f"{name}: {str(table)[:90]}"
            assert all(head.get("scope") for head in table.find_all("th")), f"{name}: {str(table)[:90]}"
        assert not page.select("[tabindex]:not([tabindex='0'], [tabindex='-1'])"), name
        assert isinstance(page.html, Tag) and page.html["lang"] == "en-US", name
        title = str(page.title and page.title.string)
        assert title not in titles, f"{name} has the title of {titles.get(title)}"
        titles[title] = name


def test_two_ways_lead_to_every_page() -> None:
    """SC 2.4.5."""
    leads: dict[Path, set[Path]] = {page.resolve(): set() for page in every_page()}
    for path in every_page():
        for link in soup(path).find_all("a", href=True):
            to = (path.parent / str(link["href"]).partition("#")[0]).resolve()
            if to in leads and to != path.resolve():
                leads[to].add(path.resolve())
    few = [name_of(page) for page, sources in leads.items() if len(sources) < 2]
    # A sheet to repeat a class at home is a step of that class, and the last page stands where there is none.
    assert [name for name in few if name != "404.html" and "take-home" not in name] == []
