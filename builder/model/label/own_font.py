"""A font of the studio's own: what can be made of its file."""

from dataclasses import dataclass, field

from builder.model.label.typeface import Typeface

# What labels and styles call it.
OWN_TITLES = "own titles"
FONT_ENDINGS = (".ttf", ".otf")


@dataclass(frozen=True)
class OwnFont:
    """A font file by its path in the studio folder.

    `typeface` is None where the file is not there or cannot be read. `may_print` says whether it may go into a PDF, `may_travel` whether
    it may lie on the web for any reader (OS/2 fsType of OpenType 1.9: installable, and no restriction besides).
    """

    path: str
    typeface: Typeface | None = None
    may_print: bool = True
    may_travel: bool = True
    letters: frozenset[int] = field(default=frozenset())

    @property
    def ending(self) -> str:
        """Return the ending of its file, with the point."""
        return self.path[self.path.rfind(".") :].lower()

    @property
    def prints(self) -> bool:
        """Tell whether titles on paper can be set in it."""
        return self.typeface is not None and self.may_print

    @property
    def shows(self) -> bool:
        """Tell whether titles of pages can be set in it."""
        return self.typeface is not None and self.may_travel
