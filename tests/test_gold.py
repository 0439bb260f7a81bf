"""The example studio as it should come out: the text of its pages, and the pages, size and text of its sheets.

`gold/` holds them as plain text, one file for each document that is kept: all pages of the site, and of the sheets those of the first
date of each class and the first home size of each recipe. To write them anew: `python -m tests.test_gold`; then read the diff as its
readers would.
"""

import os
import re
import shutil
from collections.abc import Iterable
from pathlib import Path
from textwrap import fill

import pytest

from tests.page_text import text_of
from tests.published import EXAMPLE, composed_for, pdf_pages, published, sheets, soup, squeeze
from tests.whole_run import LONG

GOLD = Path(__file__).parent / "gold"


def kept() -> list[Path]:
    """Return the documents that are kept, relative to the output."""
    folder, _ = published()
    pages = sorted(path for path in (folder / "site").rglob("*.html") if "take-home" not in path.name)
    found: list[Path] = []
    composed = sheets()
    for one in sorted({path.parent.parent.name for path in composed if path.match("print/*/*/*.pdf")}):
        first = min(path.parent for path in composed if path.match(f"print/{one}/*/*.pdf"))
        found += [path for path in composed if path.parent == first]
        found += first_of_each(path for path in composed if path.match(f"print/{one}/take-home-*.pdf"))
    found += first_of_each(path for path in composed if path.match("site/classes/*take-home-*.pdf"))
    return [path.relative_to(folder) for path in (*pages, *found)]


def first_of_each(paths: Iterable[Path]) -> list[Path]:
    """Return the first home size of each recipe."""
    recipes = [path.stem for path in (EXAMPLE / "recipes").glob("*.yaml")]
    found: dict[str, Path] = {}
    for path in sorted(paths):
        found.setdefault(next(recipe for recipe in recipes if f"take-home-{recipe}-" in path.name), path)
    return list(found.values())


def as_text(path: Path) -> str:
    """Write a document as plain text that reads well in a diff."""
    folder, _ = published()
    if path.suffix == ".html":
        blocks = soup(folder / path).find_all(["title", "h1", "h2", "h3", "h4", "p", "li", "caption", "tr", "figcaption", "desc"])
        lines = [squeeze(block.get_text(" ")) for block in blocks if not block.find_parent(["p", "li"])]
        return "\n".join(fill(line, 110) for line in lines if line) + "\n"
    pages = pdf_pages(folder / path)
    parts = [f"{len(pages)} pages of {pages[0][0][0]:g} x {pages[0][0][1]:g} points"]
    parts += [f"--- page {number}\n{fill(text, 110)}" for number, (_, text) in enumerate(pages, start=1)]
    return "\n".join(parts) + "\n"


def test_the_same_documents_come_out() -> None:
    assert {f"{path}.txt" for path in kept()} == {path.relative_to(GOLD).as_posix() for path in GOLD.rglob("*.txt")}


FILES = sorted(GOLD.rglob("*.txt"))
OF_SHEETS = [file for file in FILES if file.name.endswith(".pdf.txt")]


def document_of(file: Path) -> Path:
    return Path(str(file.relative_to(GOLD))[: -len(".txt")])


@pytest.mark.parametrize("file", [file for file in FILES if file not in OF_SHEETS], ids=lambda file: document_of(file).as_posix())
def test_gold(file: Path) -> None:
    assert as_text(document_of(file)) == file.read_text(encoding="utf-8")


@pytest.mark.long
@pytest.mark.parametrize("file", OF_SHEETS, ids=lambda file: document_of(file).as_posix())
def test_gold_of_a_sheet(file: Path) -> None:
    assert as_text(document_of(file)) == file.read_text(encoding="utf-8")


def test_gold_of_the_sheets_that_are_pressed() -> None:
    folder, _ = published()
    # A pack has as many pages as the sheets that are joined in it, and not all of them are pressed here.
    pressed = [file for file in OF_SHEETS if (folder / document_of(file)).exists() and file.name != "pack.pdf.txt"]
    assert len(pressed) > 10
    changed = {file.name for file in pressed if as_text(document_of(file)) != file.read_text(encoding="utf-8")}
    assert not changed, "`python -m tests.test_gold` writes them anew"


def words(text: str) -> set[str]:
    """Return the words and numbers of a text, of which a PDF shows none parted but at a hyphen."""
    return set(re.findall(r"[^\W\d_]{4,}|\d+(?:\.\d+)?", text))


@pytest.mark.parametrize("file", OF_SHEETS, ids=lambda file: document_of(file).as_posix())
def test_every_word_and_number_of_a_sheet_is_one_that_is_kept(file: Path) -> None:
    """What a style may not print is left out: words beside a drawing, headings for the ear, numbers at the foot, small cautions."""
    folder, _ = published()
    unprinted = (
        "head",
        "script",
        "style",
        "svg",
        "figcaption",
        "h1.heard",
        "p.calls",
        "p.in-full",
        "p.in-few-words",
        *(["div.is-caution"] if file.name == "bench-steps.pdf.txt" else ()),
    )
    composed = text_of(composed_for(folder / document_of(file)).read_text(encoding="utf-8"), unprinted)
    kept = re.sub(r"[-\s\u00ad\x02\ufffe]", "", file.read_text(encoding="utf-8")).casefold()
    assert {word for word in words(composed) if word.casefold() not in kept} == set()


if __name__ == "__main__":
    os.environ[LONG] = "all sheets are pressed"
    if GOLD.exists():
        shutil.rmtree(GOLD)
    for one in kept():
        target = GOLD / f"{one}.txt"
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(as_text(one), encoding="utf-8")
        print(target.relative_to(GOLD))
