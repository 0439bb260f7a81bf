"""Text broken into lines by the widths of its letters, so that what fits is known before anything is printed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from builder.compose.label.label_texts import Paragraph, Run
from builder.model.label.typeface import POINT, Typeface
from builder.model.remembered import remembered

LEADING = 1.09
# How many broken paragraphs are remembered: those of some hundred labels.
MOST_KNOWN = 20_000


@dataclass(frozen=True)
class Block:
    """A paragraph in its place: left and top edge and the width it may take, in millimetres, its type size in points, its lines."""

    x: float
    y: float
    width: float
    points: float
    lines: tuple[Paragraph, ...]

    @property
    def height(self) -> float:
        """Give its height in millimetres."""
        return len(self.lines) * line_height(self.points)

    @property
    def below(self) -> float:
        """Give where it ends."""
        return self.y + self.height


def line_height(points: float) -> float:
    """Give the height of one line in millimetres."""
    return points * LEADING * POINT


@dataclass(frozen=True)
class _Word:
    """A word with its width: a part that grows with the type size, and the lines to write on, in millimetres."""

    runs: tuple[Run, ...]
    for_each_point: float
    blank: float

    def width(self, points: float) -> float:
        return self.for_each_point * points + self.blank


@dataclass(frozen=True)
class Setter:
    """Sets text in the two faces of the labels; remembers the words of each paragraph, and its lines at a size and width."""

    faces: Mapping[str, Typeface]
    known_words: dict[Paragraph, tuple[_Word, ...]] = field(default_factory=dict)
    known_lines: dict[tuple[Paragraph, float, float], tuple[Paragraph, ...] | None] = field(default_factory=dict)

    def width(self, text: str, bold: bool, points: float) -> float:
        """Give the width of a text in millimetres."""
        return self.faces["bold" if bold else "regular"].width(text, points)

    def lines(self, paragraph: Paragraph, points: float, width: float) -> tuple[Paragraph, ...] | None:
        """Break a paragraph into lines of at most that width; None where a word alone is wider."""
        key = (paragraph, points, width)
        if key not in self.known_lines:
            if len(self.known_lines) >= MOST_KNOWN:
                self.known_lines.clear()
                self.known_words.clear()
            self.known_lines[key] = self._broken(paragraph, points, width)
        return self.known_lines[key]

    def _broken(self, paragraph: Paragraph, points: float, width: float) -> tuple[Paragraph, ...] | None:
        lines: list[list[Run]] = []
        used, space = 0.0, 0.0
        for word in self._words(paragraph):
            wide = word.width(points)
            if wide > width:
                return None
            if lines and used + space + wide <= width:
                lines[-1].append(Run(" ", lines[-1][-1].bold))
                used += space
            else:
                lines.append([])
                used = 0.0
            lines[-1] += word.runs
            used += wide
            space = self.width(" ", word.runs[-1].bold, points)
        return tuple(_joined(line) for line in lines)

    def _words(self, paragraph: Paragraph) -> tuple[_Word, ...]:
        if paragraph not in self.known_words:
            self.known_words[paragraph] = tuple(
                _Word(tuple(word), sum(self.width(run.text, run.bold, 1.0) for run in word), sum(run.blank for run in word))
                for word in _words(paragraph)
            )
        return self.known_words[paragraph]

    def stack(
        self, paragraphs: Sequence[tuple[Paragraph, float]], x: float, y: float, width: float, gap: float
    ) -> tuple[Block, ...] | None:
        """Set paragraphs, each in its size, one below the other."""
        blocks: list[Block] = []
        for paragraph, points in paragraphs:
            lines = self.lines(paragraph, points, width)
            if lines is None:
                return None
            blocks.append(Block(x, y, width, points, lines))
            y = blocks[-1].below + gap
        return tuple(blocks)


@remembered(2)
def setter_of(faces: Mapping[str, Typeface]) -> Setter:
    """Give the setter of these faces, which all labels share: most paragraphs stand on the labels of many dates."""
    return Setter(faces)


def _words(paragraph: Paragraph) -> list[list[Run]]:
    """Give the words of a paragraph; a word may be of several runs, such as a bracket beside a bold word."""
    words: list[list[Run]] = [[]]
    for run in paragraph:
        if run.blank:
            words[-1].append(run)
            continue
        for number, piece in enumerate(run.text.split(" ")):
            if number and words[-1]:
                words.append([])
            if piece:
                words[-1].append(Run(piece, run.bold))
    return [word for word in words if word]


def _joined(line: list[Run]) -> Paragraph:
    """Join neighbouring runs of one face."""
    joined: list[Run] = []
    for run in line:
        if joined and not run.blank and not joined[-1].blank and joined[-1].bold == run.bold:
            joined[-1] = Run(joined[-1].text + run.text, run.bold)
        else:
            joined.append(run)
    return tuple(joined)
