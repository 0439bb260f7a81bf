"""Text broken into lines by the widths of its letters, so that what fits is known before anything is printed."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import groupby, pairwise
from math import ceil, inf

from builder.compose.label.label_texts import Paragraph, Run
from builder.model.label.typeface import POINT, Typeface
from builder.model.remembered import remembered
from builder.words.hyphens import breaks_of, broken_at

LEADING = 1.09
# How wide a word is, in parts of its line, that does not stand alone in the last line.
ALONE = 0.3
# How many paragraphs are remembered: those of some hundred labels.
MOST_KNOWN = 2_000
# A sum of widths taken in another order may differ by less than this.
TOUCH = 1e-6


@dataclass(frozen=True)
class Block:
    """A paragraph in its place: left and top edge and the width it may take, in millimetres, its type size in points, its lines.

    `face` is the typeface where it is none of the two of all text; `tracking` is what is added after each letter, in parts of the size.
    `picture` is shown in place of its words, by its path in the studio folder, and is `high` millimetres.
    """

    x: float
    y: float
    width: float
    points: float
    lines: tuple[Paragraph, ...]
    face: str = ""
    is_centred: bool = False
    tracking: float = 0.0
    leading: float = LEADING
    picture: str = ""
    high: float = 0.0

    @property
    def height(self) -> float:
        """Return its height in millimetres."""
        return self.high or len(self.lines) * line_height(self.points, self.leading)

    @property
    def below(self) -> float:
        """Return where it ends."""
        return self.y + self.height


def line_height(points: float, leading: float = LEADING) -> float:
    """Return the height of one line in millimetres."""
    return points * leading * POINT


@dataclass(frozen=True)
class _Word:
    """A word with its width: a part that grows with the type size, and the lines to write on, in millimetres."""

    runs: tuple[Run, ...]
    for_each_point: float
    blank: float

    def width(self, points: float) -> float:
        return self.for_each_point * points + self.blank


@dataclass(frozen=True, eq=False)
class _Text:
    """A paragraph as words with their widths, and what is known of it: where its lines end at a size and width, and the lines."""

    paragraph: Paragraph
    words: tuple[_Word, ...]
    ends: dict[tuple[float, float], tuple[int, ...] | None] = field(default_factory=dict)
    lines: dict[tuple[int, ...], tuple[Paragraph, ...]] = field(default_factory=dict)

    @cached_property
    def whole(self) -> _Word:
        """Return all words as one, without the spaces between them."""
        return _Word((), sum(word.for_each_point for word in self.words), sum(word.blank for word in self.words))

    def lines_at_least(self, points: float, width: float) -> int:
        """Return a number of lines with fewer than which it cannot do."""
        return max(1, ceil(self.whole.width(points) / width - TOUCH)) if width > 0 else 1


@dataclass(frozen=True)
class Setter:
    """Sets text in the two faces of the labels; remembers the words of each paragraph, and its lines at a size and width.

    `hyphenates`: a word that alone is wider than its line is broken. `broken`: the ways to break a name in a face into so many rows.
    """

    faces: Mapping[str, Typeface]
    hyphenates: bool = False
    known: dict[Paragraph, _Text] = field(default_factory=dict)
    known_by_identity: dict[int, _Text] = field(default_factory=dict)
    broken: dict[tuple[str, str, int], list[tuple[list[str], list[float]]]] = field(default_factory=dict)

    def __reduce__(self) -> tuple[type["Setter"], tuple[Mapping[str, Typeface], bool]]:
        """Return what it is made of, and nothing that it remembers: that is what stands on labels, and may be somebody's own words."""
        return type(self), (self.faces, self.hyphenates)

    @property
    def in_turn(self) -> tuple["Setter", ...]:
        """Return what is tried: one that breaks no word, before one that does."""
        return (setter_of(self.faces), self) if self.hyphenates else (self,)

    def width(self, text: str, bold: bool, points: float) -> float:
        """Return the width of a text in millimetres."""
        return self.faces["bold" if bold else "regular"].width(text, points)

    def lines(self, paragraph: Paragraph, points: float, width: float) -> tuple[Paragraph, ...] | None:
        """Break a paragraph into lines of at most that width; None where a word alone is wider and may not be broken."""
        text = self._text(paragraph)
        ends = self._ends(text, points, width)
        if ends is None and self.hyphenates:
            text = self._text(self._hyphenated(paragraph, points, width))
            ends = self._ends(text, points, width)
        if ends is None:
            return None
        if ends not in text.lines:
            text.lines[ends] = _cut(text.words, ends)
        return text.lines[ends]

    def _hyphenated(self, paragraph: Paragraph, points: float, width: float) -> Paragraph:
        """Break each word that is wider than a line: a space stands at the break, behind its hyphen."""
        return tuple(
            run if run.blank else replace(run, text=" ".join(self._pieces(word, run, points, width) for word in run.text.split(" ")))
            for run in paragraph
        )

    def _pieces(self, word: str, run: Run, points: float, width: float) -> str:
        if self.width(word, run.bold, points) <= width:
            return word
        parts = (broken_at(word, at) for at in breaks_of(word, run.locale))
        first, rest = next((both for both in parts if self.width(both[0], run.bold, points) <= width), (word, ""))
        return f"{first} {self._pieces(rest, run, points, width)}" if rest else word

    def lines_in(self, paragraph: Paragraph, points: float, width_of: Callable[[int], float]) -> tuple[Paragraph, ...] | None:
        """Break a paragraph into lines each of which has its own width, by its number from 0; None where a word is wider than its line."""
        words = self._text(paragraph).words
        ends = self._broken(words, points, width_of)
        return None if ends is None else _cut(words, ends)

    def _ends(self, text: _Text, points: float, width: float) -> tuple[int, ...] | None:
        """Return for each line the number of words that stand in it and before it."""
        key = (points, width)
        if key not in text.ends:
            ends = self._broken(text.words, points, lambda _: width)
            text.ends[key] = self._in_company(text.words, ends, points, width) if ends else ends
        return text.ends[key]

    def _in_company(self, words: tuple[_Word, ...], ends: tuple[int, ...], points: float, width: float) -> tuple[int, ...]:
        """Move the last word of the line before beside a short word that is alone in the last line."""
        *above, last, end = (0, 0, *ends)
        if end - last != 1 or last - above[-1] < 3 or words[last].width(points) > ALONE * width:
            return ends
        both = words[last - 1].width(points) + self._spaces[words[last - 1].runs[-1].bold] * points * POINT + words[last].width(points)
        return (*ends[:-2], last - 1, end) if both <= width else ends

    def _broken(self, words: tuple[_Word, ...], points: float, width_of: Callable[[int], float]) -> tuple[int, ...] | None:
        ends: list[int] = []
        used, space = 0.0, 0.0
        for number, word in enumerate(words):
            wide = word.width(points)
            if number and used + space + wide <= width_of(len(ends) - 1):
                used += space
            elif wide > width_of(len(ends)):
                return None
            else:
                ends.append(number)
                used = 0.0
            used += wide
            space = self._spaces[word.runs[-1].bold] * points * POINT
        return (*ends[1:], len(words)) if words else ()

    @cached_property
    def _spaces(self) -> tuple[float, float]:
        """Return the width of a space in the regular and the bold face, as a part of the size."""
        regular, bold = (face.widths.get(ord(" "), face.widest) for face in (self.faces["regular"], self.faces["bold"]))
        return regular, bold

    def _text(self, paragraph: Paragraph) -> _Text:
        """Return a paragraph as words: found by its identity, or by what it says."""
        found = self.known_by_identity.get(id(paragraph))
        if found is not None and found.paragraph is paragraph:
            return found
        if len(self.known) >= MOST_KNOWN:
            self.known.clear()
            self.known_by_identity.clear()
            self.broken.clear()
        if paragraph not in self.known:
            self.known[paragraph] = _Text(
                paragraph,
                tuple(
                    _Word(tuple(word), sum(self.width(run.text, run.bold, 1.0) for run in word), sum(run.blank for run in word))
                    for word in _words(paragraph)
                ),
            )
        found = self.known[paragraph]
        if found.paragraph is paragraph:
            self.known_by_identity[id(paragraph)] = found
        return found

    def stack(
        self, paragraphs: Sequence[tuple[Paragraph, float]], x: float, y: float, width: float, gap: float, bottom: float = inf
    ) -> tuple[Block, ...] | None:
        """Set paragraphs, each in its size, one below the other; None where one is too wide or the last ends below `bottom`."""
        texts = [(self._text(paragraph), points) for paragraph, points in paragraphs]
        if bottom < inf:
            least = sum(text.lines_at_least(points, width) * line_height(points) for text, points in texts)
            if y + least + gap * (len(texts) - 1) > bottom + TOUCH:
                return None
        blocks: list[Block] = []
        for paragraph, points in paragraphs:
            lines = self.lines(paragraph, points, width)
            if lines is None:
                return None
            blocks.append(Block(x, y, width, points, lines))
            if blocks[-1].below > bottom:
                return None
            y = blocks[-1].below + gap
        return tuple(blocks)


