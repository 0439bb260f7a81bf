"""All pages in their order: what is told at length, the keys of each file, the findings, the sums."""

from collections.abc import Iterator
from functools import cache

from builder.compose.document_table import DOCUMENTS
from builder.compose.recipe.wording import RULES, sentence
from builder.finding_kinds import finding_kinds
from builder.library import CONTENT
from builder.reference.file_pages import file_page
from builder.reference.files import SHIPPED_FILES, STUDIO_FILES, StudioFile
from builder.reference.layouts import layout_page
from builder.reference.page import Page
from builder.reference.terms import terms

# In the order in which a studio comes to need them; each is `content/reference/KEY.md`.
TOPICS = (
    "by-hand", "notebook", "soap", "portions", "lessons", "watching", "dates", "choices", "labels", "buying", "cards",
    "pictures", "documents", "checks", "figures", "sums", "tables", "commands", "json", "installing",
)  # fmt: skip
START, FINDINGS, WORDS, SUMS, OWN = "index", "findings", "words", "sums", "documents"
_SHIPPED = "They lie with the program; `stillroom list` and `stillroom explain` show what is in them. Yours stand on your shelf."
_TITLE = "Everything that a studio can write"


@cache
def pages() -> tuple[Page, ...]:
    """Make every page, the list of all of them first."""
    told = tuple(_topic(key) for key in TOPICS)
    files, shipped = (tuple(file_page(file) for file in some) for some in (STUDIO_FILES, SHIPPED_FILES))
    found = Page(FINDINGS, "Findings", "\n".join(_findings()))
    words = Page(WORDS, "Words of the trade, and ours", "\n".join(_words()))
    return (_start(told, found, words), *told, *files, found, words, *shipped)


def find_page(name: str) -> Page | None:
    """Find a page by its key, or by the path of a file in a studio; None where there is none."""
    key = name.casefold()
    at = next((file.key for file in (*STUDIO_FILES, *SHIPPED_FILES) if file.is_at(name)), key)
    return next((page for page in pages() if page.key in (key, at)), None) or layout_page(name)


def _topic(key: str) -> Page:
    text = (CONTENT / "reference" / f"{key}.md").read_text(encoding="utf-8").rstrip("\n")
    title = text.partition("\n")[0].removeprefix("# ")
    more = {SUMS: _sums, OWN: _documents}.get(key, tuple)
    return Page(key, title, "\n".join((text, *more())))


def _documents() -> Iterator[str]:
    """List every document whose view another may show, with what it is made for and who may see it."""
    yield ""
    for kind in DOCUMENTS:
        if kind.template:
            yield f"- **{kind.name}**: one for each {kind.scope.name}; for {kind.readers.value}. Template `{kind.template}`"


def _sums() -> Iterator[str]:
    """List every rule by which something is worked out, in the words of a teacher's sheet."""
    yield from ("", "## Every sum by its name", "", "So they are called in the JSON document and on the sheet of workings.", "")
    yield from (f"- **{sentence(name)}**: {words}." for name, words in RULES.items())


def _findings() -> Iterator[str]:
    yield from ("# Findings", "", "`stillroom explain NAME` shows one of them with an example.", "")
    for kind in finding_kinds().values():
        can_be = " or ".join(["stop"] * kind.stops + ["caution"] * kind.cautions)
        yield f"- **{kind.name}** ({can_be}{'' if kind.acceptable else ', cannot be accepted'}). {kind.means}"


def _words() -> Iterator[str]:
    yield from ("# Words of the trade, and ours", "", "`stillroom explain WORD` tells one of them.", "")
    for term in terms():
        also = f" Also called {', '.join(term.also_called)}." if term.also_called else ""
        yield f"- **{term.name}**. {term.means}{also}"


def _start(told: tuple[Page, ...], found: Page, words: Page) -> Page:
    def files(some: tuple[StudioFile, ...]) -> Iterator[str]:
        yield from (f"- [{file.key}]({file.key}.html): `{file.path}`. {file.about}" for file in some)

    lines = (
        f"# {_TITLE}",
        "",
        "`stillroom reference NAME` prints one of these pages, `stillroom reference --to FOLDER` writes all of them as web pages.",
        *("", "## What is told at length", ""),
        *(f"- [{page.key}]({page.key}.html): {page.title}" for page in told),
        *("", "## The keys of your files", "", *files(STUDIO_FILES)),
        *("", "## What the program answers", "", f"- [{found.key}]({found.key}.html): every finding by its name, and what it means"),
        f"- [{words.key}]({words.key}.html): {words.title}",
        *("", "## The files that ship", "", _SHIPPED, "", *files(SHIPPED_FILES)),
    )
    return Page(START, _TITLE, "\n".join(lines))
