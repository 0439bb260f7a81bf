"""What a run has worked out, for the next one in the same studio: what nothing has changed of is not worked out again.

Decided: all results that a run met are kept together, as they are known within a process (`model/remembered.py`): by the very values that
they were made from, and these, at the end of the chain, by the text of the files. Why: what has changed is made anew and then known by
nothing that is kept, so that no list says what depends on what.

Decided: nothing is kept of a class that has a roster, nor of anything that holds a person. Why: the cache lies outside of the studio's
folder.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from builder.cache.compiled import find, keep
from builder.cache.constants import dumps, loads
from builder.cache.sums import OF_RESULTS, sum_of_run
from builder.model.remembered import Made, all_values, made, names_somebody, seconds_spent, take_over
from builder.model.roster.roster import Guest, Roster, RosterRow

# Whose results are kept: what is made of a whole publication is made anew each time, and lists of people are read anew.
_KEPT = (
    *("check", "finding_kinds", "model", "read", "reckon", "rules", "fonts.typefaces"),
    *("compose.label_layout", "compose.ornament", "compose.publication", "compose.seen_by_classes"),
)
_NOT_KEPT = ("read.roster",)
# Kept anew where so much of what can be kept was made anew, of the seconds that it took to make it all; at first, where it took so many.
_WORTH, _AT_LEAST = 0.25, 0.2


@dataclass(frozen=True)
class _Results:
    made: dict[str, list[Made]]
    values: dict[str, list[Any]]
    seconds: float


@contextmanager
def results_known(folder: Path, of: str = "studio", else_of: tuple[str, ...] = ()) -> Iterator[None]:
    """Take over what the last run in a studio has worked out, and keep what this one does. Nothing is wrong where it cannot be kept.

    `of` is what runs look at: those that look at less have results of their own, so that they read no more than they need. Where there
    are none yet, those of others are taken that know some of it.
    """
    key, *others = (sum_of_run(("results", one, str(folder.resolve())), kind=OF_RESULTS) for one in (of, *else_of))
    own = _found(key)
    before = own or next(filter(None, map(_found, others)), _Results({}, {}, 0.0))
    take_over(before.made)
    for name, values in before.values.items():
        all_values()[name].extend(values)
    yield
    spent = sum(seconds for name, seconds in seconds_spent().items() if _is_kept(name))
    if key and (spent > max(_AT_LEAST, before.seconds * _WORTH) or (before.made and not own)):
        keep(key, _worth_keeping(max(before.seconds, spent)), partial(dumps, never=(Roster, RosterRow, Guest)))


def _found(key: str | None) -> _Results | None:
    found = find(key, loads) if key else None
    return found if isinstance(found, _Results) else None


def _worth_keeping(seconds: float) -> _Results:
    kept = {name: [one for one in every if not _of_somebody(one)] for name, every in made().items() if _is_kept(name)}
    met = {id(one) for every in kept.values() for result in every for one in result.args}
    return _Results(kept, {name: [one for one in values if id(one) in met] for name, values in all_values().items()}, seconds)


def _of_somebody(one: Made) -> bool:
    return names_somebody((one.result, *one.args), one.kwargs)


def _is_kept(name: str) -> bool:
    within = name.removeprefix("builder.")
    return within.startswith(_KEPT) and not within.startswith(_NOT_KEPT)
