"""The messages of a language, as gettext compiles them. Those that hold the same are equal, and can be handed to another process."""

from __future__ import annotations

from gettext import GNUTranslations, NullTranslations
from io import BytesIO
from typing import Any

from builder.words.spelling import american_around


class Untranslated(NullTranslations):
    """No messages: all is said as it is written."""

    def __eq__(self, other: object) -> bool:
        return type(other) is type(self)

    def __hash__(self) -> int:
        return hash(type(self))


class AmericanEnglish(Untranslated):
    """Messages as they are written, in American spelling; the names in their braces, and marks of HTML, stay."""

    def gettext(self, message: str) -> str:
        """Return a message."""
        return american_around(message)

    def pgettext(self, context: str, message: str) -> str:
        """Return a message of a context."""
        return american_around(super().pgettext(context, message))

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """Return the form of a message for a number of things."""
        return american_around(super().ngettext(msgid1, msgid2, n))

    def npgettext(self, context: str, msgid1: str, msgid2: str, n: int) -> str:
        """Return the form of a message of a context for a number of things."""
        return american_around(super().npgettext(context, msgid1, msgid2, n))


class Messages(GNUTranslations):
    """The messages of one compiled file; what it lacks, `others` say."""

    def __init__(self, compiled: bytes, others: NullTranslations | None = None) -> None:
        """Take what a compiled file (MO) holds. Raises ValueError where it does not say how the language counts."""
        super().__init__(BytesIO(compiled))
        self._made_of = (compiled, others)
        if others is not None:
            self.add_fallback(others)

    def before(self, others: NullTranslations) -> Messages:
        """Return these messages, and others for what they lack."""
        return Messages(self._made_of[0], others)

    def __reduce__(self) -> tuple[type[Messages], tuple[Any, ...]]:
        """Return what they are made of, since the rule by which a language counts is a function."""
        return Messages, self._made_of

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Messages) and self._made_of == other._made_of

    def __hash__(self) -> int:
        return hash(self._made_of)
