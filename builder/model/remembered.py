"""Results remembered by the arguments themselves: values that never change once they are made, known by their identity.

Decided: results are remembered by the identity of their arguments. Why: comparing a table of limits or a set of cards by what it holds
would take longer than most of what is worked out from it; it halved checking.
"""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from functools import wraps
from typing import ParamSpec, TypeVar

P = ParamSpec("P")
T = TypeVar("T")
# These are compared by what they are: that is cheap, and they are often made anew.
_PLAIN = (str, int, type(None))


def remembered(most: int) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Remember the last `most` results of a pure function by the identity of its arguments; texts and whole numbers by what they are.

    The arguments are kept with the result, so that no other value can take their identity. Neither they nor the result may be changed
    afterwards.
    """

    def decorate(function: Callable[P, T]) -> Callable[P, T]:
        known: OrderedDict[Hashable, tuple[T, object]] = OrderedDict()

        @wraps(function)
        def remember(*args: P.args, **kwargs: P.kwargs) -> T:
            key: tuple[Hashable, ...] = tuple([(one,) if isinstance(one, _PLAIN) else id(one) for one in (*args, *kwargs.values())])
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
