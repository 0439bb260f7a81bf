"""The file from which a language is made holds every message."""

from tests.messages import FILE, as_text


def test_the_file_of_messages_is_current() -> None:
    assert FILE.read_text(encoding="utf-8") == as_text(), "write it anew: python -m tests.messages"
