"""A file of `passages/` becomes blocks that lessons take in. Its head says what it is called, and when and from what it was written."""

import re

from builder.model.finding import Finding, stop
from builder.model.teaching.lesson import Block
from builder.read.shapes.library import PassageHeadShape
from builder.read.teaching.blocks import Heading, PassageHere, read_blocks
from builder.read.yaml.fit import Known, fit
from builder.read.yaml.placed_yaml import read_yaml

_HEAD = re.compile(r"---\n(.*?\n)---(?:\n|$)", re.DOTALL)


def read_passage(text: str, file: str, known: Known, findings: list[Finding]) -> tuple[Block, ...]:
    """Read one passage."""
    head = _HEAD.match(text)
    if head:
        placed = read_yaml(head[1], file, findings, first_line=2)
        if placed:
            fit(PassageHeadShape, placed, findings, known=known)
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
