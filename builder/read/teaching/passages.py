"""A file of `passages/` becomes blocks that lessons take in. Its head says what it is called, and when and from what it was written."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import PurePosixPath

from builder.model.finding import Finding, stop
from builder.model.label.language import Language
from builder.model.place import Place
from builder.model.teaching.lesson import Block, Prose, Steps
from builder.read.known import NamesKnown
from builder.read.shapes.library import PassageHeadShape
from builder.read.teaching.blocks import Heading, PassageHere, read_blocks
from builder.read.yaml.fit import fit
from builder.read.yaml.placed_yaml import read_yaml

_HEAD = re.compile(r"---\n(.*?\n)---(?:\n|$)", re.DOTALL)
Passages = Mapping[str, tuple[Block, ...]]

# A line of a passage: the sign of a step or of a point, what it says, and a drawing that it calls for at its end.
_LINE = re.compile(r"(\s*(?:(?:\d+\.|[-*])\s+)?)(.*?)(\s*(?:\{[^{}]*\})?)")


def read_passage(text: str, file: str, known: NamesKnown, findings: list[Finding]) -> tuple[Block, ...]:
    """Read one passage."""
    head = _HEAD.match(text)
    if head:
        placed = read_yaml(head[1], file, findings, first_line=2)
        if placed:
            fit(PassageHeadShape, placed, findings, known)
    body = text[head.end() :] if head else text
    blocks: list[Block] = []
    for block in read_blocks(body, file, findings, text.count("\n", 0, head.end() if head else 0) + 1):
        match block:
            case Heading(_, _, place):
                wrong = "A passage stands inside a part of a lesson, so it has no title and no parts of its own."
                findings.append(stop("heading-out-of-place", place, wrong, 'Begin the heading with "### ".'))
            case PassageHere(name):
                wrong = "A passage cannot take in another one."
                findings.append(stop("brace-out-of-place", name.place, wrong, "Take both in where they are wanted."))
            case _:
                blocks.append(block)
    return tuple(blocks)


def messages_of(passage: str) -> Iterator[str]:
    """Yield what a passage that ships says, line by line, for translators; a paragraph or a step of it is one line."""
    yield from (said for _, said, _ in _lines(passage) if said)


def said_in(
    language: Language, english: tuple[Block, ...], passage: str, file: str, known: NamesKnown, findings: list[Finding]
) -> tuple[Block, ...]:
    """Return a passage that ships in another language: it shows that, and is judged by its English, whose words alone the rules know."""
    said = "\n".join(sign + (language.text(line) if line else "") + drawing for sign, line, drawing in _lines(passage))
    if said == "\n".join(map("".join, _lines(passage))):
        return english
    shown = read_passage(passage[: _body_at(passage)] + said, file, known, findings)
    if list(map(_shape, shown)) != list(map(_shape, english)):
        wrong = f"In {language.name}, the passage {PurePosixPath(file).stem} does not have the paragraphs and steps that it has in English."
        remedy = "Translate each line as one line of running text: no number, hyphen or other sign of Markdown before it."
        findings.append(stop("language-broken", Place(f"shelf/languages/{language.file}"), wrong, remedy))
        return english
    return tuple(_showing(one, other) for one, other in zip(english, shown, strict=True))


def _shape(block: Block) -> tuple[type, int]:
    return type(block), len(block.steps) if isinstance(block, Steps) else 1


def _showing(english: Block, other: Block) -> Block:
    """Return a block that says what the other says, and means what the English means."""
    match english, other:
        case Prose(), Prose():
            return replace(other, sentences=english.sentences)
        case Steps(), Steps():
            pairs = zip(english.steps, other.steps, strict=True)
            return Steps(tuple(replace(shown, sentences=judged.sentences) for judged, shown in pairs))
        case _:
            return english


def _body_at(passage: str) -> int:
    head = _HEAD.match(passage)
    return head.end() if head else 0


def _lines(passage: str) -> Iterator[tuple[str, str, str]]:
    for line in passage[_body_at(passage) :].split("\n"):
        match = _LINE.fullmatch(line)
        yield (match[1], match[2], match[3]) if match else (line, "", "")
