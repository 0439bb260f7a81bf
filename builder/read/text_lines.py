"""The lines of a Markdown file, to find the place of something that stands in a block of it."""

from bisect import bisect_right
from dataclasses import dataclass

from builder.model.place import Place
from builder.read.markdown import Token


@dataclass(frozen=True)
class RunningText:
    """Where the lines of the text of one block stand: where each begins in that text, and the place of its beginning in the file."""

    content: str
    begins: tuple[int, ...]
    places: tuple[Place, ...]

    def place(self, begin: int, end: int) -> Place:
        """Give the place of a piece of the text, as far as it stands in one line."""
        line = bisect_right(self.begins, begin) - 1
        stop = self.begins[line + 1] - 1 if line + 1 < len(self.begins) else len(self.content)
        start = self.places[line]
        return Place(start.file, start.line, start.column + begin - self.begins[line], max(1, min(end, stop) - begin))

    @property
    def whole(self) -> Place:
        """Give the place of the first line."""
        return self.place(0, len(self.content))


@dataclass(frozen=True)
class TextLines:
    """The lines of a file; the first of them is line `first` of the file."""

    file: str
    lines: tuple[str, ...]
    first: int = 1

    def of_block(self, token: Token) -> Place:
        """Give the place of the first line of a block."""
        line = token.map[0] if token.map else 0
        text = self._line(line)
        return Place(self.file, line + self.first, len(text) - len(text.lstrip()) + 1, max(1, len(text.strip())))

    def of_text(self, token: Token) -> RunningText:
        """Find the lines of a block's running text; each is the end of a line of the file."""
        first = token.map[0] if token.map else 0
        begins, places, begin = [], [], 0
        for number, shown in enumerate(token.content.split("\n")):
            begins.append(begin)
            places.append(Place(self.file, first + number + self.first, _column(self._line(first + number), shown) + 1))
            begin += len(shown) + 1
        return RunningText(token.content, tuple(begins), tuple(places))

    def of_cell(self, token: Token, after: int) -> RunningText:
        """Find the text of a cell of a table, which begins after a column of its line."""
        first = token.map[0] if token.map else 0
        found = self._line(first).find(token.content, after)
        place = Place(self.file, first + self.first, max(found, after) + 1)
        return RunningText(token.content, (0,), (place,))

    def _line(self, number: int) -> str:
        return self.lines[number] if number < len(self.lines) else ""


def _column(line: str, shown: str) -> int:
    """Give the column at which a line of running text begins in its line of the file."""
    tail, shown = line.rstrip(), shown.rstrip()
    if tail.endswith(shown):
        return len(tail) - len(shown)
    return max(0, line.find(shown))
