"""The file of a language for a translator: every message of the library, with what ours of that language says already."""

from builder.library import CONTENT
from builder.read.label.po_files import new_file
from builder.read.text.text_files import TextFolder


def language_file(name: str, code: str) -> str | None:
    """Return the text of a new file; None where no language has this code."""
    return new_file(TextFolder(CONTENT, []), f"languages/{name}.po", code)
