"""The studio's own templates and styles as files: each lies inside, and is no larger than what lays out a document can be."""

from builder.read.text.text_files import TextFolder

LAYOUTS = "layouts"
_READ_THERE = (".html", ".css")


def unread_layouts(studio: TextFolder) -> frozenset[str]:
    """Return the files and folders of the studio's own layouts that cannot be used, and find why."""
    if not studio.holds(LAYOUTS):
        return frozenset()
    below = (path.relative_to(studio.root).as_posix() for path in sorted((studio.root / LAYOUTS).rglob("*")))
    return frozenset(name for name in (LAYOUTS, *below) if not _can_be_read(studio, name))


def _can_be_read(studio: TextFolder, name: str) -> bool:
    if not name.endswith(_READ_THERE):
        return studio.can_be_opened(name)
    return studio.data(name, "a template or a style") is not None
