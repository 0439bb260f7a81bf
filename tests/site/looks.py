"""What is looked for on a page that is open in the browser. Each gives what is wrong, in words."""

import io
import json
from functools import cache
from typing import Any, cast

from PIL import Image

from tests.browser import Browser, axe_source

# WCAG 2.2, levels A and AA, and what axe-core calls best practice.
WHOLE = {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}
AXE = axe_source()

# SC 1.4.12: line height 1.5, paragraphs 2, letters 0.12, words 0.16 times the size of the font.
SPACED = """
* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }
p { margin-bottom: 2em !important }
"""

# SC 1.4.10: nothing but tables and drawings may need scrolling in two directions; text must not be cut off.
TOO_WIDE = """(() => {
  const most = document.documentElement.clientWidth, found = [];
  if (document.documentElement.scrollWidth > most) found.push(`the page is ${document.documentElement.scrollWidth} wide of ${most}`);
  for (const one of document.querySelectorAll('body *')) {
    const style = getComputedStyle(one);
    if (one.closest('svg') || one.matches('.heard, .skip')) continue;
    if (found.length && one.getBoundingClientRect().right > most + 1) found.push(one.outerHTML.slice(0, 90));
    const cut = /hidden|clip/.test(style.overflowX + style.overflowY) && style.position !== 'absolute';
    const over = one.scrollHeight > one.clientHeight + 1 || one.scrollWidth > one.clientWidth + 1;
    if (cut && over) found.push('cut off: ' + one.outerHTML.slice(0, 90));
  }
  return found.slice(0, 6);
})()"""

# The project's own goal, that of SC 2.5.5 (AAA): what can be pressed is 44 by 44 CSS pixels, but for links within a sentence.
SMALL_TARGETS = """(() => {
  const found = [];
  for (const one of document.querySelectorAll('a[href], button, summary, input, select')) {
    const target = one.matches('input') ? one.closest('label') || one : one, box = target.getBoundingClientRect();
    if (!box.width || one.matches('.skip') || getComputedStyle(one).visibility === 'hidden') continue;
    const around = one.parentElement.closest('p, li, dd, td, span.line, h2');
    const words = (around || one).textContent.replace(/\\s+/g, ' ').trim(), own = one.textContent.replace(/\\s+/g, ' ').trim();
    const inSentence = getComputedStyle(one).display === 'inline' && words.length > own.length + 3;
    const stretched = getComputedStyle(one, '::after').position === 'absolute' && getComputedStyle(one, '::after').content !== 'none';
    if (!inSentence && !stretched && (box.height < 43.5 || box.width < 43.5))
      found.push(`${Math.round(box.width)} x ${Math.round(box.height)}: ${one.outerHTML.slice(0, 110)}`);
  }
  return found;
})()"""

# SC 2.4.11: what has the focus is seen.
FOCUSED = """(() => {
  const one = document.activeElement, box = one.getBoundingClientRect(), style = getComputedStyle(one);
  return {
    name: one.tagName + '.' + one.className, words: (one.textContent || '').trim().slice(0, 40),
    inMain: !!one.closest('main'), main: one.id === 'main',
    seen: box.width > 0 && box.top >= -1 && box.bottom <= innerHeight + 1 && box.left >= -1,
    outlined: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2,
  };
})()"""


def axe(opened: Browser, rules: dict[str, Any], *, but: str = "") -> list[str]:
    """Return what axe-core finds wrong on the page by some of its rules, without the one called `but`."""
    if not opened.evaluate("'axe' in window"):
        opened.evaluate(AXE)
    left_out = {but: {"enabled": False}} if but and rules["type"] == "tag" else {}
    asked = {**rules, "values": [name for name in rules["values"] if name != but]}
    options = json.dumps({"preload": False, "resultTypes": ["violations"], "runOnly": asked, "rules": left_out})
    told = "one => one.nodes.map(node => `${one.id}: ${node.html.slice(0, 140)} (${node.failureSummary.slice(0, 240)})`)"
    found: list[str] = opened.evaluate(f"axe.run(document, {options}).then(run => run.violations.flatMap({told}).slice(0, 8))")
    return found


def add_style(opened: Browser, css: str) -> None:
    """Add a style as a reader's own tool would, which no policy of the page forbids."""
    sheet = f"(sheet => {{ sheet.replaceSync({json.dumps(css)}); document.adoptedStyleSheets = [sheet] }})(new CSSStyleSheet())"
    opened.evaluate(sheet)


# Where each run of text stands on the whole page, in CSS pixels, with its words.
_TEXTS = """(() => {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), found = [];
  for (let node; node = walker.nextNode();) {
    const around = node.parentElement, style = getComputedStyle(around);
    if (!node.data.trim() || around.closest('.heard, .skip, title, script, figure svg, .marks') || style.visibility === 'hidden') continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const box = range.getClientRects()[0];
    if (box && box.width > 3 && box.height > 3 && box.right > 0)
      found.push([box.left + scrollX, box.top + scrollY, box.right + scrollX, box.bottom + scrollY, node.data.trim().slice(0, 40)]);
  }
  return found;
})()"""


def pale_texts(opened: Browser, least: float) -> list[str]:
    """Return the texts whose ink differs by less than `least` to 1 from what they stand on, as the page is drawn: measured on its picture.

    The ground is the colour of most points around a text, its ink the colour that differs most from it. Contrast as in WCAG 2.2.
    """
    opened.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
    opened.size(*opened.evaluate("[innerWidth, document.documentElement.scrollHeight]"))
    picture = Image.open(io.BytesIO(opened.picture())).convert("RGB")
    found = []
    for left, top, right, bottom, words in opened.evaluate(_TEXTS):
        crop = picture.crop((int(left), int(top), int(right) + 1, int(bottom) + 1))
        colours = cast(list[tuple[int, tuple[int, ...]]], crop.getcolors(crop.width * crop.height))
        ground = max(colours)[1]
        most = max(_contrast(colour, ground) for _, colour in colours)
        if most < least:
            found.append(f"{most:.1f} to 1: {words}")
    return found


def _contrast(one: tuple[int, ...], other: tuple[int, ...]) -> float:
    low, high = sorted((_luminance(one), _luminance(other)))
    return (high + 0.05) / (low + 0.05)


@cache
def _luminance(colour: tuple[int, ...]) -> float:
    """WCAG 2.2, relative luminance."""
    parts = [part / 255 for part in colour]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
