"""What a phone loads for a page of the site, weighed on the files as they were written.

The page itself and its styles count as hosts send them, packed (gzip), and so do drawings; of a photograph the heaviest file that a phone
is told of counts, whichever kind its browser knows, also where it lies further down and may never be scrolled to. PDFs and calendars behind
links are no part of a page.

Decided: a page above the most is not published at all. Why: whoever stands before the studio with a poor connection gives up, and nobody
tells the teacher. Our own pages stay below it whatever the photographs show: what can exceed it is a text with many pictures.
"""

import gzip
import re
from collections.abc import Iterator
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from posixpath import dirname, normpath
from urllib.parse import unquote

from builder.model.document import Folder
from builder.press.folder import FolderError

MOST = 300_000
_PACKED = (".css", ".svg", ".html")
# More than packing adds to a file of no more than the most (zlib's own bound, `deflateBound`, is 110 bytes): a page that is light enough as
# it lies need not be packed.
_OF_PACKING = 200
# Tags that load a file, found before they are read: reading every tag takes ten times as long.
_MAY_LOAD = re.compile(r"""<(?:link|source|img)\s(?:[^>"']|"[^"]*"|'[^']*')*>""", re.IGNORECASE)


class PageTooHeavyError(FolderError):
    """A page is more than a phone should have to load."""


def refuse_heavy_pages(folder: Path) -> None:
    """Weigh every page of the site that lies in a folder. Raises PageTooHeavyError."""

    @cache
    def weight(path: str) -> int:
        data = (folder / Folder.SITE / path).read_bytes()
        return len(gzip.compress(data, mtime=0) if path.endswith(_PACKED) else data)

    @cache
    def unpacked(path: str) -> int:
        return (folder / Folder.SITE / path).stat().st_size + _OF_PACKING

    site = folder / Folder.SITE
    pages = sorted(file.relative_to(site).as_posix() for file in site.rglob("*.html"))
    loaded = {}
    for page in pages:
        parts = ((page,), *parts_of(page, (site / page).read_text(encoding="utf-8")))
        if sum(max(map(unpacked, kinds)) for kinds in parts) > MOST:
            loaded[page] = {path: weight(path) for path in (max(kinds, key=weight) for kinds in parts)}
    heavy = {page: parts for page, parts in loaded.items() if sum(parts.values()) > MOST}
    if not heavy:
        return
    lines = (f"{page} {_kilobytes(sum(parts.values()))} ({', '.join(_heaviest(parts))})" for page, parts in heavy.items())
    wrong = f"More than {_kilobytes(MOST)} would be loaded on a phone for: {'; '.join(lines)}."
    remedy = "Show fewer pictures there, or simpler drawings, and publish again. Nothing was written, and the old output is as it was."
    raise PageTooHeavyError(wrong, remedy)


def parts_of(page: str, html: str) -> tuple[tuple[str, ...], ...]:
    """Return the files beside a page that a phone at most loads for it, by their paths in the site: of several kinds it loads one."""
    parser = _Parts()
    parser.feed("".join(_MAY_LOAD.findall(html)))
    paths = (tuple(normpath(f"{dirname(page)}/{unquote(one)}").lstrip("/") for one in kinds) for kinds in parser.found)
    return tuple(dict.fromkeys(paths))


def _heaviest(parts: dict[str, int]) -> Iterator[str]:
    for path, weight in sorted(parts.items(), key=lambda part: (-part[1], part[0]))[:3]:
        yield f"{path} {_kilobytes(weight)}"


def _kilobytes(weight: int) -> str:
    return f"{weight / 1000:.0f} KB"


class _Parts(HTMLParser):
    """Collects styles and pictures: of a picture in several widths the last, which is the widest, of each list for a phone."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, ...]] = []
        self._for_phones: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag == "link" and given.get("rel") == "stylesheet":
            self.found.append((given["href"],))
        elif tag == "source" and given.get("media"):
            self._for_phones.append(given["srcset"].rpartition(", ")[2].partition(" ")[0])
        elif tag == "img":
            self.found.append(tuple(self._for_phones) or (given["src"],))
            self._for_phones = []