@remembered(2)
def setter_of(faces: Mapping[str, Typeface]) -> Setter:
    """Return the setter of these faces, which all labels share: most paragraphs stand on the labels of many dates."""
    return Setter(faces)


@remembered(2)
def hyphenating_setter_of(faces: Mapping[str, Typeface]) -> Setter:
    """Return the setter of these faces that breaks words which alone are wider than their line."""
    return Setter(faces, hyphenates=True)


def _words(paragraph: Paragraph) -> list[list[Run]]:
    """Return the words of a paragraph; a word may be of several runs, such as a bracket beside a bold word."""
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


def _cut(words: Sequence[_Word], ends: tuple[int, ...]) -> tuple[Paragraph, ...]:
    """Return the lines of some words, each as far as its end."""
    return tuple(_joined(_spaced(words[begin:end])) for begin, end in pairwise((0, *ends)))


def _spaced(words: Sequence[_Word]) -> list[Run]:
    """Return the runs of the words of a line, with a space after each word in its own face."""
    runs: list[Run] = []
    for word in words:
        runs += [_SPACE[runs[-1].bold], *word.runs] if runs else word.runs
    return runs


_SPACE = {bold: Run(" ", bold) for bold in (False, True)}


def _joined(line: list[Run]) -> Paragraph:
    """Join neighbouring runs of one face."""
    joined: list[Run] = []
    for (bold, is_blank), group in groupby(line, key=lambda run: (run.bold, bool(run.blank))):
        runs = list(group)
        joined += runs if is_blank or len(runs) == 1 else [Run("".join(run.text for run in runs), bold)]
    return tuple(joined)
