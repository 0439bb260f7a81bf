"""The pages of the guide in their order, and the list of them."""

from functools import cache

from builder.library import CONTENT
from builder.reference import Page

# In the order in which they are read; each is `content/guide/KEY.md`. The second ones are worked examples.
TOLD = ("walk", "numbers", "left-to-you", "web", "look")
WORKED = ("soap-lab", "two-products", "party")
START = "guide"
_TITLE = "The guide"


@cache
def guide_pages() -> tuple[Page, ...]:
    """Return every page, the list of all of them first."""
    told, worked = (tuple(_page(key) for key in keys) for keys in (TOLD, WORKED))
    return (_start(told, worked), *told, *worked)


def find_guide_page(key: str) -> Page | None:
    """Find a page by its key; None where there is none."""
    return next((page for page in guide_pages() if page.key == key.casefold()), None)


def _page(key: str) -> Page:
    text = (CONTENT / "guide" / f"{key}.md").read_text(encoding="utf-8").rstrip("\n")
    return Page(key, text.partition("\n")[0].removeprefix("# "), text)


def _start(told: tuple[Page, ...], worked: tuple[Page, ...]) -> Page:
    def listed(pages: tuple[Page, ...]) -> list[str]:
        return [f"- [{page.key}]({page.key}.html): {page.title}" for page in pages]

    lines = (
        f"# {_TITLE}",
        "",
        "`stillroom guide NAME` prints one of these pages; `stillroom guide --to FOLDER` writes all of them as web pages, with pictures.",
        *("", *listed(told)),
        *("", "## Worked examples", ""),
        "Each is a whole studio. `stillroom guide NAME --files FOLDER` writes its files into a new folder, to try things on.",
        *("", *listed(worked)),
        *("", "What may stand in each file, key by key, is told in the [reference](index.html)."),
    )
    return Page(START, _TITLE, "\n".join(lines))
