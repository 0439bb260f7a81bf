"""The instructions of a finished sheet: what its steps and its cautions say, with where on the sheet they stand.

Headings, tables, amounts and addresses are left out, and each step is closed by a full stop: run together without stops, short steps would
score as one long sentence.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from html.parser import HTMLParser

from builder.words.reading import sentences_of

_NO_END = frozenset({"br", "img", "hr", "meta", "link", "input", "path", "circle", "rect", "line", "use", "source"})
_LEFT_OUT = frozenset({"amount", "tick", "step", "signal", "drawing", "weight"})
# The name of a caution, and what says it again in fewer words, of which a sheet shows one.
_SAID_BESIDE = frozenset({"signal", "in-few-words"})
_IN_OUNCES = re.compile(r"\(\s*[\d.,]+[^()]*\)")


@dataclass(frozen=True)
class Said:
    """One sentence: where it stands, such as `B5` or `a caution before B5`, and whether it is of a step.

    `block` is the number of the step or caution that it is of, and `part` that of the part in which this stands, 0 outside of parts, in the
    order of the sheet.
    """

    at: str
    text: str
    is_step: bool
    block: int = 0
    part: int = 0


def said_on(html: str) -> tuple[Said, ...]:
    """Return the sentences of the steps and cautions of a sheet, in their order."""
    reader = _Reader()
    reader.feed(html)
    return tuple(reader.found())


class _Reader(HTMLParser):
    """Collects the text of steps and of cautions, by what is open around it."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self._open: list[tuple[str, str]] = []
        self._pieces: list[str] = []
        self._name, self._kind = "", ""
        self._blocks: list[tuple[str, str, str, int]] = []
        self._parts = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Begin a step, or a paragraph of a caution."""
        names = dict(attrs).get("class") or ""
        if tag in _NO_END:
            self._pieces.append(" ")
            return
        self._open.append((tag, names))
        self._parts += _is_part(tag, names)
        if tag == "li" and any(one == "ol" and "steps" in had.split() for one, had in self._open):
            self._begin("step")
        elif tag == "p" and any("caution" in had.split() for _, had in self._open) and not _SAID_BESIDE & set(names.split()):
            self._begin("caution")

    def handle_endtag(self, tag: str) -> None:
        """End what is open; what was never closed within it ends with it."""
        if not any(one == tag for one, _ in self._open):
            return
        while self._open:
            closed, _ = self._open.pop()
            if closed == tag:
                break
        if self._kind and tag == ("li" if self._kind == "step" else "p"):
            part = self._parts if any(_is_part(*one) for one in self._open) else 0
            self._blocks.append((self._kind, self._name, "".join(self._pieces), part))
            self._kind = ""

    def handle_data(self, data: str) -> None:
        """Take what is said, and the name of the step."""
        around = {name for _, had in self._open for name in had.split()}
        if self._kind == "step" and "step" in around:
            self._name += data.strip()
        elif self._kind and not around & _LEFT_OUT and not any(tag in ("svg", "table") for tag, _ in self._open):
            self._pieces.append(data)

    def _begin(self, kind: str) -> None:
        self._kind, self._name, self._pieces = kind, "", []

    def found(self) -> Iterator[Said]:
        """Yield the sentences, a caution by the step that follows it."""
        for number, (kind, name, text, part) in enumerate(self._blocks):
            at = name
            if kind == "caution":
                after = next((one for what, one, *_ in self._blocks[number:] if what == "step"), "")
                at = f"the caution before {after}" if after else "the last caution"
            closed = _IN_OUNCES.sub("", text).strip()
            for sentence in sentences_of(closed if closed.endswith((".", "!", "?")) else f"{closed}."):
                yield Said(at, sentence, kind == "step", number, part)


def _is_part(tag: str, names: str) -> bool:
    return tag == "section" and "part" in names.split()
