"""The example studio as it should come out: the text of its pages, and the pages, size and text of its sheets.

`gold/` holds them as plain text, one file for each document that is kept: all pages of the site, and of the sheets those of the first
date of each class and the first home size of each recipe. To write them anew: `python -m tests.test_gold`; then read the diff as its
readers would.
"""

import shutil
from collections.abc import Iterable
from pathlib import Path
from textwrap import fill

import pytest

from tests.published import EXAMPLE, pdf_pages, published, soup, squeeze

GOLD = Path(__file__).parent / "gold"


def kept() -> list[Path]:
    """Give the documents that are kept, relative to the output."""
    folder, _ = published()
    pages = sorted(path for path in (folder / "site").rglob("*.html") if "take-home" not in path.name)
    sheets = []
    for one in sorted(path for path in (folder / "print").iterdir() if path.is_dir() and path.name not in ("styles", "pictures")):
        sheets += sorted(sorted(path for path in one.iterdir() if path.is_dir())[0].glob("*.pdf"))
        sheets += first_of_each(one.glob("take-home-*.pdf"))
    sheets += first_of_each((folder / "site" / "classes").glob("*take-home-*.pdf"))
    return [path.relative_to(folder) for path in (*pages, *sheets)]


def first_of_each(paths: Iterable[Path]) -> list[Path]:
    """Give the first home size of each recipe."""
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


@pytest.mark.parametrize("file", sorted(GOLD.rglob("*.txt")), ids=lambda file: file.relative_to(GOLD).as_posix())
def test_gold(file: Path) -> None:
    assert as_text(Path(str(file.relative_to(GOLD))[: -len(".txt")])) == file.read_text(encoding="utf-8")


if __name__ == "__main__":
    if GOLD.exists():
        shutil.rmtree(GOLD)
    for one in kept():
        target = GOLD / f"{one}.txt"
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(as_text(one), encoding="utf-8")
        print(target.relative_to(GOLD))
