"""What a document says of dangers and of first aid, and what of it another version of it leaves out.

Decided: the sentences of all cautions are looked for in the finished text. Why: whatever a template does to lose one, it is not there to
be read.
"""

from collections.abc import Iterator, Sequence

from builder.model.studio import Studio
from builder.words.html_text import text_in
from builder.words.spelling import american


def dropped(studio: Studio, ours: str, theirs: str) -> str | None:
    """Return the first sentence of a caution that stands in one HTML and not in another; None where there is none."""
    before, now = _plain(text_in(ours)), _plain(text_in(theirs))
    return next((one for one in sentences_of(studio) if _plain(one) in before and _plain(one) not in now), None)


def said_in(sentences: Sequence[str], html: str) -> Iterator[str]:
    """Yield those of some sentences that a document says."""
    text = _plain(text_in(html))
    return (one for one in sentences if _plain(one) in text)


def sentences_of(studio: Studio) -> Iterator[str]:
    """Yield what the cautions of a studio say, whole and in brief."""
    for text in studio.cautions.values():
        yield from (text.what, *text.avoid, *text.if_it_happens, text.in_brief or text.what, text.again or text.what)


def _plain(text: str) -> str:
    return " ".join(american(text).split())
