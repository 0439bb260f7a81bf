"""The lines of a Markdown file, to find the place of something that stands in a block of it."""

from dataclasses import dataclass

from builder.model.place import Place
from builder.read.markdown import Token


@dataclass(frozen=True)
class TextLines:
    """The lines of a file; the first of them is line `first` of the file."""

    file: str
    lines: tuple[str, ...]
    first: int = 1

    def of_block(self, token: Token) -> Place:
        """Give the place of the first line of a block."""
        line = token.map[0] if token.map else 0
        text = self.lines[line] if line < len(self.lines) else ""
        return Place(self.file, line + self.first, len(text) - len(text.lstrip()) + 1, max(1, len(text.strip())))

    def within(self, block: Token, at: int, written: str) -> Place:
        """Give the place of a piece that begins at a position in the text of a block."""
        begin = block.content.rfind("\n", 0, at) + 1
        end = block.content.find("\n", at)
        line = (block.map[0] if block.map else 0) + block.content.count("\n", 0, at)
        shown = block.content[begin : end if end >= 0 else None]
        text = self.lines[line] if line < len(self.lines) else ""
        column = text.find(shown) + (at - begin) if shown in text else max(0, text.find(written))
        return Place(self.file, line + self.first, column + 1, len(written.partition("\n")[0]))
