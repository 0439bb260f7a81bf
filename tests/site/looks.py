"""What is looked for on a page that is open in the browser. Each gives what is wrong, in words."""

import json
from typing import Any

from tests.browser import Browser, axe_source

# WCAG 2.2, levels A and AA, and what axe-core calls best practice.
WHOLE = {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}
# What another colour scheme, medium or width can change. The names are those of axe-core's rules.
SEEN = {"type": "rule", "values": ["color-contrast", "link-in-text-block", "target-size", "scrollable-region-focusable"]}
# In forced colours axe-core takes the author's ink for that of the reader; contrast is the reader's there, and left to Chromium.
UNSEEN = {"type": "rule", "values": SEEN["values"][1:]}
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
    if (!inSentence && !stretched && (box.height < 43.5 || box.width < 24))
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


def axe(opened: Browser, rules: dict[str, Any]) -> list[str]:
    """Give what axe-core finds wrong on the page."""
    if not opened.evaluate("'axe' in window"):
        opened.evaluate(AXE)
    options = json.dumps({"preload": False, "resultTypes": ["violations"], "runOnly": rules})
    told = "one => one.nodes.map(node => `${one.id}: ${node.html.slice(0, 140)} (${node.failureSummary.slice(0, 240)})`)"
    found: list[str] = opened.evaluate(f"axe.run(document, {options}).then(run => run.violations.flatMap({told}).slice(0, 8))")
    return found


def add_style(opened: Browser, css: str) -> None:
    """Add a style as a reader's own tool would, which no policy of the page forbids."""
    sheet = f"(sheet => {{ sheet.replaceSync({json.dumps(css)}); document.adoptedStyleSheets = [sheet] }})(new CSSStyleSheet())"
    opened.evaluate(sheet)
