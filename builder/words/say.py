"""The fixed sentences of documents, in the language of the run.

Each stands in English where it is used; `say` gives it in the language that is spoken. A language is one file of messages by their English
(gettext, as translators' editors know it), and English itself is no file. A message is a whole sentence or label with its values by name,
never pieces joined, so that a language can put them in its own order.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from gettext import NullTranslations

_SPOKEN: ContextVar[NullTranslations] = ContextVar("spoken", default=NullTranslations())  # noqa: B039  never changed in place


@contextmanager
def speaking(translations: NullTranslations) -> Iterator[None]:
    """Speak a language within the block."""
    before = _SPOKEN.set(translations)
    try:
        yield
    finally:
        _SPOKEN.reset(before)


def say(message: str, /, **values: object) -> str:
    """Give a message in the language that is spoken, `{name}` in it filled with the value of that name."""
    return _filled(_SPOKEN.get().gettext(message), values)


def say_in(context: str, message: str, /, **values: object) -> str:
    """Give a message whose English has more than one meaning: `context` says which, to translators only."""
    return _filled(_SPOKEN.get().pgettext(context, message), values)


def say_count(one: str, many: str, count: int, /, **values: object) -> str:
    """Give the form of a message for a number of things, `{count}` in it filled with the number."""
    return _filled(_SPOKEN.get().ngettext(one, many, count), {"count": count} | values)


def _filled(text: str, values: dict[str, object]) -> str:
    return text.format(**values) if values else text
