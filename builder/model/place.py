"""Where a piece of the studio's text stands, and a name that remembers where it was written."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.words.fold import fold


@dataclass(frozen=True, order=True)
class Place:
    """A spot in a file of the studio (or of the library), for findings.

    `file` is relative to the studio folder with forward slashes; those of the library begin with `content/`.
    `line` and `column` count from 1; `width` is the number of characters to mark. Line 0 means the file as a whole.
    """

    file: str
    line: int = 0
    column: int = 0
    width: int = 1

    @property
    def ships(self) -> bool:
        """Tell whether it is in a file that ships, which a studio never sees."""
        return self.file.startswith("content/")


NOWHERE = Place("")


@dataclass(frozen=True, kw_only=True)
class Placed:
    """A thing of a file that knows where it is written: as a whole, and each of its keys. Places never take part in equality."""

    place: Place = field(default=NOWHERE, compare=False)
    places: Mapping[str, Place] = field(default_factory=dict, compare=False)

    def at(self, key: str) -> Place:
        """Return the place of what stands under a key, or of the whole where the key is missing."""
        return self.places.get(key, self.place)


@dataclass(frozen=True)
class Name:
    """A name as the studio wrote it. Its place never takes part in equality."""

    text: str
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def key(self) -> str:
        """The form in which names are compared: without regard to case or to the run of spaces."""
        return fold(self.text)

    def __str__(self) -> str:
        return self.text
