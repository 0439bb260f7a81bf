"""A Markdown text becomes a row of blocks: headings, prose, steps, and the two that stand alone in braces."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name, Place
from builder.model.teaching.lesson import CautionHere, Piece, Prose, Step, Steps
from builder.model.teaching.prose import RunningText, Sentence, sentences_of
from builder.read.teaching.braces import drawings_alone, standing_alone
from builder.read.teaching.pieces import PieceWriter, plain_text
from builder.read.text.markdown import Token, parse_markdown
from builder.read.text.text_lines import TextLines

FINDS = (FindingKind("heading-without-space", STOP, "A heading has no space after its sign, so that it is a paragraph."),)

# Signs of a heading that touch the word after them, so that Markdown takes them for a part of it.
_WITHOUT_SPACE = re.compile(r"(#{1,6})([^#\s].*)")


@dataclass(frozen=True)
class Heading:
    """A heading of level 1 or 2; deeper ones are prose."""

    level: int
    text: str
    place: Place
    written: RunningText

    @property
    def sentences(self) -> tuple[Sentence, ...]:
        """Return what it says."""
        return sentences_of(self.written)

    def place_of(self, word: str) -> Place:
        """Return the place of a word in the brackets at the end of the heading, or of the heading where it is not there as it is."""
        begin = self.written.content.find(word, self.written.content.rfind("(") + 1) if word else -1
        return self.written.place(begin, begin + len(word)) if begin >= 0 else self.place


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
    """Return an ordered list that is no run of steps as prose."""
    pieces: list[Piece] = ["<ol>\n"]
    for step in steps.steps:
        pieces += ["<li>", *step.pieces, "</li>\n"]
    return Prose((*pieces, "</ol>\n"), steps.steps[0].place, tuple(one for step in steps.steps for one in step.sentences))


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
    writer = PieceWriter(lines, findings)
    if first.type == "ordered_list_open":
        return Steps(tuple(_step(item, lines, findings) for item in _items(run)))
    if first.type == "heading_open":
        writer.refuse_braces(run[1], "a heading")
        prose = Prose(writer.write(run), place, writer.sentences)
        level = int(first.tag[1])
        return Heading(level, plain_text(run[1]), place, lines.of_text(run[1])) if level <= 2 else prose
    if first.type == "paragraph_open":
        alone = _standing_alone(run[1], lines) or _meant_as_heading(run[1], lines, findings)
        if alone:
            return alone
        if drawings_alone(run[1]):
            return Prose(writer.drawings(run), place)
    return Prose(writer.write(run), place, writer.sentences)


def _standing_alone(inline: Token, lines: TextLines) -> TextBlock | None:
    alone = standing_alone(inline)
    if alone is None:
        return None
    name = Name(alone[1], lines.of_text(inline).whole)
    return CautionHere(name) if alone[0] == "caution" else PassageHere(name)


def _meant_as_heading(inline: Token, lines: TextLines, findings: list[Finding]) -> Heading | None:
    """Find a heading without its space. One that divides the text is taken for a heading, so that nothing else is found for want of it."""
    match = _WITHOUT_SPACE.match(inline.content)
    if match is None:
        return None
    written = lines.of_text(inline)
    signs, words = match.groups()
    wrong = f'"{signs}" makes a heading only with a space after it; as it stands, this is a paragraph.'
    findings.append(stop("heading-without-space", written.whole, wrong, f'Write "{signs} ", or "\\#" where the sign itself is meant.'))
    return Heading(len(signs), words, written.whole, written) if len(signs) <= 2 else None


def _items(run: list[Token]) -> Iterator[list[Token]]:
    """Divide the tokens of a list into those of its items, each with the tokens that open and close it."""
    item: list[Token] = []
    for token in run[1:-1]:
        item.append(token)
        if token.type == "list_item_close" and token.level == 1:
            yield item
            item = []


def _step(item: list[Token], lines: TextLines, findings: list[Finding]) -> Step:
    writer = PieceWriter(lines, findings, in_step=True)
    return Step(writer.write(item[1:-1]), lines.of_block(item[0]), writer.sentences)
