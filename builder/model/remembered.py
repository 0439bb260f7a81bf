"""Results remembered by the arguments themselves: values that never change once they are made, known by their identity.

Decided: results are remembered by the identity of their arguments. Why: comparing a table of limits or a set of cards by what it holds
would take longer than most of what is worked out from it; it halved checking.
"""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from functools import wraps
from typing import Any, ParamSpec, TypeVar

P = ParamSpec("P")
T = TypeVar("T")
# These are always compared by what they are: that is cheap, and they are often made anew.
_PLAIN = (str, int, type(None))
_known: list[OrderedDict[Hashable, Any]] = []


def forget() -> None:
    """Forget every result, as if nothing had been worked out yet."""
    for one in _known:
        one.clear()


def remembered(most: int, *by_value: type) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Remember the last `most` results of a pure function by the identity of its arguments; texts, whole numbers, and what is of one of
    the types `by_value`, by what they are.

    The arguments are kept with the result, so that no other value can take their identity. Neither they nor the result may be changed
    afterwards.
    """

    plain = (*_PLAIN, *by_value)

    def decorate(function: Callable[P, T]) -> Callable[P, T]:
        known: OrderedDict[Hashable, tuple[T, object]] = OrderedDict()
        _known.append(known)

        @wraps(function)
        def remember(*args: P.args, **kwargs: P.kwargs) -> T:
            key: tuple[Hashable, ...] = tuple([(one,) if isinstance(one, plain) else id(one) for one in (*args, *kwargs.values())])
            if kwargs:
                key += tuple(kwargs)
            found = known.get(key)
            if found is None:
                found = known[key] = (function(*args, **kwargs), (args, kwargs))
                if len(known) > most:
                    known.popitem(last=False)
            else:
                known.move_to_end(key)
            return found[0]

        return remember

    return decorate
