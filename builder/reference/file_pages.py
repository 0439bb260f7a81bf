"""The keys of a file become a page."""

from collections.abc import Iterator

from builder.reference.files import StudioFile
from builder.reference.keys import Key, Section, sections_of
from builder.reference.page import Page

_MOST_NAMED = 6


def file_page(file: StudioFile) -> Page:
    """Make the page of a file."""
    return Page(file.key, file.path, "\n".join(_lines(file)))


def _lines(file: StudioFile) -> Iterator[str]:
    yield from (f"# {file.path}", "", file.about)
    if file.arranged:
        yield from ("", f"The file is {file.arranged}.")
    for section in sections_of(*file.shapes):
        yield from ("", f"## {_heading(section, file)}", "")
        if section.under or len(file.shapes) > 1:
            yield from (section.about, "")
        yield from (_item(key) for key in section.keys)


def _heading(section: Section, file: StudioFile) -> str:
    if not section.under:
        return "Keys" if len(file.shapes) == 1 else f"Keys with `{section.keys[0].name}`"
    named = ", ".join(f"`{key}`" for key in section.under[:_MOST_NAMED])
    more = len(section.under) - _MOST_NAMED
    return f"Under {named}{f' and {more} others' if more > 0 else ''}"


def _item(key: Key) -> str:
    without = f", then `{key.default}`" if key.default else ""
    example = f" Example: `{key.example}`." if key.example else ""
    return f"- **{key.name}** ({'needed' if key.is_needed else f'may be left out{without}'}; {key.value}). {key.about}{example}"
