"""A Markdown text becomes a row of blocks: headings, prose, steps, and the two that stand alone in braces."""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.model.finding import Finding
from builder.model.lesson import CautionHere, Piece, Prose, Step, Steps
from builder.model.place import Name, Place
from builder.read.markdown import Token, parse_markdown
from builder.read.pieces import PieceWriter, plain_text, standing_alone
from builder.read.text_lines import TextLines


@dataclass(frozen=True)
class Heading:
    """A heading of level 1 or 2; deeper ones are prose."""

    level: int
    text: str
    place: Place


@dataclass(frozen=True)
class PassageHere:
    """A place at which the text takes in a shared passage."""

    name: Name


TextBlock = Heading | Prose | Steps | CautionHere | PassageHere


def read_blocks(text: str, file: str, findings: list[Finding], first_line: int = 1) -> list[TextBlock]:
    """Read a text, or the rest of one that begins at a line of its file."""
    lines = TextLines(file, tuple(text.split("\n")), first_line)
    return [_block(run, lines, findings) for run in _runs(parse_markdown(text))]


def as_prose(steps: Steps) -> Prose:
    """Give an ordered list that is no run of steps as prose."""
    pieces: list[Piece] = ["<ol>\n"]
    for step in steps.steps:
        pieces += ["<li>", *step.pieces, "</li>\n"]
    return Prose((*pieces, "</ol>\n"), steps.steps[0].place)


def _runs(tokens: list[Token]) -> Iterator[list[Token]]:
    """Divide tokens into the runs of their outermost blocks."""
    run: list[Token] = []
    for token in tokens:
        run.append(token)
        if token.level == 0 and token.nesting != 1:
            yield run
            run = []


def _block(run: list[Token], lines: TextLines, findings: list[Finding]) -> TextBlock:
    first, place = run[0], lines.of_block(run[0])
    if first.type == "heading_open":
        writer = PieceWriter(lines, findings)
        writer.refuse_braces(run[1], "a heading")
        pieces = writer.write(run)
        return Heading(int(first.tag[1]), plain_text(run[1]), place) if first.tag in ("h1", "h2") else Prose(pieces, place)
    if first.type == "ordered_list_open":
        return Steps(tuple(_step(item, lines, findings) for item in _items(run)))
    alone = standing_alone(run[1]) if first.type == "paragraph_open" else None
    if alone:
        name = Name(alone[1], lines.within(run[1], 0, run[1].content))
        return CautionHere(name) if alone[0] == "caution" else PassageHere(name)
    return Prose(PieceWriter(lines, findings).write(run), place)


def _items(run: list[Token]) -> Iterator[list[Token]]:
    """Divide the tokens of a list into those of its items, each with the tokens that open and close it."""
    item: list[Token] = []
    for token in run[1:-1]:
        item.append(token)
        if token.type == "list_item_close" and token.level == 1:
            yield item
            item = []


def _step(item: list[Token], lines: TextLines, findings: list[Finding]) -> Step:
    return Step(PieceWriter(lines, findings).write(item[1:-1]), lines.of_block(item[0]))
