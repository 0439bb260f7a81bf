"""A file of `pages/` becomes a page: a title, and text with headings of its own."""

from html import escape
from pathlib import PurePosixPath

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.model.teaching.lesson import Block, Page, Prose, Steps
from builder.read.teaching.blocks import Heading, PassageHere, as_prose, read_blocks

FINDS = (
    FindingKind("heading-out-of-place", STOP, "A heading stands where none can stand."),
    FindingKind("page-title-missing", STOP, "A page has no title."),
)


def read_page(text: str, file: str, findings: list[Finding]) -> Page | None:
    """Read one page; None where it has no title."""
    title: Heading | None = None
    blocks: list[Block] = []
    for block in read_blocks(text, file, findings):
        match block:
            case Heading(1, _, place):
                if title:
                    findings.append(second_title(place))
                title = title or block
            case Heading(_, words, place):
                blocks.append(Prose((f"<h2>{escape(words)}</h2>\n",), place, block.sentences))
            case Steps():
                blocks.append(as_prose(block))
            case PassageHere(name):
                wrong = "A page cannot take in a passage."
                findings.append(stop("brace-out-of-place", name.place, wrong, "Write the text out, or lead to a class."))
            case _:
                blocks.append(block)
    if title is None or not title.text:
        findings.append(stop("page-title-missing", Place(file, 1, 1), "This page has no title.", 'Begin it with a line "# Title".'))
        return None
    return Page(PurePosixPath(file).stem, title.text, tuple(blocks), title.place, title.sentences)


def second_title(place: Place) -> Finding:
    """Return in words that a text has two titles."""
    return stop("heading-out-of-place", place, "A text has one title, and this is a second one.", 'Begin the heading with "## ".')
