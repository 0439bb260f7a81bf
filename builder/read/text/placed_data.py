"""What is written in a file, as nested lists and mappings of text, and the one way to ask where a piece of it stands.

Whoever reads a part of a file is handed that part (`inside`), and asks for places from there: of a value, of the key under which it
stands, of all keys beside each other. A table is a list of rows, and answers as YAML does.
"""

from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from typing import Any, TypeAlias

from builder.model.finding import Finding, stop
from builder.model.place import Name, Place
from builder.model.recipe.unread import UNREAD, as_far_as_read
from builder.read.text.text_error import TextError

Data: TypeAlias = "str | list[Data] | dict[str, Data]"
Step: TypeAlias = str | int
Path: TypeAlias = tuple[Step, ...]


@dataclass(frozen=True)
class Mark:
    """The places of a value and of the key (for an item of a list: the item) under which it stands."""

    key: Place
    value: Place


@dataclass(frozen=True)
class PlacedData:
    """The data of a file, or of the part of it at a path, and a mark for each path of the file.

    `in_part` says that some lines of the file could not be taken in, `is_whole` that what is made of it can be made whole.
    """

    file: str
    data: Data
    marks: Mapping[Path, Mark]
    in_part: bool = False
    path: Path = ()
    is_whole: bool = True

    def inside(self, *path: Step) -> "PlacedData":
        """Return the part at a path; of what is not there the path alone."""
        return replace(self, data=self._data(path), path=(*self.path, *path))

    def place(self, *path: Step) -> Place:
        """Return the place of the value at a path, or of the nearest value around it."""
        return self._mark(path).value

    def key_place(self, *path: Step) -> Place:
        """Return the place of the key at a path, or of the nearest one around it."""
        return self._mark(path).key

    @property
    def name(self) -> Name:
        """Return the name under which it is listed."""
        return Name(self.key, self.key_place())

    @property
    def key(self) -> str:
        """Return the name under which it is listed, as a text."""
        return str(self.path[-1])

    def places(self) -> dict[str, Place]:
        """Return for each key of a mapping the place of the text under it, or of the key itself where there is more than a text."""
        keys = self.data if isinstance(self.data, dict) else {}
        return {key: self.place(key) if isinstance(value, str) else self.key_place(key) for key, value in keys.items()}

    def refused(self, error: TextError) -> Finding:
        """Return as a finding what a reader says of a text that stands here."""
        return stop(error.name, (self.key_place if error.at_key else self.place)(*error.at), error.wrong, error.remedy)

    def part(self, make: Callable[[], Any]) -> Any:
        """Make a part of a value; where not all can be read, one that needs what cannot be, or is not written, cannot be read either."""
        if self.is_whole:
            return make()
        with as_far_as_read(), suppress(LookupError):
            return make()
        return UNREAD

    def _data(self, path: Path) -> Data:
        data: Any = self.data
        for step in path:
            try:
                data = "" if isinstance(data, str) else data[step]
            except (LookupError, TypeError):
                return ""
        return data  # type: ignore[no-any-return]

    def _mark(self, path: Path) -> Mark:
        path = (*self.path, *path)
        while path not in self.marks:
            path = path[:-1]
        return self.marks[path]
