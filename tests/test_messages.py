"""The file from which a language is made holds every message."""

from builder.model.label.language import LABEL
from tests.messages import FILE, KEYWORDS, ON_LABELS, all_found, as_text


def test_no_two_messages_that_are_counted_begin_alike() -> None:
    """A language knows a counted message by its form for one: two with another form for many would be one."""
    forms: dict[tuple[str | None, str], set[str]] = {}
    for keywords, context in ((KEYWORDS, None), (ON_LABELS, LABEL)):
        for _, found in all_found(keywords):
            for _, texts, _, own in found:
                if isinstance(texts, tuple) and len(texts) == 2:
                    forms.setdefault((own or context, texts[0]), set()).add(texts[1])
    assert {one: many for one, many in forms.items() if len(many) > 1} == {}


def test_the_file_of_messages_is_current() -> None:
    assert FILE.read_text(encoding="utf-8") == as_text(), "write it anew: python -m tests.messages"
