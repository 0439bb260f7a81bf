"""The studio's own line at a place, for showing it beneath a finding."""

from functools import cache
from pathlib import Path

from builder.model.place import Place


class SourceLines:
    """Lines of the files of a studio; places in `content/` are looked up in the library."""

    def __init__(self, studio_folder: Path, content: Path) -> None:
        """Remember where the two lie; files are opened when a line is asked for."""
        self._studio, self._content = studio_folder, content
        self._read = cache(self._lines)

    def at(self, place: Place) -> str | None:
        """Return the line at a place without its ending, or None where there is none to show."""
        if not place.line:
            return None
        lines = self._read(place.file)
        return lines[place.line - 1] if place.line <= len(lines) else None

    def _lines(self, file: str) -> tuple[str, ...]:
        inside, _, rest = file.partition("/")
        path = self._content / rest if inside == "content" else self._studio / file
        if not path.is_file():
            return ()
        try:
            return tuple(path.read_text(encoding="utf-8-sig", errors="replace").split("\n"))
        except OSError:
            return ()
