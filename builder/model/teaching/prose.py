"""Running text as sentences that know where they stand.

What Markdown and braces add to the words is blanked out, so that every letter keeps its distance from the beginning. A name in braces
stays as words, unless `of` follows it: then the words after `of` say what is meant.
"""

import re
from bisect import bisect_right
from dataclasses import dataclass, field, replace
from itertools import zip_longest

from builder.model.place import NOWHERE, Place


@dataclass(frozen=True)
class RunningText:
    """Where the lines of the text of one block stand: where each begins in that text, and the place of its beginning in the file."""

    content: str
    begins: tuple[int, ...]
    places: tuple[Place, ...]

    def place(self, begin: int, end: int) -> Place:
        """Return the place of a piece of the text, as far as it stands in one line."""
        line = bisect_right(self.begins, begin) - 1
        stop = self.begins[line + 1] - 1 if line + 1 < len(self.begins) else len(self.content)
        start = self.places[line]
        return Place(start.file, start.line, start.column + begin - self.begins[line], max(1, min(end, stop) - begin))

    @property
    def whole(self) -> Place:
        """Return the place of the first line."""
        return self.place(0, len(self.content))


def value_as_text(value: str, place: Place) -> RunningText:
    """Return a value of a YAML file as running text. Its words stand where the value begins, since folded lines keep no columns."""
    return RunningText(value, (0,), (place,))


@dataclass(frozen=True)
class Sentence:
    """One sentence: its words without marks, and where they stand. `affirmed`: it asks, and the next one makes a statement of it."""

    words: str
    begin: int = 0
    affirmed: bool = False
    written: RunningText = field(default=RunningText("", (0,), (NOWHERE,)), compare=False)

    @property
    def is_question(self) -> bool:
        """Tell whether it asks; what is answered with yes is told."""
        return not self.affirmed and self.words.rstrip(" \"'”’)").endswith("?")

    def place(self, begin: int, end: int) -> Place:
        """Return the place of a piece of it; of a value of a YAML file the place of the value."""
        if len(self.written.begins) == 1 and "\n" not in self.written.content and self.written.places[0].width > 1:
            return self.written.places[0]
        return self.written.place(self.begin + begin, self.begin + end)


_NAMED_OF = re.compile(r"\{(?!\s*(?:caution|passage|drawing)\b)[^{}]*\}(?=\s+of\b)\s+of\b", re.IGNORECASE)
_ALONE = re.compile(r"\{\s*(?:caution|passage|drawing)\s*:[^{}]*\}", re.IGNORECASE)
_ADDRESS = re.compile(r"(?<=\])\([^()\s]*(?:\s+\"[^\"]*\")?\)")
_MARKS = re.compile(r"[*`{}\[\]\\]|(?<!\w)_+|_+(?!\w)")
_ABBREVIATED = re.compile(r"\b(?:e\.g|i\.e|approx|min|no|vol|wt|Dr|St|[A-Z]|etc|temp)\.$", re.IGNORECASE)
_END = re.compile(r"[.!?]+[\"'”’)]*(?=\s|$)")

# "May I use it on a cut? Yes" allows what it asks; "does lye eat aluminium? Yes" does not order it.
_YES = re.compile(r"(?:yes|sure|certainly|of course|by all means)\b(?!\W+but\b)", re.IGNORECASE)
_MAY = re.compile(
    r"(?:(?:can|may|could|should|shall|must|do|might) (?:the )?(?:i|we|you|one|it|they|this|these|everybody|students|children|kids)\b"
    r"|(?:is|are) (?:\w+ ){1,3}?(?:safe|fine|ok|okay|all right|allowed|enough|ready)\b|am i allowed\b)",
    re.IGNORECASE,
)

# "Do I need gloves? No" says that there is no need for them; "must we" is as long as "no need".
_NO = re.compile(r"no\b", re.IGNORECASE)
_NEEDS = re.compile(r"(?:do (?:i|we|you|they) (?:really )?(?:need to|need|have to)|must (?:we|you|they))\b", re.IGNORECASE)


def _blank(match: re.Match[str]) -> str:
    return " " * len(match[0])


def without_marks(text: str) -> str:
    """Blank out what is no word: marks of Markdown, addresses of links, braces with what they place."""
    for pattern in (_ALONE, _NAMED_OF, _ADDRESS, _MARKS):
        text = pattern.sub(_blank, text)
    return text


def sentences_of(written: RunningText) -> tuple[Sentence, ...]:
    """Divide running text into its sentences."""
    text = without_marks(written.content)
    found, begin = [], 0
    for end in [*(match.end() for match in _END.finditer(text) if not _is_abbreviated(text, match)), len(text)]:
        words = text[begin:end]
        lead = len(words) - len(words.lstrip())
        if words.strip():
            found.append(Sentence(words.strip(), begin + lead, written=written))
        begin = end
    return tuple(_answered(one, then.words) if then else one for one, then in zip_longest(found, found[1:]))


def _answered(asked: Sentence, answer: str) -> Sentence:
    """Return a question with what its answer makes of it: leave to do what it asks, or no need for it. What says so keeps its length."""
    if asked.is_question and _YES.match(answer) and _MAY.match(asked.words):
        return replace(asked, affirmed=True)
    needs = _NEEDS.match(asked.words) if asked.is_question and _NO.match(answer) else None
    if needs is None:
        return asked
    needless = "no need to" if len(needs[0]) >= len("no need to") else "no need"
    return replace(asked, words=needless.ljust(len(needs[0])) + asked.words[needs.end() :], affirmed=True)


def _is_abbreviated(text: str, end: re.Match[str]) -> bool:
    """Tell whether a full stop belongs to a shortened word and the sentence goes on in small letters."""
    after = text[end.end() :].lstrip()
    return end[0] == "." and bool(_ABBREVIATED.search(text[max(0, end.start() - 7) : end.end()])) and (not after or not after[0].isupper())
