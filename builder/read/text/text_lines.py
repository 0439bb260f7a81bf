"""The lines of a Markdown file, to find the place of something that stands in a block of it."""

from dataclasses import dataclass

from builder.model.place import Place
from builder.model.teaching.prose import RunningText
from builder.read.text.markdown import Token


@dataclass(frozen=True)
class TextLines:
    """The lines of a file; the first of them is line `first` of the file."""

    file: str
    lines: tuple[str, ...]
    first: int = 1

    def of_block(self, token: Token) -> Place:
        """Return the place of the first line of a block."""
        line = token.map[0] if token.map else 0
        text = self._line(line)
        return Place(self.file, line + self.first, len(text) - len(text.lstrip()) + 1, max(1, len(text.strip())))

    def of_text(self, token: Token) -> RunningText:
        """Find the lines of a block's running text; each is the end of a line of the file."""
        shown_lines = token.content.split("\n")
        first = self._first(token, shown_lines[0])
        begins, places, begin = [], [], 0
        for number, shown in enumerate(shown_lines):
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

    def _first(self, token: Token, shown: str) -> int:
        """Return the number of the line on which running text begins: lines before it may hold nothing but spaces of Unicode."""
        begin, end = token.map or (0, 0)
        return next((number for number in range(begin, end) if shown in self._line(number)), begin)

    def _line(self, number: int) -> str:
        return self.lines[number] if number < len(self.lines) else ""


def _column(line: str, shown: str) -> int:
    """Return the column at which a line of running text begins in its line of the file."""
    tail, shown = line.rstrip(), shown.rstrip()
    if tail.endswith(shown):
        return len(tail) - len(shown)
    return max(0, line.find(shown))
