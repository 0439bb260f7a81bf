"""`lesson.md` becomes a lesson: a title, an introduction, and parts in the order of doing."""

from collections.abc import Sequence
from dataclasses import replace

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.model.teaching.lesson import Block, Lesson, Part, Steps
from builder.read.teaching.blocks import Heading, PassageHere, TextBlock, as_prose, read_blocks
from builder.read.teaching.pages import second_title
from builder.read.teaching.part_headings import read_part_heading
from builder.read.teaching.passages import Passages
from builder.words.nearest import did_you_mean

FINDS = (
    FindingKind("lesson-title-missing", STOP, "A lesson has no title."),
    FindingKind("passage-unknown", STOP, "A lesson takes in a passage that does not exist."),
)


def read_lesson(text: str, file: str, passages: Passages, findings: list[Finding]) -> Lesson | None:
    """Read one lesson; None where its title or the heading of a part does not say what it must."""
    introduction, *parts = _divide(read_blocks(text, file, findings))
    titles = [block for block in introduction if isinstance(block, Heading)]
    later = [block for part in parts for block in part[1:] if isinstance(block, Heading)]
    findings.extend(second_title(heading.place) for heading in (*titles[1:], *later))
    titled = bool(titles and titles[0].text)
    if not titled:
        findings.append(stop("lesson-title-missing", Place(file, 1, 1), "This lesson has no title.", 'Begin it with a line "# Title".'))
    made = [_part(part, passages, findings) for part in parts]
    opening = tuple(as_prose(block) if isinstance(block, Steps) else block for block in _blocks(introduction, passages, findings))
    sound = [part for part in made if part]
    if not titled or len(sound) < len(made):
        return None
    return Lesson(titles[0].text, opening, tuple(sound), titles[0].place, titles[0].sentences)


def _divide(blocks: list[TextBlock]) -> list[list[TextBlock]]:
    """Divide blocks before each heading of a part; what stands before the first is the introduction."""
    runs: list[list[TextBlock]] = [[]]
    for block in blocks:
        if isinstance(block, Heading) and block.level == 2:
            runs.append([])
        runs[-1].append(block)
    return runs


def _part(run: list[TextBlock], passages: Passages, findings: list[Finding]) -> Part | None:
    heading = run[0]
    assert isinstance(heading, Heading)
    part = read_part_heading(heading, findings)
    blocks = tuple(_blocks(run[1:], passages, findings))
    return replace(part, blocks=blocks) if part else None


def _blocks(run: Sequence[TextBlock], passages: Passages, findings: list[Finding]) -> list[Block]:
    """Take in the passages, and leave the headings out."""
    blocks: list[Block] = []
    for block in run:
        if isinstance(block, PassageHere):
            if block.name.text not in passages:
                wrong = f'No passage is called "{block.name}".'
                remedy = f"Correct the name, or add the passage to shelf/passages/.{did_you_mean(block.name.text, passages)}"
                findings.append(stop("passage-unknown", block.name.place, wrong, remedy))
            blocks += passages.get(block.name.text, ())
        elif not isinstance(block, Heading):
            blocks.append(block)
    return blocks
