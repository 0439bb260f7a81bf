"""Text to model. The only stage that opens input files; it knows files and lines, and nothing of chemistry.

text_files       a folder of files, in order of their names, to texts
placed_yaml      YAML to lists and mappings of text, each with its place
amounts, numbers text to quantities
shapes, fit      data of a file to a shape, or to findings with their places
markdown, blocks lesson text to blocks with holes for amounts
the others       one noun each: a shape to the model
studios          the whole folder
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from builder.read.dates.published_dates import read_published_dates
    from builder.read.recipe.shelf import read_shelf
    from builder.read.studios import read_studio

__all__ = ["read_published_dates", "read_shelf", "read_studio"]


def __getattr__(name: str) -> object:
    """Load what is asked for: who only shows a line of a file needs none of it."""
    if name == "read_published_dates":
        from builder.read.dates.published_dates import read_published_dates

        return read_published_dates
    if name == "read_shelf":
        from builder.read.recipe.shelf import read_shelf

        return read_shelf
    if name == "read_studio":
        from builder.read.studios import read_studio

        return read_studio
    raise AttributeError(name)
