"""Pictures that were made before: one that is made of the same is taken from the last publication, as sheets are.

A photograph is made of its file and what is asked of it, a drawn picture of what it shows; both of the code and the libraries that make
them. `.pictures.json` in the output holds that, and the sum of what was made, so that a picture that somebody has changed is made again.
"""

import json
import sys
import zlib
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path

from builder.pictures.photograph import made_with
from builder.press.kept import sum_of, sum_of_code, versions

FILE = ".pictures.json"
LIBRARY = "pillow"


class KeptPictures:
    """The pictures of the last publication, and those of this one as they come."""

    def __init__(self, last: Path) -> None:
        """Read what the last publication noted; `last` is its folder."""
        self._last, self._before, self._now = last, _read(last / FILE), dict[str, tuple[str, str]]()

    def made(self, name: str, of: bytes, make: Callable[[], bytes]) -> bytes:
        """Return what is made `of` some bytes under a name: as it was made before, or made now."""
        made_of = sum_of(f"{_maker()}\n".encode() + of)
        known, summed = self._before.get(name, ("", ""))
        data = self._read(name) if known == made_of else b""
        if not data or sum_of(data) != summed:
            data = make()
        self._now[name] = (made_of, sum_of(data))
        return data

    def write(self, folder: Path) -> None:
        """Write down for the next publication what this one is made of."""
        (folder / FILE).write_text(json.dumps(dict(sorted(self._now.items())), indent=1), encoding="utf-8")

    def _read(self, name: str) -> bytes:
        try:
            return (self._last / name).read_bytes()
        except OSError:
            return b""


@cache
def _maker() -> str:
    """Return the sum of all that makes pictures: the code, Python, and the library with what it is made of."""
    return sum_of("\n".join((sys.version, zlib.ZLIB_RUNTIME_VERSION, *sorted(versions(LIBRARY)), *made_with(), *sum_of_code())).encode())


def _read(file: Path) -> Mapping[str, tuple[str, str]]:
    try:
        return {str(name): (str(made_of), str(summed)) for name, (made_of, summed) in json.loads(file.read_text(encoding="utf-8")).items()}
    except (OSError, ValueError, TypeError, AttributeError):
        return {}
