"""A style that keeps a caution from being read is found, however it does it; one that only looks otherwise is not.

What each property does is CSS as the W3C has it (Cascading and Inheritance 4, Values and Units 4, Color 4, Nesting 1).
"""

import pytest

from builder.compose.frames import PAPER_STYLES, SCREEN_STYLES
from builder.compose.tried.safety_seen import Sight
from builder.compose.tried.style_rules import Medium, Style
from builder.library import LAYOUTS

SAID = "Lye (sodium or potassium hydroxide), dry or dissolved, burns skin and can blind."
PAGE = f"""<!DOCTYPE html><html><head><title>A</title></head><body class="letter"><main id="main"><h1>Bar</h1>
<div class="caution is-danger" role="note"><p class="signal"><span class="word">Danger</span> Lye</p>
<p>{SAID} <span class="avoid">Wear goggles.</span></p></div><p class="note">Come early.</p></main></body></html>"""
SIGHT = Sight([SAID, "Wear goggles."], least_pixels=11.0)

HIDES = [
    ".caution { display: none; }",
    ".is-danger p + p { display: none !important; }",
    "@media (max-width: 30rem) { .caution { display: none; } }",
    "@media print { [role=note] { display: none } }",
    "main { visibility: hidden; }",
    ".caution { opacity: 0; }",
    ".caution { opacity: 30%; }",
    ".caution p { font-size: 0; }",
    ".caution p { font-size: 4pt; }",
    ".caution { font-size: 0.5em; }",
    ".caution p { font: 5px/1 serif; }",
    ".caution { color: #fff; background: white; }",
    ".caution { color: transparent; }",
    ".caution { color: rgba(0, 0, 0, 0.1); }",
    ":root { --ink: #eeeeee; --paper: #ffffff; }",
    "@media (prefers-color-scheme: dark) { .caution { color: #15242a; } }",
    "@media screen and (prefers-color-scheme: light) { :root { --ink: #f6f8f7; } }",
    ".caution { max-height: 0; overflow: hidden; }",
    ".caution { height: 2px; overflow: clip; }",
    ".caution { position: absolute; left: -9999px; }",
    ".caution { text-indent: -100em; }",
    ".caution { clip-path: inset(50%); }",
    ".caution { clip: rect(0 0 0 0); }",
    ".caution { transform: scale(0); }",
    "main { .caution { display: none; } }",
    ".caution { & .avoid { display: none; } }",
    ":root { --ink: #102030; }",  # By day it can be read. It counts by night too, on a dark ground.
    "body { --ink: white; color: var(--ink); background: #fff }",
]
LOOKS_OTHERWISE = [
    ".note { display: none; }",
    ".caution { border: 3px solid #900; background: #fff8e0; color: #301000; padding: 2em; }",
    ".caution { display: flex; }",
    ".caution p { font-size: 0.95em; font-weight: bold; }",
    ".caution { font: 12pt/1.5 serif; }",
    ".caution { background: linear-gradient(#fff, #fee); }",
    ".menu { opacity: 0.2; }",
    ".caution { margin-left: -8px; position: relative; left: -4px; text-indent: -1em; padding-left: 1em }",
    ".caution { transform: rotate(1deg); }",
    "main { max-width: 50rem; overflow: hidden; }",
    ":root { --accent: #7a3b69; --go: #ffb0a0; }",
    "@media (prefers-color-scheme: light) { :root { --ink: #102030; } }",
    "@media (forced-colors: active) { .caution { color: Canvas; } }",
    ".caution::before { content: none; display: none; }",
    "@media (prefers-color-scheme: dark) { .caution { color: #ffe8d0; } }",
    ".caution { opacity: 0.95; }",
    ".caution > ; { display: none }",
]


def hiding(css: str, names: tuple[str, ...], page: str = PAGE) -> str | None:
    ours = [Style((LAYOUTS / "styles" / name).read_text(encoding="utf-8")) for name in names]
    media = tuple(Medium) if names == SCREEN_STYLES else (Medium.PAPER,)
    found = SIGHT.hidden(page, (*ours, Style(css, "styles/own.css")), "", media)
    return f"{found.by.name}: {found.by.value}, line {found.by.line}" if found else None


@pytest.mark.parametrize("css", HIDES)
def test_what_hides_a_caution_is_found(css: str) -> None:
    assert hiding(css, SCREEN_STYLES)


@pytest.mark.parametrize("css", LOOKS_OTHERWISE)
def test_what_only_looks_otherwise_is_not(css: str) -> None:
    assert hiding(css, SCREEN_STYLES) is None
    assert hiding(css, PAPER_STYLES) is None


def test_the_rule_is_named_with_its_line() -> None:
    assert hiding("h1 { margin: 0; }\n\n.caution {\n  display: none;\n}", SCREEN_STYLES) == "display: none, line 4"


def test_a_style_in_the_page_and_in_an_element_counts_where_the_template_is_the_studios() -> None:
    for page in (
        PAGE.replace("</head>", "<style>.caution { display: none }</style></head>"),
        PAGE.replace("<p>Lye", '<p style="color: #fff; background: #fff">Lye'),
    ):
        assert SIGHT.hidden(page, (), "sheets/take-home.html", tuple(Medium))
        assert SIGHT.hidden(page, (), "", tuple(Medium)) is None


@pytest.mark.parametrize(
    "names", [SCREEN_STYLES, (*PAPER_STYLES, "take-home.css"), (*PAPER_STYLES, "teacher.css"), (*PAPER_STYLES, "bench-card.css")]
)
def test_our_own_styles_would_pass_if_they_were_the_studios(names: tuple[str, ...]) -> None:
    media = tuple(Medium) if names == SCREEN_STYLES else (Medium.PAPER,)
    styles = tuple(Style((LAYOUTS / "styles" / name).read_text(encoding="utf-8"), name) for name in names)
    assert SIGHT.hidden(PAGE, styles, "page.html", media) is None
