"""Results remembered by the arguments themselves: values that never change once they are made, known by their identity.

Decided: results are remembered by the identity of their arguments. Why: comparing a table of limits or a set of cards by what it holds
would take longer than most of what is worked out from it; it halved checking.

Decided: another process takes all results over together, with their arguments, so that what was one value is one value there too
(`made`, `take_over`). Why: what a result depends on is what it was handed, there as here, and no list that somebody has to keep.
"""

import time
from collections import OrderedDict, defaultdict, deque
from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import wraps
from typing import Any, ParamSpec, TypeVar

P = ParamSpec("P")
T = TypeVar("T")
# These are always compared by what they are: that is cheap, and they are often made anew.
_PLAIN = (str, int, type(None))


@dataclass(frozen=True)
class Made:
    """A result with the arguments that it was made from."""

    result: Any
    args: tuple[Any, ...]
    kwargs: Mapping[str, Any]


@dataclass
class _Memory:
    """The results of one function: those met in this process, the last ones last, and those taken over that nobody has asked for yet."""

    plain: tuple[type, ...]
    known: OrderedDict[Hashable, Made] = field(default_factory=OrderedDict)
    taken_over: dict[Hashable, Made] = field(default_factory=dict)

    def key_of(self, args: tuple[object, ...], kwargs: Mapping[str, object]) -> tuple[Hashable, ...]:
        plain = self.plain
        key: tuple[Hashable, ...] = tuple([(one,) if isinstance(one, plain) else id(one) for one in (*args, *kwargs.values())])
        return key + tuple(kwargs) if kwargs else key

    def take_over(self, results: Iterable[Made]) -> None:
        self.taken_over = {self.key_of(one.args, one.kwargs): one for one in results}


@dataclass
class _Clock:
    """How long this process has been making what was not known, in seconds of processor time, by the functions that were asked for it."""

    spent: defaultdict[str, float] = field(default_factory=lambda: defaultdict(float))
    runs: bool = False


_memories: dict[str, _Memory] = {}
_waiting: dict[str, Iterable[Made]] = {}
_values: dict[str, deque[Any]] = {}
_clock = _Clock()


def forget() -> None:
    """Forget every result, as if nothing had been worked out yet."""
    for memory in _memories.values():
        memory.known.clear()
        memory.taken_over.clear()
    for values in _values.values():
        values.clear()
    _waiting.clear()
    _clock.spent.clear()


def made() -> dict[str, list[Made]]:
    """Return the results met in this process, by the names of the functions that made them."""
    return {name: list(memory.known.values()) for name, memory in _memories.items()}


def take_over(results: Mapping[str, Iterable[Made]]) -> None:
    """Take over the results of another process; those of a function that is not loaded yet once it is."""
    _waiting.update(results)
    for name in results.keys() & _memories.keys():
        _memories[name].take_over(_waiting.pop(name))


def values_known(name: str, most: int) -> deque[Any]:
    """Return a place for values of which later ones may turn out to be the same; it is forgotten and taken over as results are."""
    return _values.setdefault(name, deque(maxlen=most))


def all_values() -> dict[str, deque[Any]]:
    """Return all places for values, by their names."""
    return _values


def seconds_spent() -> Mapping[str, float]:
    """Return how long this process has been making what was not known and names nobody, in seconds of processor time, by function."""
    return _clock.spent


def names_somebody(args: Iterable[object], kwargs: Mapping[str, object]) -> bool:
    """Tell whether one of the arguments of a function holds what somebody wrote of a person."""
    return any(getattr(one, "names_somebody", False) for one in (*args, *kwargs.values()))


def remembered(most: int, *by_value: type) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Remember the last `most` results of a pure function by the identity of its arguments; texts, whole numbers, and what is of one of
    the types `by_value`, by what they are.

    The arguments are kept with the result, so that no other value can take their identity. Neither they nor the result may be changed
    afterwards. Whole numbers are never identities: another process would take them for others.
    """

    def decorate(function: Callable[P, T]) -> Callable[P, T]:
        name, memory = f"{function.__module__}.{function.__qualname__}", _Memory((*_PLAIN, *by_value))
        _memories[name] = memory
        memory.take_over(_waiting.pop(name, ()))
        known, key_of = memory.known, memory.key_of

        @wraps(function)
        def remember(*args: P.args, **kwargs: P.kwargs) -> T:
            key = key_of(args, kwargs)
            found = known.get(key)
            if found is not None:
                known.move_to_end(key)
                return found.result  # type: ignore[no-any-return]
            taken_over = memory.taken_over.pop(key, None)
            found = known[key] = taken_over or Made(_timed(function, *args, **kwargs), args, kwargs)
            if len(known) > most:
                known.popitem(last=False)
            return found.result  # type: ignore[no-any-return]

        return remember

    return decorate


def _timed(function: Callable[P, T], *args: P.args, **kwargs: P.kwargs) -> T:
    """Call a function; the outermost of several calls is timed."""
    if _clock.runs:
        return function(*args, **kwargs)
    _clock.runs, begun = True, time.process_time()
    try:
        return function(*args, **kwargs)
    finally:
        _clock.runs = False
        if not names_somebody(args, kwargs):
            _clock.spent[f"{function.__module__}.{function.__qualname__}"] += time.process_time() - begun
