"""What a command needs to know before it writes or lists: a studio or its library as they stand, or as they would be with new files."""

from collections.abc import Mapping
from pathlib import Path
from tempfile import TemporaryDirectory

from builder.library import CONTENT
from builder.model.library import Library
from builder.model.studio import Studio
from builder.press.new_files import write_new_files
from builder.read.drawn_on import DrawnOn
from builder.read.library import read_library
from builder.read.studios import read_studio
from builder.read.text.text_files import TextFolder


def studio_in(folder: Path) -> Studio:
    """Read a studio; what cannot be read in it is left out, and is for `check` to say."""
    return read_studio(folder, CONTENT)[0]


def studio_of(files: Mapping[str, str]) -> Studio:
    """Read a studio that has not been written yet."""
    with TemporaryDirectory(prefix="stillroom-") as scratch:
        write_new_files(Path(scratch), files)
        return studio_in(Path(scratch))


def drawn_on(folder: Path | None) -> DrawnOn:
    """Read what the texts of a studio draw on: what ships, and what is on its shelf; without a studio, what ships."""
    return read_library(CONTENT, TextFolder(folder or CONTENT / "starters", []))


def library_of(folder: Path | None) -> Library:
    """Read the library that ships with what a studio adds to it."""
    return drawn_on(folder).library
