"""Documents to pages of the preview: with the findings at their head and beside their passages, and the script that renews them.

Decided: only pages of the preview have a script, and it comes from the preview. Why: what is published has none.
"""

import re
from collections.abc import Iterable, Sequence
from html import escape
from itertools import groupby
from urllib.parse import quote

from builder.compose.frames import PLAIN_STYLES
from builder.compose.on_demand import Entry
from builder.model.document import Document
from builder.model.place import Place
from builder.press.twins import ON_SCREEN, with_pictures_at
from builder.preview.built import Built, Passage, sum_of
from builder.preview.marks import flagged, standing

_OWN_POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy"[^>]*>')
_HERE = "/_preview"


def page_of(built: Built, path: str, document: Document, last_sound: bool) -> str:
    """Return a document with its findings; `last_sound` says that it is no longer what the folder says."""
    passages = built.about(built.listed.entries.get(path) or _entry_by_path(built, path))
    html, found = flagged(_OWN_POLICY.sub("", document.html), passages)
    paper = path.endswith(".pdf")
    if paper:
        html = with_pictures_at(html, f"{_HERE}/studio/")
    note = "This is how it was when it was last sound: what stands below holds it back now." if last_sound else ""
    return _with_head(html, built, path, passages, found, note, document.styles, paper=paper)


def page_without(built: Built, path: str, title: str, note: str) -> str:
    """Return a page that has nothing to show but why."""
    passages = built.about(_entry_by_path(built, path))
    html = f'<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>{escape(title)}</title></head><body></body></html>'
    return _with_head(html, built, path, passages, frozenset(), note, (), paper=False)


def overview(built: Built) -> str:
    """Return the tool's own page: every finding, and every document, those of a class together."""
    groups = groupby(sorted(built.listed.entries.values(), key=lambda one: (one.class_key, one.path)), key=lambda one: one.class_key)
    lists = "".join(_list_of(built, key, list(entries)) for key, entries in groups)
    name = escape(built.name or built.folder.name)
    html = (
        f'<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Preview of {name}</title>{_styles(PLAIN_STYLES)}</head>'
        f"<body><main><h1>{name}</h1>{lists or '<p>There is nothing to show yet.</p>'}</main></body></html>"
    )
    return _with_head(html, built, "", built.passages, frozenset(), "", (), paper=False)


def _list_of(built: Built, class_key: str, entries: Sequence[Entry]) -> str:
    a_class = built.studio.classes.get(class_key) if built.studio else None
    title = escape(a_class.title if a_class else "The studio")
    shown = [one for one in entries if one.path.endswith((".html", ".pdf"))]
    items = "".join(f'<li><a href="/{quote(one.path)}">{escape(one.path)}</a> <small>{escape(one.kind)}</small></li>' for one in shown)
    return f"<section><h2>{title}</h2><ul>{items}</ul></section>"


def _entry_by_path(built: Built, path: str) -> Entry | None:
    """Return what a page is about that is not among the documents now: the class whose name stands in its path."""
    words = set(re.split(r"[/.]|--", path))
    known = {key for one in built.passages for key in one.classes} | (set(built.studio.classes) if built.studio else set())
    key = next((key for key in sorted(known, key=len, reverse=True) if key in words), "")
    return Entry("", path, "", key, "", lambda: None) if key else None


def _with_head(
    html: str,
    built: Built,
    path: str,
    passages: Sequence[Passage],
    found: frozenset[int],
    note: str,
    styles: Iterable[str],
    *,
    paper: bool,
) -> str:
    """Put what the preview adds into a page: its styles and script, and a head with findings."""
    links = f'<nav><a href="/">Overview</a> <a href="/site/index.html">Site</a>{_as_pdf(path) if paper else ""}</nav>'
    said = "".join(f'<p class="preview-note">{escape(one)}</p>' for one in (note, _trouble(built)) if one)
    listed = "".join(_finding(number, one, number in found) for number, one in enumerate(passages))
    head = f'<aside class="preview-head" aria-label="Preview">{links}{said}<ol>{listed}</ol></aside>'
    own = f'{_styles(styles)}{f"{_fonts()}{_styles([ON_SCREEN])}" if paper else ""}<link rel="stylesheet" href="{_HERE}/preview.css">'
    own += f'<script defer src="{_HERE}/refresh.js" data-at="{escape(path)}" data-seen="{sum_of(html + head)}"></script>'
    html = html.replace("</head>", f"{own}</head>", 1)
    return re.sub(r"(<body[^>]*>)", lambda body: body[1] + head, html, count=1)


def _trouble(built: Built) -> str:
    if not built.trouble:
        return ""
    return f"The program did not get on with the folder as it is ({built.trouble}). Please tell us what you had just written."


def _as_pdf(path: str) -> str:
    return f' <a href="/{quote(path)}?pdf">As PDF</a>'


def _styles(names: Iterable[str]) -> str:
    return "".join(f'<link rel="stylesheet" href="{_HERE}/styles/{quote(name)}">' for name in names)


def _fonts() -> str:
    return f'<link rel="stylesheet" href="{_HERE}/fonts.css">'


def _finding(number: int, passage: Passage, is_found: bool) -> str:
    finding, what = passage.finding, standing(passage)
    where = escape(_where(finding.place))
    where = f'<a href="#at-{number}">{where}</a>' if is_found else where
    line = f"<pre>{_marked(passage.line, finding.place)}</pre>" if passage.line is not None else ""
    return (
        f'<li class="{what}" id="finding-{number}"><b>{what}</b> {where} <code>{escape(finding.name)}</code>{line}'
        f"<p>{escape(finding.wrong)}</p><p>{escape(finding.answer)}</p></li>"
    )


def _where(place: Place) -> str:
    return f"{place.file}:{place.line}" if place.line else place.file


def _marked(line: str, place: Place) -> str:
    begin, end = place.column - 1, place.column - 1 + place.width
    return f"{escape(line[:begin])}<mark>{escape(line[begin:end])}</mark>{escape(line[end:])}"
