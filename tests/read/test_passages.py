"""A passage that ships is shown in the studio's language, line by line, and judged by its English."""

from itertools import pairwise
from pathlib import Path

import pytest

from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.label.language import ENGLISH, Language
from builder.model.teaching.lesson import Block, Prose, Steps, sentences_in
from builder.read.library import passages_in, read_library
from builder.read.teaching.passages import messages_of
from builder.read.text.text_files import TextFolder
from builder.words.fold import fold

MIX = CONTENT / "passages" / "mix-lye.md"
SHIPPED = sorted((CONTENT / "passages").glob("*.md"))


def spoken(folder: Path, texts: dict[str, str]) -> tuple[dict[str, tuple[Block, ...]], list[Finding]]:
    """Read the passages of a studio in a language of these texts."""
    found: list[Finding] = []
    studio = TextFolder(folder, found)
    drawn_on = read_library(CONTENT, studio)
    language = Language("Spanish", "es_MX", texts={fold(english): text for english, text in texts.items()})
    said = passages_in(language, drawn_on, found)
    return dict(said), found


def backwards(text: str) -> str:
    """Translate by turning each word round: as many words, none of them English."""
    return " ".join(word[::-1] for word in text.split())


BACKWARDS = {line: backwards(line) for path in SHIPPED for line in messages_of(path.read_text(encoding="utf-8"))}


def shown(blocks: tuple[Block, ...]) -> str:
    """Return what blocks show, as one text."""
    pieces = [piece for block in blocks if isinstance(block, Prose) for piece in block.pieces]
    pieces += [piece for block in blocks if isinstance(block, Steps) for step in block.steps for piece in step.pieces]
    return "".join(piece for piece in pieces if isinstance(piece, str))


def test_what_it_shows_and_what_it_means(tmp_path: Path) -> None:
    lines = list(messages_of(MIX.read_text(encoding="utf-8")))
    assert lines[1] == "Weigh the cold water into the jug, and stand the jug in the tray."
    said, found = spoken(tmp_path, BACKWARDS)
    assert found == []
    english, _ = spoken(tmp_path, {})
    blocks = said["mix-lye"]
    assert "hgieW eht dloc retaw otni eht ,guj" in shown(blocks) and "Weigh" not in shown(blocks)
    assert isinstance(blocks[1], Steps) and len(blocks[1].steps) == 7
    assert any("Lye goes into water" in one.words for one in sentences_in(blocks))
    assert set(english) == set(said)


def test_the_own_passage_of_a_studio_is_said_as_it_is_written(tmp_path: Path) -> None:
    (tmp_path / "shelf" / "passages").mkdir(parents=True)
    (tmp_path / "shelf" / "passages" / "mix-lye.md").write_text("1. La sosa al agua, nunca al revés.\n", encoding="utf-8")
    said, found = spoken(tmp_path, BACKWARDS)
    assert found == [] and "La sosa al agua" in shown(said["mix-lye"])


def test_lines_that_make_other_steps_are_refused(tmp_path: Path) -> None:
    lines = list(messages_of(MIX.read_text(encoding="utf-8")))
    texts = BACKWARDS | {lines[0]: "1. One."}
    said, found = spoken(tmp_path, texts)
    assert [(one.name, one.place.file) for one in found] == [("language-broken", "shelf/languages/spanish.po")]
    assert "Weigh the cold water" in shown(said["mix-lye"])


def test_english_needs_no_reading(tmp_path: Path) -> None:
    drawn_on = read_library(CONTENT, TextFolder(tmp_path, []))
    assert passages_in(ENGLISH, drawn_on, []) is drawn_on.passages


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_each_paragraph_and_step_of_ours_is_one_line(path: Path) -> None:
    body = path.read_text(encoding="utf-8").split("---\n", 2)[2].strip("\n")
    lines = body.split("\n")
    # A line goes on after another without an empty line between only where both are steps of one list.
    wrapped = [after for before, after in pairwise(lines) if before and after and not after.lstrip()[:1].isdigit()]
    assert [line for line in wrapped if not line.lstrip().startswith(("- ", "* ", "{"))] == []
