"""What is added to a studio that has begun: a card, a container, and a date of a class.

Decided: a date is added without `announced:`. Why: people are told of it by the first publication, which keeps that day; the day on which
it was written down would stand in calendars and feeds as that of the news.
"""

import re
from dataclasses import dataclass
from datetime import datetime

from builder.model.recipe.ingredient import DeclaredAs
from builder.read.text.file_names import plain_name
from builder.start.marks import filled, flow, scalar
from builder.start.starters import card_start, text_of

_BLOCK = re.compile(r"^dates:[ \t]*(#.*)?$", re.MULTILINE)
_ANY_DATES = re.compile(r"^dates:", re.MULTILINE)
_EMPTY = re.compile(r"^dates:[ \t]*\[[ \t]*\][ \t]*(#.*)?$", re.MULTILINE)
_ITEM = re.compile(r"^([ \t]*)- ")
SHELF_CONTAINERS = "shelf/containers.yaml"


# What a label in the EU, the UK and Canada needs to know of a scent.
_STATEMENT = """\
# The supplier's allergen statement; without it nothing that holds this scent has a label in the EU, the UK and Canada. `source` is the
# short name of the supplier in shelf/sources.yaml, such as `our-supplier: {title: Scents of Weir, kind: trade}`.
# allergen statement: {covers: extended list, contains: {Linalool: 1 to 2 %}, source: our-supplier, at: lot 12, known: supplier}
"""


def card_file(name: str, kind: str) -> dict[str, str]:
    """Return the file of a card of a kind of ingredient."""
    start = card_start(kind)
    more = [f"declared as: {start.declared_as}"] if start.declared_as else []
    more += [f"hazards: {flow(start.hazards)}             # what can hurt in it; cautions and gear follow from it"] if start.hazards else []
    values = {
        "name": scalar(name),
        "kind": kind,
        "counts as": start.counts_as,
        "mixes with": start.mixes_with,
        "scent": _STATEMENT if start.declared_as in (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR) else "",
        "more": "\n".join(more) or "# hazards: [dust]                # what can hurt in it; cautions and gear follow from it",
    }
    return {f"shelf/ingredients/{plain_name(name)}.yaml": filled(text_of("card.yaml"), values, in_ounces=False)}


def with_container(text: str, name: str, capacity: str, shape: str) -> str:
    """Return `shelf/containers.yaml` with one more container at its end."""
    entry = filled(text_of("container.yaml"), {"name": scalar(name), "capacity": capacity, "shape": shape}, in_ounces=False)
    return f"{text.rstrip()}\n{entry}" if text.strip() else entry


@dataclass(frozen=True)
class NewDate:
    """A date as a teacher says it."""

    on: datetime
    enrolled: int | None = None

    @property
    def line(self) -> str:
        """Return it as `class.yaml` writes it."""
        booked = "" if self.enrolled is None else f", enrolled: {self.enrolled}"
        return f"{{on: {self.on:%Y-%m-%d %H:%M}{booked}}}"


def with_date(text: str, date: NewDate) -> str | None:
    """Return `class.yaml` with one more date, all else as it was; None where its dates stand in a way that only a person can add to."""
    text = text.rstrip("\n") + "\n"
    empty = _EMPTY.search(text)
    if empty:
        return f"{text[: empty.start()]}dates:\n  - {date.line}{text[empty.end() :]}"
    block = _BLOCK.search(text)
    if block:
        return _after_last_item(text, block.end() + 1, date)
    return None if _ANY_DATES.search(text) else f"{text}dates:\n  - {date.line}\n"


def _after_last_item(text: str, start: int, date: NewDate) -> str | None:
    lines = text[start:].split("\n")
    last, indent = -1, ""
    for number, line in enumerate(lines):
        item = _ITEM.match(line)
        if line and not line[0].isspace() and not item and not line.startswith("#"):
            break
        if item and (last < 0 or item[1] == indent):
            indent = item[1]
        if line.strip() and not line.lstrip().startswith("#"):
            last = number
    if last < 0:
        return f"{text[:start]}  - {date.line}\n{text[start:]}"
    lines.insert(last + 1, f"{indent}- {date.line}")
    return text[:start] + "\n".join(lines)
