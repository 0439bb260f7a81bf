"""The file from which a language is made holds every message."""

from babel.messages.pofile import read_po

from tests.messages import FILE, all_found, as_text, messages


def test_no_two_messages_that_are_counted_begin_alike() -> None:
    """A language knows a counted message by its form for one: two with another form for many would be one."""
    forms: dict[tuple[str | None, str], set[str]] = {}
    for _, texts, _, context in all_found():
        if isinstance(texts, tuple) and len(texts) == 2:
            forms.setdefault((context, texts[0]), set()).add(texts[1])
    assert {one: many for one, many in forms.items() if len(many) > 1} == {}


def test_the_file_of_messages_is_current() -> None:
    assert FILE.read_text(encoding="utf-8") == as_text(), "write it anew: python -m tests.messages"


def test_each_language_that_ships_is_whole() -> None:
    """A language that lacks one message is spoken by no studio (`language-incomplete`)."""
    every = {(one.context or "", one.id if isinstance(one.id, str) else one.id[0]) for one in messages() if one.id}
    for file in FILE.parent.glob("*.po"):
        with file.open("rb") as opened:
            said = {
                (one.context or "", one.id if isinstance(one.id, str) else one.id[0]) for one in read_po(opened) if one.id and one.string
            }
        assert sorted(every - said) == [], file.name
