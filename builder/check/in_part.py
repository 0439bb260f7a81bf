"""What can be read in part is judged as far as it is read.

Decided: a recipe, a class, a card of which something cannot be read is judged by itself, and only what stands in its own files is told;
packs and what is in stock beside the others of their list. Why: what others make of it needs it whole.

Decided: a rule runs on all that is in part together, and on each by itself where it asks for what is not read. Why: a sign that every price
has cannot be read as often as there are packs, and a rule that never asks for a price has said everything at once.
"""

from collections.abc import Callable, Collection, Iterable
from dataclasses import fields, replace
from datetime import date
from typing import Any

from builder.check.acceptance import accept_findings
from builder.check.batches import unite
from builder.check.rule import STUDIO, STUDIO_ON_A_DAY, STUDIO_UNWORKED
from builder.check.rules import run_apart
from builder.model.finding import Finding
from builder.model.library import ANY
from builder.model.recipe.unread import UnreadError
from builder.model.studio import NOTHING_IN_PART, Studio
from builder.words.fold import fold

# How a studio would be with some parts of one kind in it.
_WITH: dict[str, Callable[[Studio, Iterable[Any]], dict[str, Any]]] = {
    "recipes": lambda _, parts: {"recipes": {one.key: one for one in parts}},
    "classes": lambda studio, parts: {"classes": {**studio.classes, **{one.key: one for one in parts}}},
    "cards": lambda studio, parts: {
        "ingredients": {**studio.ingredients, **{fold(name): one for one in parts for name in (one.name, *one.also_called)}}
    },
    "supplies": lambda studio, parts: {
        "supplies": _in_their_order(studio.supplies, parts),
        "unread": replace(studio.unread, items=studio.unread.items & {ANY}),
    },
    "inventory": lambda studio, parts: {"inventory": _in_their_order(studio.inventory, parts)},
}


def _in_their_order(whole: Iterable[Any], parts: Iterable[Any]) -> tuple[Any, ...]:
    return tuple(sorted((*whole, *parts), key=lambda one: one.place))


def check_in_part(studio: Studio, today: date, found: Iterable[Finding]) -> list[Finding]:
    """Run the rules for which nothing has to be worked out; what is `found` without the parts is not told again."""
    known = {replace(one, about=frozenset()) for one in found}
    kinds = {kind.name: getattr(studio.in_part, kind.name) for kind in fields(studio.in_part)}
    return [one for kind, parts in kinds.items() if parts for one in _found_in(kind, parts, studio, today, known)]


def _found_in(kind: str, parts: tuple[Any, ...], studio: Studio, today: date, known: Collection[Finding]) -> list[Finding]:
    together, *apart = (
        replace(studio, **_WITH[kind](studio, some), in_part=NOTHING_IN_PART) for some in (parts, *((one,) for one in parts))
    )
    files = {_files_of(kind, one.place.file) for one in parts}
    judged = (
        *run_apart(STUDIO_UNWORKED, (together,), [(one,) for one in apart]),
        *run_apart(STUDIO, (together,), [(one,) for one in apart]),
        *run_apart(STUDIO_ON_A_DAY, (together, today), [(one, today) for one in apart]),
    )
    told = unite(one for one in judged if isinstance(one, Finding) and _is_told(one, files))
    return [accepted for one in told if replace(one, about=frozenset()) not in known for accepted in _accept_if_read(one, together)]


def _files_of(kind: str, file: str) -> str:
    """Return with what the names of the files begin that speak of a part: all in the folder of a class, else its own."""
    return file.rpartition("/")[0] + "/" if kind == "classes" else file


def _is_told(finding: Finding, files: Iterable[str]) -> bool:
    """Tell whether a finding stands in one of some files, and nothing in it is what cannot be read."""
    try:
        return hash(finding) is not None and finding.place.file.startswith(tuple(files))
    except UnreadError:
        return False


def _accept_if_read(finding: Finding, studio: Studio) -> list[Finding]:
    """Return a finding as the studio accepts it; nothing where it cannot be read whether it does."""
    try:
        return accept_findings([finding], studio)
    except UnreadError:
        return [] if finding.acceptable else [finding]
