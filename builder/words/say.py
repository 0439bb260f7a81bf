"""The fixed sentences of documents, in the language of the run.

Each stands in English where it is used; `say` gives it in the language that is spoken. A language is one file of messages by their English
(gettext, as translators' editors know it), and English itself is no file. A message is a whole sentence or label with its values by name,
never pieces joined, so that a language can put them in its own order.
"""

import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from gettext import NullTranslations

HOLE = re.compile(r"\{(\w+)\}")
_SPOKEN: ContextVar[NullTranslations] = ContextVar("spoken", default=NullTranslations())  # noqa: B039  never changed in place


@contextmanager
def speaking(translations: NullTranslations) -> Iterator[None]:
    """Speak a language within the block."""
    before = _SPOKEN.set(translations)
    try:
        yield
    finally:
        _SPOKEN.reset(before)


def spoken() -> NullTranslations:
    """Return the language that is spoken, for whoever fills in messages in another way."""
    return _SPOKEN.get()


def say(message: str, /, **values: object) -> str:
    """Return a message in the language that is spoken, `{name}` in it filled with the value of that name.

    What is empty stays empty: under nothing gettext keeps the head of its file.
    """
    return fill(spoken().gettext(message) if message else "", values)


def say_in(context: str, message: str, /, **values: object) -> str:
    """Return a message whose English has more than one meaning: `context` says which, to translators only."""
    return fill(spoken().pgettext(context, message), values)


def say_count(one: str, many: str, count: int, /, **values: object) -> str:
    """Return the form of a message for a number of things, `{count}` in it filled with the number."""
    return fill(spoken().ngettext(one, many, count), {"count": count} | values)


def message(text: str, /) -> str:
    """Mark a text that stands in a table and is said later, by `say` of what the table gives."""
    return text


def messages(one: str, many: str, /) -> tuple[str, str]:
    """Mark the two forms of a text that stand in a table and are said later, by `say_count`."""
    return one, many


def fill(text: str, values: Mapping[str, object]) -> str:
    """Fill in a message. Nothing but names stands in its braces, so that no translation and no template reaches into a value."""
    return HOLE.sub(lambda hole: str(values[hole[1]]), text) if values else text
